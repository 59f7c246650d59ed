import type { Assumption } from './scenario.ts';

/**
 * Takes down what the file left open. Figures an answer rests on are noted with a band where one is published or
 * stated; 'nothing' (not blocked, not leaking, not seeping, no further losses) is what the file says by its silence
 * and is not noted.
 */
export interface Assumptions {
  /** The value of the file, or the default, which is noted. */
  or<T extends number | string | boolean>(
    value: T | undefined,
    place: string,
    fallback: T,
    band?: readonly [number, number],
  ): T;
  note(place: string, value: number | string | boolean, band?: readonly [number, number]): void;
  readonly all: readonly Assumption[];
}

export function assumptions(): Assumptions {
  const all: Assumption[] = [];
  const note: Assumptions['note'] = (place, value, band) => {
    all.push({ place, value, band, from: 'default' });
  };
  return {
    all,
    note,
    or: (value, place, fallback, band) => {
      if (value !== undefined) return value;
      note(place, fallback, band);
      return fallback;
    },
  };
}

/** Bands of the defaults, each with its origin. */
export const BANDS = {
  /** Gravel crest at 15 mm of head to a paved rounded one: Hulsing (1967), USGS TWRI 3-A5. None is published for natural stone. */
  stone: [0.82, 0.96],
  /** Our default: nobody knows a gap. */
  gap: [0, 0.02],
  /** Our default: plastic in use, to a year of growth. */
  roughness: [1e-5, 1e-4],
  /** Our default: a factor on the head of a curve drawn through the box's two figures. */
  box: [0.88, 1.12],
  /** Our default. */
  submergedWeight: [30, 120],
  /**
   * Pore space lost per settled volume: its own, to what a full-scale sand filter asked, whose head rose 3.3 times with
   * 3.8 % of its pores filled. From memory.
   */
  beta: [1, 7],
  /** Common practice, no source. */
  freeform: [0.8, 0.85],
} as const;

/** Manning's n is good to a factor 1.5 either way (flow over stones: Yochum et al. 2014, USDA RMRS-GTR-323). */
export const manningBand = (n: number): readonly [number, number] => [n / 1.5, n * 1.5];
