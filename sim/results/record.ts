import { LEDGER_ROWS } from '../network/ledger.ts';
import type { Network } from '../network/network.ts';
import type { Settings } from '../network/settings.ts';
import type { RosenbrockStep } from '../solver/step.ts';

/** Rows for which a record has room at first: those of most trials. */
const FIRST_ROWS = 64;
/** Numbers that a record holds at the most: half a gigabyte. */
const MOST = 2 ** 26;

/**
 * All that a march went through: a row at each step's end, two where it restarts, and between the rows of a step the
 * cubic by which every volume runs. Rows are kept flat; read them by the methods.
 */
export class RunRecord {
  readonly network: Network;
  /** Rows written. */
  length = 0;
  /** Stretches of constant settings: their first row. */
  readonly stretches: { readonly row: number; readonly settings: Settings }[] = [];

  private data: Float64Array;
  private readonly stride: number;
  private readonly size: number;
  private readonly flows: number;
  private readonly atFlows: number;
  private readonly atLedger: number;

  constructor(network: Network) {
    this.network = network;
    this.size = network.size;
    this.flows = network.flow.length;
    this.atFlows = 1 + 3 * this.size;
    this.atLedger = this.atFlows + this.flows + 1;
    this.stride = this.atLedger + LEDGER_ROWS;
    this.data = new Float64Array(FIRST_ROWS * this.stride);
  }

  /** Opens a stretch with a row of its own; its flows come with its first step. */
  openStretch(settings: Settings, t: number, volumes: Float64Array, ledger: Float64Array): void {
    this.stretches.push({ row: this.length, settings });
    this.push(t, volumes, ledger);
  }

  /** Adds a step: the flows of the row it starts from, its cubic, and the row it ends in. */
  addStep(step: RosenbrockStep, atStart: Float64Array, t: number, volumes: Float64Array, ledger: Float64Array): void {
    const at = (this.length - 1) * this.stride;
    this.data.set(step.inner1, at + 1 + this.size);
    this.data.set(step.inner2, at + 1 + 2 * this.size);
    this.data.set(atStart, at + this.atFlows);
    this.push(t, volumes, ledger);
  }

  /** Sets the flows of the last row: those right before the next restart, or at the end. */
  closeStretch(flow: Float64Array, mediaHead: number): void {
    const at = (this.length - 1) * this.stride + this.atFlows;
    this.data.set(flow, at);
    this.data[at + this.flows] = mediaHead;
  }

  /** No room for another step. */
  get full(): boolean {
    return (this.length + 2) * this.stride > MOST;
  }

  private push(t: number, volumes: Float64Array, ledger: Float64Array): void {
    const at = this.length * this.stride;
    if (at + this.stride > this.data.length) {
      const grown = new Float64Array(2 * this.data.length);
      grown.set(this.data);
      this.data = grown;
    }
    this.data[at] = t;
    this.data.set(volumes, at + 1);
    this.data.set(ledger, at + this.atLedger);
    this.length++;
  }

  /** Time of a row, s. */
  time(row: number): number {
    return this.data[row * this.stride];
  }

  /** Volume of a basin in a row, m³. */
  volume(row: number, basin: number): number {
    return this.data[row * this.stride + 1 + basin];
  }

  /** Inner coefficients of the cubic from a row to the next, m³. */
  inner1(row: number, basin: number): number {
    return this.data[row * this.stride + 1 + this.size + basin];
  }

  inner2(row: number, basin: number): number {
    return this.data[row * this.stride + 1 + 2 * this.size + basin];
  }

  /** A named flow in a row, m³/s; number `flows` is the head across the media, m. */
  flow(row: number, flow: number): number {
    return this.data[row * this.stride + this.atFlows + flow];
  }

  /** A row of the ledger from the start to a row, m³ or J. */
  ledger(row: number, entry: number): number {
    return this.data[row * this.stride + this.atLedger + entry];
  }

  /** Whether the row begins a stretch, so that no step leads to it from the row before. */
  restarts(row: number): boolean {
    return row === 0 || this.time(row) === this.time(row - 1);
  }

  /** Settings in force from a row on. */
  settingsAt(row: number): Settings {
    return this.stretchAt(row).settings;
  }

  /** The stretch to which a row belongs. */
  stretchAt(row: number): { readonly row: number; readonly settings: Settings } {
    let low = 0;
    let high = this.stretches.length - 1;
    while (low < high) {
      const mid = (low + high + 1) >> 1;
      if (this.stretches[mid].row <= row) low = mid;
      else high = mid - 1;
    }
    return this.stretches[low];
  }

  /** Last row at or before a time: after a restart that falls on it. */
  rowAt(t: number): number {
    let low = 0;
    let high = this.length - 1;
    while (low < high) {
      const mid = (low + high + 1) >> 1;
      if (this.time(mid) <= t) low = mid;
      else high = mid - 1;
    }
    return low;
  }
}
