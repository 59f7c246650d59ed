/** The week in which the media stand: what they hold then, and how a hand moves them along the course of a cleaning. */
import type { ClogCourse } from '../../sim/clogging/answer.ts';
import { type Display, formatNumber, formatPercent } from '../../sim/quantity/index.ts';
import { valueAt, withValueAt } from '../../sim/studies/place.ts';
import { figureOf } from '../../sim/studies/setting.ts';
import type { FileEdits } from '../engine/protocol.ts';
import { columnsAt } from '../state/moment.ts';

const [HOUR, DAY, WEEK] = [3600, 86400, 604800];
/** Steps of the hand: the finest that takes no more than so many over a course. */
const STEPS = [HOUR, 6 * HOUR, DAY, WEEK / 2, WEEK];
const MOST_STEPS = 60;
/** Of a deposit so many figures are written. */
const DIGITS = 4;
/** What is written in the file stands on a step of the hand where it is so near to it, as a share of itself. */
const NEAR = 2e-3;
/** Liters, US gallons in a cubic meter. */
const PER = { metric: [1000, 'L'], us: [1 / 0.003785411784, 'gal'] } as const;

type Held = Readonly<Record<string, number>>;

const LAYERS = 'filter.media.layers';
export const depositPlace = (i: number): string => `${LAYERS}[${i}].deposit`;

function layersOf(file: unknown): unknown[] {
  const layers = valueAt(file, LAYERS);
  return Array.isArray(layers) ? layers : [];
}

/** The file as just cleaned; the same one where nothing has settled. What a cleaning lasts follows from it alone. */
export function asCleaned(file: unknown): unknown {
  return layersOf(file).reduce<unknown>(
    (clean, layer, i) =>
      valueAt(layer, 'deposit') === undefined ? clean : withValueAt(clean, depositPlace(i), undefined),
    file,
  );
}

/** Settled volume in all layers by the file, m³; one that can't be read holds nothing. */
export const settledIn = (file: unknown): number =>
  layersOf(file).reduce<number>((sum, layer) => sum + (figureOf(valueAt(layer, 'deposit'), 'volume') ?? 0), 0);

const sum = (held: Held): number => Object.values(held).reduce((a, b) => a + b, 0);

/** Settled volume in each layer at a time since the cleaning, m³. */
export const heldAt = ({ deposits, t }: Pick<ClogCourse, 'deposits' | 't'>, time: number): Held =>
  columnsAt(deposits, t, time);

/** Channeled share at a time since the cleaning, 0..1. */
export const shareAt = ({ channeled, t }: ClogCourse, time: number): number =>
  columnsAt({ channeled }, t, time)['channeled']!;

export const endOf = ({ t }: ClogCourse): number => t[t.length - 1];

/** Time since a cleaning after which the media hold so much, s; null: beyond the course. */
export function sinceOf(course: ClogCourse, settled: number): number | null {
  const { t } = course;
  const totals = Array.from(t, (time) => sum(heldAt(course, time)));
  if (settled <= 0) return 0;
  const next = totals.findIndex((total) => total >= settled * (1 - NEAR));
  if (next < 0) return null;
  const from = Math.max(0, next - 1);
  const part = (settled - totals[from]) / (totals[next] - totals[from]);
  const since = t[from] + Math.min(1, part) * (t[next] - t[from]);
  const stepped = nearest(course, since);
  return Math.abs(stepped - since) <= NEAR * since ? stepped : since;
}

/** When the head across the media is first that at which they float up, s; undefined where it never is. */
export function liftingAt({ t, lift }: Pick<ClogCourse, 't' | 'lift'>): number | undefined {
  const next = lift.findIndex((each) => each >= 1);
  if (next <= 0) return next === 0 ? 0 : undefined;
  return t[next - 1] + ((1 - lift[next - 1]) / (lift[next] - lift[next - 1])) * (t[next] - t[next - 1]);
}

export function stepOf(course: ClogCourse): number {
  return STEPS.find((step) => endOf(course) / step <= MOST_STEPS) ?? WEEK;
}

/** The nearest step of the hand. */
export function nearest(course: ClogCourse, time: number): number {
  const step = stepOf(course);
  return step * Math.max(0, Math.min(Math.floor(endOf(course) / step), Math.round(time / step)));
}

/** What puts the deposits of all layers of one time into the file; just cleaned, the keys are taken away. */
export function depositEdits(names: readonly string[], held: Held, display: Display): FileEdits {
  const [per, unit] = PER[display];
  return names.map((name, i) => [depositPlace(i), written((held[name] ?? 0) * per, unit)]);
}

/** Rounded down, so that a layer never holds more than it has room for. */
function written(value: number, unit: string): string | undefined {
  if (!(value > 0)) return undefined;
  const grain = 10 ** (Math.floor(Math.log10(value)) + 1 - DIGITS);
  const rounded = Number((Math.floor(value / grain + 1e-6) * grain).toPrecision(DIGITS));
  return rounded > 0 ? `${rounded} ${unit}` : undefined;
}

/** '6 weeks', '2.5 weeks', '3 days', '7 hours'. */
export function weeksWords(time: number): string {
  const [size, name] = time >= WEEK ? [WEEK, 'week'] : time >= DAY ? [DAY, 'day'] : [HOUR, 'hour'];
  const count = Number((time / size).toFixed(1));
  return `${formatNumber(count, count % 1 === 0 ? 0 : 1)} ${name}${count === 1 ? '' : 's'}`;
}

/** '6 weeks uncleaned: 14 % slips round'. */
export function standingWords(course: ClogCourse, since: number | null): string {
  if (since === null) return `more than ${weeksWords(endOf(course))} uncleaned`;
  const share = `${formatPercent(shareAt(course, since))} slips round`;
  return since === 0 ? `just cleaned: ${share}` : `${weeksWords(since)} uncleaned: ${share}`;
}
