import type { Clogging } from './clogging.ts';
import type { Reins } from './reins.ts';
import type { Settled } from './settings.ts';

/** A layer's loss grows by at most this share of itself between two counts of the deposits. */
const GROWTH = 0.02;
/** After a switch the flow still moves: the next count comes after this, s, each later one this much later again. */
const SOON = 30;
const LATER = 3;
/** Flow that is reckoned with at the least, as a share of the pump's greatest: what stands still may start. */
const LEAST_SHARE = 0.1;

/**
 * Keeps count of the deposits while a site runs: at every stop by the water that has gone through the media since the
 * last, and from there on foreseen at the flow of the moment, anew before that can matter.
 */
export class Silting {
  /** When the deposits are to be counted again, s. */
  next = Number.POSITIVE_INFINITY;
  private counted = 0;
  private disturbed = 0;
  private readonly clogging: Clogging;
  private readonly leastFlow: number;
  private readonly growth: number;

  /**
   * @param mostFlow the pump's greatest flow, m³/s
   * @param fineness halves the distance of the counts at 2
   */
  constructor(clogging: Clogging, mostFlow: number, fineness: number) {
    this.clogging = clogging;
    this.leastFlow = LEAST_SHARE * mostFlow;
    this.growth = GROWTH / fineness;
  }

  /** Counts the deposits at a stop, by all that went through the media from the start, m³. */
  count(c: Reins, t: number, water: number): void {
    const { held } = this.clogging.take(c.settings.settled.held, water - this.counted);
    this.counted = water;
    c.set({ settled: { since: t, held, perSecond: held.map(() => 0) } });
  }

  /** Foresees the deposits from a time on at the flow through the media, m³/s. */
  foresee(settled: Settled, t: number, flow: number, disturbed: boolean): Settled {
    if (disturbed) this.disturbed = t;
    const water = this.clogging.waterUntil(this.growth, settled.held);
    const calm = Math.max(SOON, (LATER - 1) * (t - this.disturbed));
    this.next = water === Number.POSITIVE_INFINITY ? water : t + Math.min(calm, water / Math.max(flow, this.leastFlow));
    return this.clogging.foresee(settled.held, t, flow);
  }
}
