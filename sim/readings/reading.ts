/** What a person with a ruler, a watch and a bucket takes down beside a running pond. SI; every ± is meant nine times in ten. */
import type { Scenario } from '../scenario/scenario.ts';

export type SiteReading =
  /**
   * Depth of water over the lowest point of a stone, or of the filter's lip (`over: 'lip'`), m: from the crest up to
   * the still water a hand's breadth behind it, where the surface is not yet drawn down.
   */
  | { readonly kind: 'head'; readonly over: string; readonly head: number; readonly error?: number | undefined }
  /** How far the pond fell from its fill mark when the dry water course was first filled, m. */
  | { readonly kind: 'fall'; readonly fall: number; readonly error?: number | undefined }
  /** Seconds in which the top feed fills a bucket of a volume, m³; `volumeError` as a fraction of it. */
  | {
      readonly kind: 'bucket';
      readonly volume: number;
      readonly seconds: number;
      readonly error?: number | undefined;
      readonly volumeError?: number | undefined;
    };

/** Errors of a careful reading: ruler m, watch s, bucket as a fraction. Common practice, no source. */
export const RULER = 0.002;
export const STOPWATCH = 0.5;
export const BUCKET = 0.03;

/** A reading as the one figure that the site answers: a head or fall in m, the top feed's flow in m³/s. */
export interface Observation {
  /** `head NAME`, `fall` or `top feed`: what of the site it is. */
  readonly what: string;
  readonly value: number;
  /** Half-width of its 90 % band. */
  readonly error: number;
}

export function observationOf(reading: SiteReading): Observation {
  if (reading.kind === 'head')
    return { what: `head ${reading.over}`, value: reading.head, error: reading.error ?? RULER };
  if (reading.kind === 'fall') return { what: 'fall', value: reading.fall, error: reading.error ?? RULER };
  const { volume, seconds } = reading;
  // Relative errors of a quotient add as squares (JCGM 100:2008, 5.1.6).
  const relative = Math.hypot((reading.error ?? STOPWATCH) / seconds, reading.volumeError ?? BUCKET);
  return { what: 'top feed', value: volume / seconds, error: (relative * volume) / seconds };
}

/** What a reading tells of, as a sentence names it. */
export function whatWords(what: string): string {
  if (what === 'fall') return 'the fall of the pond at first start';
  if (what === 'top feed') return 'the seconds in which the top feed fills a bucket';
  return what === 'head lip' ? 'the water over the filter’s lip' : `the water over ‘${what.slice(5)}’`;
}

/** A reading not taken yet, as its default errors would have it at a value of the site. */
export function couldRead(what: string, value: number): Observation {
  const tenLiters = 0.01;
  if (what !== 'top feed') return { what, value, error: RULER };
  return observationOf({ kind: 'bucket', volume: tenLiters, seconds: tenLiters / Math.max(value, 1e-6) });
}

/** All that can be read on a site by these means. */
export function readable(s: Scenario): string[] {
  const stones = s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  const top = s.plumbing.topFeed;
  return [
    ...(s.filter ? ['head lip'] : []),
    ...stones.map(({ name }) => `head ${name}`),
    ...(top && top.valve > 0 ? ['top feed'] : []),
    ...(s.pond.fillMark === undefined ? [] : ['fall']),
  ];
}
