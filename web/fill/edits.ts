/** The hoses of a site as somebody at the pond knows them, and what is put into the file for what they type. */

import { type Display, parseQuantity } from '../../sim/quantity/index.ts';
import type { Hose, Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import type { FileEdits } from '../engine/protocol.ts';
import { fileText, flowText } from './typed-figure.ts';

/** A bucket to start from, m³: ten liters, five gallons. */
export const USUAL_BUCKET: Readonly<Record<Display, number>> = { metric: 0.01, us: 5 * 0.003785411784 };

/** A garden hose as it is sold: common practice, no source; a bucket test replaces it. */
const GIVEN: Readonly<Record<Display, string>> = { metric: '15 L/min', us: '4 gpm' };
/** A tap and a hose to start the pressure form from: common practice, no source. */
const PRESSED: Readonly<Record<Display, Readonly<Record<string, string>>>> = {
  metric: { pressure: '3 bar', length: '15 m', bore: '13 mm' },
  us: { pressure: '45 psi', length: '50 ft', bore: '5/8 in' },
};
/** A tank truck's load and how fast it lets it go: common practice, no source. */
const TRUCK: Readonly<Record<Display, Readonly<Record<string, string>>>> = {
  metric: { flow: '400 L/min', volume: '8 m3' },
  us: { flow: '100 gpm', volume: '2000 gal' },
};

export interface HoseRow {
  readonly i: number;
  readonly hose: Hose;
  /** Where it stands in the file; undefined: a sketch's bucket stands for it. */
  readonly place: string | undefined;
  readonly form: 'bucket' | 'pressure';
  /** The bucket of the last test, m³, and the seconds it takes to fill. */
  readonly bucket: number;
  readonly seconds: number;
  /** SI, where the pressure form has them. */
  readonly pressed: { readonly pressure: number; readonly length: number; readonly bore: number } | undefined;
}

const HOSE = 'supply.hose';
const SKETCHED = 'sketch.bucket';

/** @param buckets volumes typed so far, by hose */
export function hoseRows(s: Scenario, file: unknown, buckets: ReadonlyMap<number, number>): HoseRow[] {
  const list = Array.isArray(valueAt(file, HOSE));
  return s.hoses.map((hose, i) => {
    const there = list ? `${HOSE}[${i}]` : HOSE;
    const place = list || valueAt(file, HOSE) !== undefined ? there : undefined;
    const own = place === undefined ? undefined : valueAt(file, place);
    const bucket = buckets.get(i) ?? sketchedBucket(file) ?? USUAL_BUCKET[s.display];
    return {
      i,
      hose,
      place,
      form: hose.by === 'pressure' ? 'pressure' : 'bucket',
      bucket,
      seconds: hose.flow > 0 ? bucket / hose.flow : 0,
      pressed: hose.by === 'pressure' ? pressedOf(own) : undefined,
    };
  });
}

const figureIn = (part: unknown, key: string, dimension: 'length' | 'pressure' | 'volume'): number => {
  const value = valueAt(part, key);
  if (typeof value === 'number') return value;
  const parsed = typeof value === 'string' ? parseQuantity(value, dimension) : undefined;
  return parsed?.ok ? parsed.value : 0;
};

const pressedOf = (own: unknown): HoseRow['pressed'] => ({
  pressure: figureIn(own, 'pressure', 'pressure'),
  length: figureIn(own, 'length', 'length'),
  bore: figureIn(own, 'bore', 'length'),
});

function sketchedBucket(file: unknown): number | undefined {
  if (valueAt(file, HOSE) !== undefined || !Array.isArray(valueAt(file, SKETCHED))) return undefined;
  return figureIn(valueAt(file, SKETCHED), '[0]', 'volume') || undefined;
}

/** A bucket test: its flow at the hose, or the bucket itself where a sketch holds it. */
export function bucketEdits(row: HoseRow, file: unknown, volume: number, seconds: number, display: Display): FileEdits {
  const place = `${row.place ?? HOSE}.flow`;
  if (holdsSketch(file) && !Array.isArray(valueAt(file, HOSE)) && valueAt(file, place) === undefined)
    return [[SKETCHED, [fileText(volume, 'volume', display), fileText(seconds, 'time', display)]]];
  return [[place, flowText(volume / seconds, display)]];
}

const holdsSketch = (file: unknown): boolean => valueAt(file, 'sketch') !== undefined;

/** A figure of a hose beside its flow. */
export function hoseEdits(row: HoseRow, key: string, value: unknown): FileEdits {
  return [[`${row.place ?? HOSE}.${key}`, value]];
}

const PRESSED_KEYS = ['pressure', 'length', 'bore', 'rise', 'k'] as const;

/** From the bucket to the pressure, and back with the flow that it came to. */
export function formEdits(row: HoseRow, file: unknown, form: HoseRow['form'], display: Display): FileEdits {
  const own = row.place === undefined ? undefined : (valueAt(file, row.place) as object | undefined);
  const { flow: _flow, ...rest } = { ...own } as Record<string, unknown>;
  if (form === 'bucket') {
    for (const key of PRESSED_KEYS) delete rest[key];
    return [[row.place ?? HOSE, { ...rest, flow: flowText(row.hose.flow, display) }]];
  }
  const pressed = { ...rest, ...PRESSED[display] };
  // A flow that a sketch's bucket gives would win over the pressure: a list of hoses stands by itself.
  if (holdsSketch(file) && !Array.isArray(valueAt(file, HOSE))) return [[HOSE, [{ ...pressed, name: row.hose.name }]]];
  return [[row.place ?? HOSE, pressed]];
}

/** One more hose, or a tank truck: they stand in a list, each by its name. */
export function moreEdits(s: Scenario, file: unknown, what: 'hose' | 'truck'): FileEdits {
  const given = what === 'hose' ? { flow: GIVEN[s.display] } : TRUCK[s.display];
  const own = valueAt(file, HOSE);
  if (s.hoses.length === 0) return [[HOSE, what === 'hose' ? given : { name: 'tank truck', ...given }]];
  const before = Array.isArray(own)
    ? own
    : [{ ...(own as object | undefined), ...flowOf(own, s), name: s.hoses[0]?.name ?? 'hose' }];
  return [[HOSE, [...before, { name: freeName(s, what === 'hose' ? 'hose' : 'tank truck'), ...given }]]];
}

/** The flow a single hose of a sketch has, which a list has to say itself. */
const flowOf = (own: unknown, s: Scenario): object =>
  valueAt(own, 'flow') === undefined && valueAt(own, 'pressure') === undefined
    ? { flow: flowText(s.hoses[0]?.flow ?? 0, s.display) }
    : {};

function freeName({ hoses }: Scenario, name: string): string {
  const taken = hoses.map((hose) => hose.name);
  for (let n = 1; ; n++) {
    const each = n === 1 ? name : `${name} ${n}`;
    if (!taken.includes(each)) return each;
  }
}

/** Takes a hose out of the list. */
export const lessEdits = (row: HoseRow): FileEdits => (row.place === undefined ? [] : [[row.place, undefined]]);
