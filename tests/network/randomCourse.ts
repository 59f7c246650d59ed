import fc from 'fast-check';

export const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** A number of the site as crews would write it: three digits behind the point. */
export const rounded = (min: number, max: number): fc.Arbitrary<number> =>
  between(min, max).map((x) => Math.round(x * 1000) / 1000);

export const crest = (low: number, width: number, tilt: number): [number, number][] => [
  [0, low],
  [width, low + tilt],
];

const stone = fc.record({
  width: rounded(0.2, 1.5),
  raise: rounded(0, 0.04),
  tilt: rounded(0, 0.02),
  cd: rounded(0.82, 1),
  seep: fc.constantFrom(0, 3e-4, 3e-3),
  splash: fc.constantFrom(0, 0, 0.0002),
  along: fc.option(rounded(0.05, 0.4), { nil: undefined }),
  blockage: fc.constantFrom(0, 0, 0, 0.5, 1),
});

const reach = fc.record({
  kind: fc.constantFrom('pool', 'pool', 'stream'),
  drop: rounded(0.15, 0.5),
  area: rounded(0.3, 4),
  stones: fc.oneof(
    { weight: 6, arbitrary: fc.array(stone, { minLength: 1, maxLength: 3 }) },
    { weight: 1, arbitrary: fc.array(stone, { minLength: 12, maxLength: 12 }) },
  ),
  slope: rounded(0.005, 0.08),
  length: rounded(1, 6),
  manning: rounded(0.03, 0.25),
  own: fc.constantFrom(undefined, undefined, undefined, 'empty', 0.05),
});

/** What runs from the filter to the pond: nothing, a few pools and streams in any order, or a stairway. */
export const course = fc.oneof(
  { weight: 8, arbitrary: fc.array(reach, { maxLength: 4 }) },
  { weight: 1, arbitrary: fc.array(reach, { minLength: 9, maxLength: 9 }) },
);

export type RandomReach = typeof reach extends fc.Arbitrary<infer T> ? T : never;

/** Where a reach begins and ends, m: the foot of what falls from it, and the lowest point over which it spills. */
export interface ReachHeight {
  readonly foot: number;
  readonly top: number;
}

/** Elevations of the reaches from the pond's edge up: each spills into the next one's top. */
export function reachHeights(reaches: readonly RandomReach[]): ReachHeight[] {
  const heights: ReachHeight[] = [];
  let below = 0.05;
  for (const r of [...reaches].reverse()) {
    const foot = r.kind === 'stream' ? below + 0.05 : below;
    const top = r.kind === 'stream' ? foot + r.slope * r.length : foot + r.drop;
    heights.unshift({ foot, top });
    below = top + 0.05;
  }
  return heights;
}

export const reachName = (r: RandomReach, i: number): string => (r.kind === 'stream' ? `run ${i}` : `pool ${i}`);

/** Names of a reach's own that leaves can block: its stones, or itself. */
export function blockableNames(r: RandomReach, i: number): string[] {
  return r.kind === 'stream' ? [reachName(r, i)] : r.stones.map((_, k) => `stone ${i}.${k}`);
}

/** A reach as the file says it; areas of pools and widths of streams are multiplied by `scale`. */
export function reachFile(r: RandomReach, h: ReachHeight, i: number, scale: number): object {
  const name = reachName(r, i);
  if (r.kind === 'stream') {
    const bed = { length: r.length, width: 0.5 * scale, slope: r.slope, manning: r.manning, foot: h.foot };
    const level = typeof r.own === 'number' ? h.foot + r.own : r.own;
    return { name, kind: 'stream', ...bed, level, edge: { height: 0.1, length: 0.5 } };
  }
  return {
    name,
    kind: 'pool',
    profile: [
      [h.foot - 0.1, 0.4 * scale * r.area],
      [h.top + 0.2, scale * r.area],
    ],
    level: typeof r.own === 'number' ? h.top + r.own : r.own,
    stones: r.stones.map((s, k) => ({
      name: `stone ${i}.${k}`,
      main: k === 0,
      crest: crest(h.top + (k === 0 ? 0 : s.raise), s.width, s.tilt),
      cd: s.cd,
      seep: { k: s.seep, foot: h.top - 0.1 },
      fall: 0.1,
      splash: s.splash,
      along: s.along,
      nose: s.along ? 0.01 : undefined,
      blockage: s.blockage,
    })),
    rim: { crest: crest(h.top + 0.15, 1, 0) },
  };
}
