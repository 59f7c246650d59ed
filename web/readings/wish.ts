/** What is wished of the water, as it is typed. Pure. */
import { parseQuantity } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** A share of the flow, 0..1: 'half', 'all', '1/3', '50', '50 %'; told in words where it is none. */
export function typedShare(text: string): { readonly value: number | undefined } | { readonly wrong: string } {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/^about /, '');
  if (plain === '') return { value: undefined };
  const words: Readonly<Record<string, number>> = {
    none: 0,
    half: 0.5,
    'a half': 0.5,
    'a third': 1 / 3,
    'a quarter': 0.25,
    all: 1,
  };
  const fraction = /^(\d+)\s*\/\s*(\d+)$/.exec(plain);
  const own = fraction ? Number(fraction[1]) / Number(fraction[2]) : words[plain];
  const parsed = parseQuantity(/%$/.test(plain) ? plain : `${plain} %`, 'fraction');
  const value = own ?? (parsed.ok ? parsed.value : undefined);
  if (value === undefined || !(value >= 0 && value <= 1))
    return { wrong: `${JSON.stringify(text.trim())} is no share of the water: give it as half, or 50 %.` };
  return { value };
}

export interface CrestName {
  /** 'lip', or the stone's name. */
  readonly name: string;
  readonly words: string;
}

/** Where a ruler can be held, main stones first. */
export function crestNames(s: Scenario): CrestName[] {
  const stones = s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  const sorted = [...stones].sort((a, b) => Number(b.main) - Number(a.main));
  return [
    ...sorted.map(({ name }) => ({ name, words: `over ‘${name}’` })),
    ...(s.filter ? [{ name: 'lip', words: 'over the filter’s lip' }] : []),
  ];
}
