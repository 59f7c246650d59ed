export function extrapolate(
  rates: (t: number, y: number[]) => number[],
  start: number[],
  end: number,
  tolerance: number,
): number[];
