/** The two rulers of a plane: in whole degrees of a handle, or in whole percents of speed and share. Pure. */
import type { OperatingMap } from '../../sim/map/answer.ts';
import { handleWords, shareWords } from '../../sim/map/words.ts';
import { keySteps } from '../state/key-steps.ts';

export type Axis = 'x' | 'y';
/** Values on both rulers: openings 0..1, or a speed and a share. */
export type Place = readonly [x: number, y: number];

export interface Ruler {
  readonly name: string;
  /** What its sheet says beside it. */
  readonly says: string;
  /** A hand's steps in 1, and how many a page key leaps. */
  readonly steps: number;
  readonly leap: number;
  readonly from: number;
  readonly to: number;
  readonly words: (value: number) => string;
}

export type Rulers = Readonly<Record<Axis, Ruler>>;

const handle = { steps: 90, leap: 15, words: handleWords };
const percent = { steps: 100, leap: 10, words: shareWords };
/** Values are written so fine into a file; a degree is 0.0111. */
const DIGITS = 4;

export function rulersOf({ plane, x, y }: Pick<OperatingMap, 'plane' | 'x' | 'y'>): Rulers {
  const [across, up] = [x, y].map((values) => ({ from: values[0], to: values[values.length - 1] }));
  return plane === 'valves'
    ? {
        x: { ...handle, ...across, name: 'bottom valve', says: 'bottom valve’s handle, closed by' },
        y: { ...handle, ...up, name: 'top valve', says: 'top valve’s handle, closed by' },
      }
    : {
        x: { ...percent, ...across, name: 'pump’s speed', says: 'pump’s speed' },
        y: { ...percent, ...up, name: 'share by the bottom feed', says: 'share by the bottom feed' },
      };
}

export const stepsOf = ({ steps }: Pick<Ruler, 'steps'>, value: number): number => Math.round(steps * value);

/** The value at a step, kept on the ruler. */
export function valueAt(ruler: Ruler, step: number): number {
  const kept = Math.min(stepsOf(ruler, ruler.to), Math.max(stepsOf(ruler, ruler.from), Math.round(step)));
  return Number((kept / ruler.steps).toFixed(DIGITS));
}

/** A value to the nearest step of its ruler. */
export const toStep = (ruler: Ruler, value: number): number => valueAt(ruler, ruler.steps * value);

/** Where a key leads from a value; undefined where it leads nowhere. Right and up open a valve. */
export function keyed(ruler: Ruler, key: string, value: number): number | undefined {
  if (key === 'Home') return valueAt(ruler, Number.NEGATIVE_INFINITY);
  if (key === 'End') return valueAt(ruler, Number.POSITIVE_INFINITY);
  const by = keySteps(key, ruler.leap);
  return by === undefined ? undefined : valueAt(ruler, stepsOf(ruler, value) + by);
}
