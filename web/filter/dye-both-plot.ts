/** Dye at the lip in two cases against the time since both pours: the present one drawn through, the one kept dashed. */
import type { DyeFigures } from '../../sim/dye/answer.ts';
import { circle, type Mark, type Pixel, path, segment, through, words } from '../section/marks.ts';
import { type DyeScale, dyeScale, ground, hand, row, TOP, tenths, wholeOf } from './dye-plot.ts';

/** A part that goes round is drawn on its own from so much of the highest on. */
const SEEN = 0.03;
/** A curve is named where it has fallen to this part of its highest. */
const FALLEN = 0.55;
/** Names stand so far right of both curves, and end before the sheet does, px. */
const ASIDE = 40;
const NAME = 62;
const ROWS = [TOP + 17, TOP + 36] as const;

/** @param since time since the pours that is drawn, s; undefined where none of it is */
export function bothDyesMarks(now: DyeFigures, kept: DyeFigures, width: number, since: number | undefined): Mark[] {
  const scale = dyeScale([now, kept], width);
  return [
    ...ground(now, scale, since),
    path(through(row(wholeOf(kept), kept.E.t, scale)), 'as-kept'),
    path(through(row(wholeOf(now), now.E.t, scale)), 'by-media'),
    ...roundPart(now, scale),
    ...hand(scale, since),
    ...tenths(now, scale),
    ...names(now, kept, scale, width),
  ];
}

/** What of the present dye goes round. */
function roundPart({ E }: DyeFigures, scale: DyeScale): Mark[] {
  const highest = E.round.reduce((best, value, i) => (value > E.round[best] ? i : best), 0);
  const peak = E.round[highest];
  if (peak < SEEN * scale.most) return [];
  return [
    path(through(row(E.round, E.t, scale)), 'round-part'),
    words(scale.x(E.t[highest]) + 6, scale.y(peak) - 5, 'round', 'curve-name'),
  ];
}

/** Each curve by its name with a line to where it falls; the names in the order in which their lines do not cross. */
function names(now: DyeFigures, kept: DyeFigures, scale: DyeScale, width: number): Mark[] {
  const [a, b] = [now, kept].map((dye) => fallen(dye, scale));
  const at = Math.min(width - NAME, Math.max(a[0], b[0]) + ASIDE);
  const seats = ROWS.map((y): Pixel => [at - 4, y - 4]);
  const isCrossed = crosses(a, seats[0], b, seats[1]);
  const named = (name: string, [x, y]: Pixel, seat: number): Mark[] => [
    path(segment(x, y, ...seats[seat]), 'leader'),
    path(circle(x, y, 1.6), 'leader-dot'),
    words(at, ROWS[seat], name, name === 'now' ? 'curve-name present' : 'curve-name'),
  ];
  return [...named('now', a, isCrossed ? 1 : 0), ...named('as kept', b, isCrossed ? 0 : 1)];
}

function fallen(dye: DyeFigures, scale: DyeScale): Pixel {
  const whole = wholeOf(dye);
  const highest = Math.max(...whole);
  const top = whole.indexOf(highest);
  const down = whole.findIndex((value, i) => i > top && value <= FALLEN * highest);
  const i = down < 0 ? whole.length - 1 : down;
  return [scale.x(dye.E.t[i]), scale.y(whole[i])];
}

/** Whether the line from a to b crosses that from c to d. */
function crosses(a: Pixel, b: Pixel, c: Pixel, d: Pixel): boolean {
  const side = (p: Pixel, q: Pixel, r: Pixel): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}
