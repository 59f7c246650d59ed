/** The trade's words for keys of the file. */
const NAMES: Readonly<Record<string, string>> = {
  rim: 'liner edge',
  lip: 'spillway lip',
  crest: 'spill edge',
  displaced: 'rock and gravel',
  blockage: 'leaves on the screen',
  cd: 'discharge coefficient',
  k: 'further losses',
  manning: 'roughness (Manning’s n)',
  fillMark: 'fill mark',
  liftSlack: 'room to float up',
  capture: 'how well it catches',
  beta: 'pores lost to what settles',
  deposit: 'settled in it now',
  speed: 'share of its full speed',
  suction: 'draws air below',
  minimum: 'full flow above',
  to: 'to',
};

/** 'fill mark' for `fillMark`; a key without a word of its own is split where it was joined. */
export function keyName(key: string): string {
  return (
    NAMES[key] ?? key.replace(/([a-z])([A-Z0-9])/g, (_, end: string, next: string) => `${end} ${next.toLowerCase()}`)
  );
}
