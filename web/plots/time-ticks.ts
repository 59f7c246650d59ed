/** Ticks of the opened axis: the site's clock beside the opened window, minutes from its event inside. */
import { formatNumber, momentText, parseMoment } from '../../sim/quantity/index.ts';
import { textWidth } from './text-width.ts';
import { type Axis, openedOf, type Piece, seamsOf } from './time-axis.ts';

/** What the opened minutes are counted from. */
export interface Anchor {
  readonly t: number;
  /** 'stop', 'start'; '0' for anything else. */
  readonly word: string;
}

export interface TimeTick {
  readonly x: number;
  /** '' where there is no room for a word. */
  readonly label: string;
  /** px of the word's middle. */
  readonly at: number;
  readonly opened: boolean;
  /** The tick the others are counted from. */
  readonly anchor: boolean;
}

const STEPS = [
  1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400, 172_800, 432_000,
  604_800, 1_209_600, 2_592_000, 7_776_000, 15_552_000,
];

/** px between ticks at least, and between two words. */
const APART = { opened: 30, beside: 40, words: 8 };

/** Longest window whose ticks are counted from its event, s; over more the clock says more. */
const COUNTED = 7200;

/** The least round step that keeps ticks so many px apart. */
export function stepFor(secondsPerPixel: number, apart: number): number {
  return STEPS.find((step) => step >= secondsPerPixel * apart) ?? STEPS[STEPS.length - 1]!;
}

/** Multiples of a step from `zero` on that fall in [from, to]. */
function multiples(step: number, zero: number, from: number, to: number): number[] {
  const first = Math.ceil((from - zero) / step - 1e-9);
  const last = Math.floor((to - zero) / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => zero + (first + i) * step);
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The clock as a tick says it: the day at midnight and over longer steps. */
function clockLabel(starts: string, t: number, step: number): string {
  const text = momentText(starts, t);
  const midnight = step >= 3600 && text.endsWith('T00:00:00');
  if (step >= 86_400 || midnight) return `${Number(text.slice(8, 10))} ${MONTHS[Number(text.slice(5, 7)) - 1]}`;
  return step < 60 ? text.slice(11) : text.slice(11, 16);
}

/** '+4', '−30'; the last of a row says its unit. */
function countedLabel(seconds: number, step: number, named: boolean): string {
  const [size, unit] = step >= 3600 ? [3600, 'h'] : step >= 60 ? [60, 'min'] : [1, 's'];
  const figure = formatNumber(seconds / size);
  return `${seconds > 0 ? '+' : ''}${figure}${named ? ` ${unit}` : ''}`;
}

interface Wanted {
  readonly t: number;
  readonly label: string;
  readonly opened: boolean;
  readonly anchor: boolean;
}

const scaleOf = (piece: Piece): number => (piece.to - piece.from) / Math.max(1e-9, piece.right - piece.left);

function clockTicks(piece: Piece, starts: string): Wanted[] {
  const step = stepFor(scaleOf(piece), APART.beside);
  const zero = -((parseMoment(starts) ?? 0) % Math.max(step, 86_400));
  return multiples(step, zero, piece.from, piece.to).map((t) => ({
    t,
    label: clockLabel(starts, t, step),
    opened: piece.opened,
    anchor: false,
  }));
}

function countedTicks(piece: Piece, anchor: Anchor): Wanted[] {
  const step = stepFor(scaleOf(piece), APART.opened);
  const all = multiples(step, anchor.t, piece.from, piece.to);
  return all.map((t, i) => {
    const seconds = Math.round(t - anchor.t);
    const label = seconds === 0 ? anchor.word : countedLabel(seconds, step, i === all.length - 1);
    return { t, label, opened: true, anchor: seconds === 0 };
  });
}

/** Leaves out the word of every tick that would touch one set before it; words stay within the axis. */
function seated(wanted: readonly Wanted[], axis: Axis, room: number): TimeTick[] {
  const opened = openedOf(axis);
  const seamed = axis.pieces.length > 1;
  const inside = seamed ? ([opened[0] + 2, opened[1] - 2] as const) : ([-room, axis.width + room] as const);
  // No word stands on a seam.
  const taken: [number, number][] = seamsOf(axis).map((x) => [x + APART.words - 1, x - APART.words + 1]);
  const rank = (tick: Wanted, last: boolean): number => (tick.anchor ? 0 : tick.opened ? (last ? 1 : 2) : 3);
  const lastOpened = wanted.reduce((last, { opened }, i) => (opened ? i : last), -1);
  const order = wanted.map((tick, i) => ({ tick, i, rank: rank(tick, i === lastOpened) }));
  const words = wanted.map((tick) => ({ label: '', at: axis.x(tick.t) }));
  for (const { tick, i } of order.sort((a, b) => a.rank - b.rank || a.i - b.i)) {
    const half = textWidth(tick.label, 12) / 2 + 1;
    const [left, right] = tick.opened ? inside : [-room, axis.width + room];
    const x = Math.min(right - half, Math.max(left + half, axis.x(tick.t)));
    if (taken.some(([from, to]) => x - half < to + APART.words && x + half > from - APART.words)) continue;
    taken.push([x - half, x + half]);
    words[i] = { label: tick.label, at: x };
  }
  return wanted.map(({ t, opened, anchor }, i) => ({ x: axis.x(t), opened, anchor, ...words[i]! }));
}

/**
 * @param anchor the event the window is about; left out: the window has the clock, too
 * @param room px right of the axis that words may reach into
 */
export function axisTicks(axis: Axis, starts: string, anchor: Anchor | undefined, room = 0): TimeTick[] {
  const counted = anchor && axis.window[1] - axis.window[0] <= COUNTED ? anchor : undefined;
  const wanted = axis.pieces.flatMap((piece) =>
    piece.opened && counted ? countedTicks(piece, counted) : clockTicks(piece, starts),
  );
  return seated(wanted, axis, room);
}

/** Ticks of the bar of all the time, at one scale. */
export function barTicks(span: number, starts: string, width: number): TimeTick[] {
  const piece: Piece = { from: 0, to: span, left: 0, right: width, opened: false };
  const step = stepFor(span / width, 64);
  const zero = -((parseMoment(starts) ?? 0) % Math.max(step, 86_400));
  return multiples(step, zero, 0, span).map((t) => ({
    x: (t / span) * piece.right,
    at: (t / span) * piece.right,
    label: clockLabel(starts, t, step),
    opened: false,
    anchor: false,
  }));
}
