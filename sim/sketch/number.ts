import type { DimensionName } from '../quantity/index.ts';
import type { Draft } from './draft.ts';

/** What stands for a number of the sketch once it is read: SI, a word, or (shelves, the bucket) figures in a row. */
export type SketchValue =
  | number
  | string
  | readonly { readonly depth: number; readonly width: number }[]
  | readonly [number, number]
  | readonly (readonly [number, number])[]
  | { readonly flow: number; readonly head: number };

/** One number of the sketch: how it is asked, what stands for it where nobody knows it, and how far that may be off. */
export interface SketchNumber {
  /** Its key under `sketch`, 'pipe.size'. */
  readonly key: string;
  /** What it is called in a sentence: 'the height of the pond’s edge above the water'. */
  readonly called: string;
  /** One short question in the words of a tape measure. */
  readonly asks: string;
  /** One of the numbers every site is asked for; the others may be typed too, and are asked for nowhere. */
  readonly first: boolean;
  readonly dimension?: DimensionName;
  /** Words it may be given by; beside a dimension, either will do. */
  readonly words?: readonly string[];
  /** Sensible range, SI. */
  readonly range?: readonly [least: number, most: number];
  /** The default, by the rest of the site; none where the number is required. */
  readonly fallback?: (site: Draft) => SketchValue;
  /** What the default goes by, where it is no plain figure. */
  readonly by?: string;
  /** How far the default may be off, SI; for words, the figures they stand between. */
  readonly band?: (value: number, site: Draft) => readonly [low: number, high: number];
  readonly origin?: 'common practice' | 'our default';
  /** Another value than the default's, where there is no band: it tells whether anything rests on the number. */
  readonly other?: SketchValue;
  /** Places of the scenario that tell the same assumption. */
  readonly covers?: readonly string[];
}

/** A band by factors on the value. */
export const times =
  (low: number, high: number) =>
  (value: number): readonly [number, number] => [value * low, value * high];

/** A band between two figures, which the value itself widens where it lies outside. */
export const between =
  (low: number, high: number) =>
  (value: number): readonly [number, number] => [Math.min(low, value), Math.max(high, value)];
