/** How many steps a key takes a hand along its ruler, a page key so many at once; undefined for any other key. */
export function keySteps(key: string, leap: number): number | undefined {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: 1,
    ArrowUp: 1,
    ArrowLeft: -1,
    ArrowDown: -1,
    PageUp: leap,
    PageDown: -leap,
  };
  return steps[key];
}
