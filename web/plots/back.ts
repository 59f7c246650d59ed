/** What runs back after the pump has stopped. */
import type { Series } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { rowAt, valueAt } from './thin.ts';

/** Name of the column that `intoPond` makes. */
export const INTO_POND = 'run into the pond';

/** The flows that end in the pond, by the way a site is built. */
function waysIn({ filter, watercourse, plumbing }: Scenario): string[] {
  const last = watercourse[watercourse.length - 1];
  const ways = last ? (last.kind === 'pool' ? last.stones.map(({ name }) => name) : [last.name]) : [];
  if (!last && filter) ways.push('lip');
  const bare = !last && !filter;
  if (bare) ways.push('bottom feed');
  if (plumbing.topFeed && (bare || plumbing.topFeed.to === 'pond')) ways.push('top feed');
  return ways;
}

/**
 * What comes to the pond and its vault, m³/s: over the last fall, and back down the main line. Water that seeps through
 * under stones has no column and is not in it.
 */
export function intoPond({ t, flows }: Series, scenario: Scenario): Float64Array {
  const columns = waysIn(scenario).flatMap((name) => flows[name] ?? []);
  const { main } = flows;
  return t.map((_, row) => columns.reduce((sum, column) => sum + column[row]!, Math.max(0, -(main?.[row] ?? 0))));
}

/** A stretch of time after a stop, s. */
export interface Back {
  readonly stop: number;
  /** The pump lifts again, or the run ends. */
  readonly end: number;
  /** What ran back in between, m³. */
  readonly volume: number;
  /** Moments at which a third and nine tenths of it had come, s. */
  readonly third: number;
  readonly most: number;
}

/** A pump that lifts less than this stands, m³/s. */
const LIFTS = 1e-6;

/** Time within which a stopped pump's water comes to rest, s. */
const REST = 120;

/** Volume under a flow from one moment to another, m³; straight between its rows. */
export function volumeUnder(times: Float64Array, values: Float64Array, from: number, to: number): number {
  return walk(times, values, from, to, Number.POSITIVE_INFINITY).volume;
}

/** Adds up a flow until a volume is reached or the time is over. */
function walk(
  times: Float64Array,
  values: Float64Array,
  from: number,
  to: number,
  enough: number,
): { volume: number; t: number } {
  let volume = 0;
  let [t, value] = [from, valueAfter(times, values, from)];
  for (let row = rowAfter(times, from); t < to; row++) {
    const inside = row < times.length && times[row]! < to;
    const next = inside ? times[row]! : to;
    const nextValue = inside ? values[row]! : valueAt(times, values, to);
    const more = ((value + nextValue) / 2) * (next - t);
    if (volume + more >= enough && more > 0)
      return { volume: enough, t: t + timeFor(enough - volume, value, (nextValue - value) / (next - t)) };
    volume += more;
    [t, value] = [next, nextValue];
  }
  return { volume, t: to };
}

/** Time after which a flow that grows evenly has brought a volume: the root of q·t + q′·t²/2 = V. */
const timeFor = (volume: number, flow: number, growth: number): number =>
  (2 * volume) / (flow + Math.sqrt(Math.max(0, flow * flow + 2 * growth * volume)));

/** First row later than a moment. */
function rowAfter(times: Float64Array, t: number): number {
  let row = rowAt(times, t);
  while (row < times.length && times[row]! <= t) row++;
  return row;
}

/** The value just after a moment: of two rows at one time the second. */
function valueAfter(times: Float64Array, values: Float64Array, t: number): number {
  const row = rowAfter(times, t) - 1;
  return row >= 0 && times[row] === t ? values[row]! : valueAt(times, values, t);
}

/**
 * What runs back after a stop of the pump, until it lifts again.
 *
 * @param into the column of `intoPond`
 * @param stop s
 */
export function runsBack({ t, flows }: Series, into: Float64Array, stop: number): Back {
  const { main } = flows;
  let row = rowAfter(t, stop);
  // The water in the main line comes to rest within seconds; where it does not, the pump has not been stopped.
  while (main && row < t.length && main[row]! > LIFTS && t[row]! < stop + REST) row++;
  if (main && row < t.length && main[row]! > LIFTS) return { stop, end: stop, volume: 0, third: stop, most: stop };
  while (main && row < t.length && main[row]! <= LIFTS) row++;
  const end = main && row < t.length ? t[Math.max(row - 1, 0)]! : t[t.length - 1]!;
  const volume = volumeUnder(t, into, stop, end);
  const reached = (share: number): number => walk(t, into, stop, end, share * volume).t;
  return { stop, end: Math.max(stop, end), volume, third: reached(1 / 3), most: reached(0.9) };
}
