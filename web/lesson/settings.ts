/** What the lesson sets in the teaching site, and whether a site stands as a step sets it. */
import type { DimensionName } from '../../sim/quantity/index.ts';
import { valueAt, withValuesAt } from '../../sim/studies/place.ts';
import { figureOf } from '../../sim/studies/setting.ts';
import type { FileEdits } from '../engine/protocol.ts';

/** The site that the lesson is about, by its file's name. */
export const TEACHING_SITE = 'teaching-filter';

/** Everything that any step sets, so that the steps may be taken in any order. */
export interface Setting {
  /** Openings of the two feeds' valves, 0..1. */
  readonly bottom: number;
  readonly top: number;
  readonly gap: string;
  /** Fine muck settled in the fine mat. */
  readonly muck: string;
}

interface Place {
  readonly place: string;
  readonly dimension: DimensionName;
  /** What a file means that says nothing there. */
  readonly unsaid: number;
}

const PLACES: Readonly<Record<keyof Setting, Place>> = {
  bottom: { place: 'plumbing.bottomFeed.valve', dimension: 'fraction', unsaid: 1 },
  top: { place: 'plumbing.topFeed.valve', dimension: 'fraction', unsaid: 1 },
  gap: { place: 'filter.media.gap', dimension: 'length', unsaid: Number.NaN },
  muck: { place: 'filter.media.layers[0].deposit', dimension: 'volume', unsaid: 0 },
};

const KEYS = Object.keys(PLACES) as (keyof Setting)[];

export const editsOf = (setting: Setting): FileEdits => KEYS.map((key) => [PLACES[key].place, setting[key]]);

/** Keys of a file that leave the water as it is. */
const ASIDE = ['title', 'notes', 'display'];
/** Figures nearer to each other than this are the same. */
const SAME = 1e-9;

/** The teaching site as a step sets it; its name and units stay what they were made. */
export function fileAt(base: unknown, setting: Setting, now: unknown): unknown {
  return withValuesAt(base, [...editsOf(setting), ...ASIDE.map((key) => [key, valueAt(now, key)] as const)]);
}

/** All of a file that no step sets, as text. */
const restOf = (file: unknown): string =>
  JSON.stringify(
    withValuesAt(
      file,
      [...KEYS.map((key) => PLACES[key].place), ...ASIDE].map((key) => [key, undefined]),
    ),
  );

function isSetTo(file: unknown, setting: Setting): boolean {
  return KEYS.every((key) => {
    const { place, dimension, unsaid } = PLACES[key];
    const value = valueAt(file, place);
    const stands = value === undefined ? unsaid : figureOf(value, dimension);
    return stands !== undefined && Math.abs(stands - (figureOf(setting[key], dimension) ?? Number.NaN)) < SAME;
  });
}

/** Whether a file is the teaching site as a step sets it, in whatever words and units. */
export const standsOn = (file: unknown, base: unknown, setting: Setting): boolean =>
  isSetTo(file, setting) && restOf(file) === restOf(base);
