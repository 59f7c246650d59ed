/** Two cases of a site beside each other: what is kept of one, and in what the other differs. */
import { formatLength, formatVolume } from '../../sim/quantity/index.ts';
import type { LedgerOut, RunAnswer, Series } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Display } from '../engine/protocol.ts';
import { intoPond, runsBack } from '../plots/back.ts';
import type { Shown } from './shown.ts';

export interface Case {
  readonly scenario: Scenario;
  readonly series: Series;
  readonly answer: RunAnswer;
  /** Moment at which the pump stops, s; undefined where it never does. */
  readonly stop: number | undefined;
  /** The pond's lowest edge less its highest level, m. */
  readonly below: number;
  /** What runs back after the stop, m³; undefined where the pump never stops. */
  readonly back: number | undefined;
  /** What went over edges and down the overflow, m³; undefined for a trial, which keeps no account of it. */
  readonly lost: number | undefined;
}

export function caseOf(scenario: Scenario, { answer, series, stopping, trial }: Shown): Case {
  const edge = Math.min(...scenario.pond.rim.crest.map(([, elevation]) => elevation));
  const stop = stopping?.at;
  return {
    scenario,
    series,
    answer,
    stop,
    below: edge - (answer.levels['pond']?.max.value ?? edge),
    back: stop === undefined ? undefined : runsBack(series, intoPond(series, scenario), stop).volume,
    lost: trial === undefined ? spilled(answer.ledger.out) : undefined,
  };
}

const spilled = ({ rim, overflow, filterRim, edges }: LedgerOut): number => rim + overflow + filterRim + edges;

/** The same columns so many seconds later, up to a moment of the new time. */
export function moved({ t, levels, flows }: Series, by: number, end = Number.POSITIVE_INFINITY): Series {
  const times = t.map((each) => each + by);
  const after = times.findIndex((each) => each > end);
  const cut = (column: Float64Array): Float64Array => (after < 0 ? column : column.subarray(0, after));
  const all = (columns: Record<string, Float64Array>): Record<string, Float64Array> =>
    Object.fromEntries(Object.entries(columns).map(([name, column]) => [name, cut(column)]));
  return { t: cut(times), levels: all(levels), flows: all(flows) };
}

/** Less than this is no difference: a tenth of a millimeter, a tenth of a liter. */
const SAME = { length: 1e-4, volume: 1e-4 };

/** In what a case differs from the one kept, in one sentence. */
export function differenceWords(now: Case, kept: Case, display: Display): string {
  const parts = [levelWords(now.below, kept.below, display)];
  if (now.back !== undefined && kept.back !== undefined)
    parts.push(`${formatVolume(now.back, display)} run back, ${moreWords(now.back - kept.back, display)}`);
  if (now.lost !== undefined && kept.lost !== undefined) {
    const lost = now.lost < SAME.volume ? 'nothing is lost' : `${formatVolume(now.lost, display)} are lost`;
    parts.push(`${lost}, ${moreWords(now.lost - kept.lost, display)}`);
  }
  return `At its highest ${parts.join('; ')}.`;
}

function levelWords(below: number, keptBelow: number, display: Display): string {
  const stands = `the pond is ${formatLength(Math.abs(below), display)} ${below >= 0 ? 'below' : 'over'} its edge`;
  const lower = below - keptBelow;
  if (Math.abs(lower) < SAME.length) return `${stands}, as in the case kept`;
  return `${stands}, ${formatLength(Math.abs(lower), display)} ${lower > 0 ? 'lower' : 'higher'} than in the case kept`;
}

function moreWords(more: number, display: Display): string {
  if (Math.abs(more) < SAME.volume) return 'as much as there';
  return `${formatVolume(Math.abs(more), display)} ${more > 0 ? 'more' : 'less'}`;
}
