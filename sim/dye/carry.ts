/** Ways by which dye goes from place to place over one short step in which the water's flows are held. */
export class Carrier {
  /** Places it can be in. */
  readonly size: number;
  private readonly from: number[] = [];
  private readonly to: number[] = [];
  private readonly water: number[] = [];
  private readonly copied: boolean[] = [];
  private readonly out: Float64Array;
  private readonly share: Float64Array;
  private readonly keep: Float64Array;
  private readonly now: Float64Array;
  private readonly next: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.out = new Float64Array(size);
    this.share = new Float64Array(size);
    this.keep = new Float64Array(size);
    this.now = new Float64Array(size);
    this.next = new Float64Array(size);
  }

  /** Forgets all ways. */
  clear(): void {
    this.from.length = 0;
    this.to.length = 0;
    this.water.length = 0;
    this.copied.length = 0;
    this.out.fill(0);
  }

  /** Water that flows from a place to another, m³/s; a negative flow goes the other way. */
  flow(from: number, to: number, water: number): void {
    if (water === 0) return;
    const back = water < 0;
    this.add(back ? to : from, back ? from : to, Math.abs(water), false);
  }

  /** Counts in a place what such a flow takes along, and leaves it where it is. */
  count(from: number, to: number, water: number): void {
    if (water > 0) this.add(from, to, water, true);
  }

  private add(from: number, to: number, water: number, copied: boolean): void {
    this.from.push(from);
    this.to.push(to);
    this.water.push(water);
    this.copied.push(copied);
    if (!copied) this.out[from] += water;
  }

  /**
   * Carries masses on by a time: d(mass)/dt of each place as water and concentration have it, at constant flows.
   *
   * The exponential of the rates as a sum of positive terms (uniformization, Jensen 1953): masses stay positive at any
   * step, and their sum is kept to rounding.
   * @param mass kg by place, replaced
   * @param volume of each place, m³; the water in it counts for at least 1/`fastest` s of its outflow
   * @param time s
   * @param fastest greatest rate at which a place is emptied, 1/s
   */
  carry(mass: Float64Array, volume: Float64Array, time: number, fastest: number): void {
    const { from, water, out, share, keep, size } = this;
    let rate = 0;
    for (let i = 0; i < size; i++) {
      share[i] = out[i] > 0 ? Math.min(1 / volume[i], fastest / out[i]) : 1 / Math.max(volume[i], 1e-12);
      rate = Math.max(rate, out[i] * share[i]);
    }
    for (let k = 0; k < from.length; k++) if (this.copied[k]) rate = Math.max(rate, water[k] * share[from[k]]);
    if (rate === 0 || time === 0) return;
    for (let i = 0; i < size; i++) keep[i] = Math.max(0, 1 - (out[i] * share[i]) / rate);
    const pieces = Math.ceil((rate * time) / MOST_EVENTS);
    for (let piece = 0; piece < pieces; piece++) this.carryPiece(mass, rate, (rate * time) / pieces);
  }

  /** Masses after a Poisson number of events of a mean. */
  private carryPiece(mass: Float64Array, rate: number, mean: number): void {
    const { now, next } = this;
    now.set(mass);
    let weight = Math.exp(-mean);
    let total = weight;
    for (let i = 0; i < mass.length; i++) mass[i] *= weight;
    for (let n = 1; n < mean || weight > LEAST_WEIGHT; n++) {
      this.event(now, next, rate);
      now.set(next);
      weight *= mean / n;
      total += weight;
      for (let i = 0; i < mass.length; i++) mass[i] += weight * now[i];
    }
    for (let i = 0; i < mass.length; i++) mass[i] /= total;
  }

  /** What one event of the common rate does to masses. */
  private event(now: Float64Array, next: Float64Array, rate: number): void {
    const { from, to, water, share, keep } = this;
    for (let i = 0; i < now.length; i++) next[i] = keep[i] * now[i];
    for (let k = 0; k < from.length; k++) next[to[k]] += ((water[k] * share[from[k]]) / rate) * now[from[k]];
  }
}

/** Mean number of events in a piece: exp(−64) is far from underflow. */
const MOST_EVENTS = 64;
const LEAST_WEIGHT = 1e-18;
