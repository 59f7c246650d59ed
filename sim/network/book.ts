import type { Linearization } from '../solver/system.ts';
import type { Basin } from './builder.ts';
import { LEDGER } from './ledger.ts';
import type { Link } from './link.ts';

/**
 * The books of one evaluation: levels as they stand, and the accounts on which flows and their slopes are entered.
 */
export class Book {
  /** Levels m, open areas m² and their growth m²/m, slopes of level by volume 1/m², and named flows m³/s. */
  readonly level: Float64Array;
  readonly area: Float64Array;
  readonly growth: Float64Array;
  readonly byVolume: Float64Array;
  readonly flow: Float64Array;
  /** Rates of the volumes and of the ledger's rows; slopes, where they are asked for. */
  f: Float64Array;
  g: Float64Array;
  slopes: Linearization | undefined;

  private readonly basins: readonly Basin[];

  constructor(basins: readonly Basin[], flows: number, rows: number) {
    const n = basins.length;
    this.basins = basins;
    this.level = new Float64Array(n);
    this.area = new Float64Array(n);
    this.growth = new Float64Array(n);
    this.byVolume = new Float64Array(n);
    this.flow = new Float64Array(flows);
    this.f = new Float64Array(n);
    this.g = new Float64Array(rows);
  }

  /** Level against which a link works at its lower end: where water enters, −Infinity outside. */
  tail(to: number): number {
    return to >= 0 ? this.level[to] + this.basins[to].entry : Number.NEGATIVE_INFINITY;
  }

  /** Enters a flow and its slopes by the levels at its ends on both basins, its ledger row and the splash. */
  carry(link: Link, q: number, byFrom: number, byTo: number): void {
    const { from, to, row } = link;
    const lost = q > 0 ? link.splash : 0;
    if (link.flow >= 0) this.flow[link.flow] += q;
    if (from >= 0) this.f[from] -= q;
    if (to >= 0) this.f[to] += q * (1 - lost);
    if (row >= 0) this.g[row] += q;
    if (lost > 0) this.g[LEDGER.splash] += q * lost;
    if (this.slopes !== undefined) this.carrySlopes(this.slopes, link, lost, byFrom, byTo);
  }

  private carrySlopes(into: Linearization, link: Link, lost: number, byFrom: number, byTo: number): void {
    const { from, to, row } = link;
    const { jacobian, gradient } = into;
    const arrives = 1 - lost;
    if (from >= 0) {
      const slope = byFrom * this.byVolume[from];
      jacobian[link.ff] -= slope;
      if (to >= 0) jacobian[link.tf] += slope * arrives;
      if (row >= 0) gradient[link.rowByFrom] += slope;
      if (lost > 0) gradient[link.splashByFrom] += slope * lost;
    }
    if (to >= 0) {
      const slope = byTo * this.byVolume[to];
      jacobian[link.tt] += slope * arrives;
      if (from >= 0) jacobian[link.ft] -= slope;
      if (row >= 0) gradient[link.rowByTo] += slope;
      if (lost > 0) gradient[link.splashByTo] += slope * lost;
    }
  }
}
