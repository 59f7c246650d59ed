import type { Hose } from '../scenario/scenario.ts';

/** Which hoses run, in the order of the file, and what those with a limited volume have still to give. */
export class Hoses {
  readonly on: boolean[];
  private readonly hoses: readonly Hose[];
  private readonly left: number[];
  private readonly since: number[];

  constructor(hoses: readonly Hose[]) {
    this.hoses = hoses;
    this.on = hoses.map((hose) => hose.on);
    this.left = hoses.map((hose) => hose.volume ?? Number.POSITIVE_INFINITY);
    this.since = hoses.map(() => 0);
  }

  /** All that run together, m³/s. */
  get flow(): number {
    return this.hoses.reduce((sum, hose, i) => sum + (this.on[i] ? hose.flow : 0), 0);
  }

  /** Opens or shuts one at a time, s; one that has nothing left stays shut. */
  turn(i: number, on: boolean, t: number): void {
    if (this.on[i]) this.left[i] -= this.hoses[i].flow * (t - this.since[i]);
    this.since[i] = t;
    this.on[i] = on && this.left[i] > SPENT * (this.hoses[i].volume ?? 0);
  }

  /** When one that is open will have given all it has, s; Infinity where it never will. */
  spent(i: number): number {
    if (!this.on[i] || this.left[i] === Number.POSITIVE_INFINITY || this.hoses[i].flow === 0)
      return Number.POSITIVE_INFINITY;
    return this.since[i] + this.left[i] / this.hoses[i].flow;
  }
}

/** What rounding leaves of a volume, as a share. */
const SPENT = 1e-9;
