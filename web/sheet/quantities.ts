import { areaAt, makeStorage, volumeAt } from '../../sim/laws/storage.ts';
import { formatArea, formatLength, formatVolume, parseQuantity } from '../../sim/quantity/index.ts';
import type { BasinParts, Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { type Block, edgeOf, type SheetFacts } from './block.ts';
import { pipeRows } from './works.ts';

/** Liner beyond the edge on each side, m: common practice, no source (one to two feet; the greater with stone on it). */
const ALLOWANCE = { metric: 0.6, us: 0.6096 } as const;
/** Of loose gravel two fifths are pores: common practice, no source. */
const PORES = 0.4;

export interface Outline {
  readonly length: number;
  readonly width: number;
}

/** The pond's length and width, m, as its file or its sketch has them; undefined where it is given by a profile. */
export function outlineOf(file: unknown): Outline | undefined {
  const meters = (value: unknown): number | undefined => {
    if (typeof value === 'number') return value;
    const parsed = typeof value === 'string' ? parseQuantity(value, 'length') : undefined;
    return parsed?.ok ? parsed.value : undefined;
  };
  for (const place of ['pond.shape', 'sketch']) {
    const [length, width] = ['length', 'width'].map((key) => meters(valueAt(file, `${place}.${key}`)));
    if (length !== undefined && width !== undefined && length > 0 && width > 0) return { length, width };
  }
  return undefined;
}

/** Liner for a pond: each way its length at the brim, twice its depth and the allowance on both sides. */
export function linerOf(outline: Outline, depth: number, allowance: number): Outline {
  const more = 2 * depth + 2 * allowance;
  return { length: outline.length + more, width: outline.width + more };
}

/** Rock and gravel in a basin: m³ of solid stone, and of loose gravel where it is nothing else. */
export function stoneIn({ profile, displaced }: BasinParts): { solid: number; loose: number } {
  const whole = makeStorage(profile);
  const solid = volumeAt(whole, brimOf(profile)) - volumeAt(makeStorage(profile, displaced), brimOf(profile));
  return { solid, loose: solid / (1 - PORES) };
}

const brimOf = (profile: BasinParts['profile']): number => profile[profile.length - 1][0];

function linerRow({ scenario: s, file }: SheetFacts): string[] {
  const { profile } = s.pond;
  const depth = edgeOf(s) - profile[0][0];
  const allowance = ALLOWANCE[s.display];
  const length = (value: number): string => formatLength(value, s.display);
  const outline = outlineOf(file);
  const side = Math.sqrt(areaAt(makeStorage(profile), edgeOf(s)));
  const liner = linerOf(outline ?? { length: side, width: side }, depth, allowance);
  const how = `twice the depth and ${length(allowance)} on either side allowed, common practice`;
  const square = outline ? '' : '; as if the pond were square: measure it';
  return [
    'liner, underlay below it',
    `${length(liner.length)} × ${length(liner.width)} each, ${formatArea(liner.length * liner.width, s.display)} (${how}${square})`,
  ];
}

function stoneRows(s: Scenario): string[][] {
  const basins = [
    ['pond', s.pond] as const,
    ...s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? [[reach.name, reach] as const] : [])),
  ];
  return basins.flatMap(([name, basin]) => {
    const { solid, loose } = stoneIn(basin);
    if (solid < 1e-4) return [];
    return [
      [
        `rock, gravel in ${name === 'pond' ? 'the pond' : `‘${name}’`}`,
        `${formatVolume(solid, s.display)} of solid stone; as loose gravel ${formatVolume(loose, s.display)}`,
      ],
    ];
  });
}

function volumeRows({ pond, display }: Scenario): string[][] {
  const { fillMark } = pond;
  if (fillMark === undefined) return [['pond', 'no fill mark, so no volume']];
  const storage = makeStorage(pond.profile, pond.displaced);
  const [step, name] = display === 'us' ? [0.0254, 'one inch'] : [0.01, 'one centimeter'];
  return [
    ['pond at its mark', `${formatVolume(volumeAt(storage, fillMark), display)}, true (dose by this)`],
    [`${name} of it`, formatVolume(areaAt(storage, fillMark) * step, display)],
  ];
}

export function quantitiesBlock(facts: SheetFacts): Block {
  const { scenario: s } = facts;
  return { title: 'Quantities', rows: [...volumeRows(s), linerRow(facts), ...stoneRows(s), ...pipeRows(s)] };
}
