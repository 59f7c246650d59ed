import { linesIn } from './block.ts';
import { seatInTheOpen, seatInWater } from './free.ts';
import { seatOnRail } from './rail.ts';
import type { Bounds, LabelRequest, Measure, Obstacle, Placed, Seat } from './request.ts';
import { type Seated, type Sheet, sheetOf, type Worded } from './sheet.ts';
import { type Wording, wordingsOf } from './wordings.ts';

function seatAt(sheet: Sheet, seat: Seat, label: Worded, seated: readonly Seated[]): Seated[] | undefined {
  const { rails } = sheet.bounds;
  const rail = (top: number | undefined, name: 'top rail' | 'second rail' | 'bottom rail') =>
    top === undefined ? undefined : seatOnRail(sheet, name, top, label, seated);
  switch (seat) {
    case 'top rail':
      return rail(rails.top, seat);
    case 'second rail':
      return rail(rails.second, seat);
    case 'bottom rail':
      return rail(rails.bottom, seat);
    case 'inside water':
      return seatInWater(sheet, label, seated);
    default:
      return seatInTheOpen(sheet, seat, label, seated);
  }
}

/** Wordings and seats in the order in which they are tried. Shorter words in its own water come before a seat outside. */
function triesOf(request: LabelRequest): [Wording, Seat][] {
  const [full, ...rest] = wordingsOf(request);
  const inWater = (seat: Seat): [Wording, Seat][] =>
    seat === 'inside water' ? rest.filter(({ form }) => form === 'short').map((wording) => [wording, seat]) : [];
  const first = request.seats.flatMap((seat): [Wording, Seat][] => [[full, seat], ...inWater(seat)]);
  const later = rest.flatMap((wording) => request.seats.map((seat): [Wording, Seat] => [wording, seat]));
  return [...first, ...later];
}

/** All seated labels with this one among them, by its first wording and seat that are free; as before where none is. */
function seatOne(sheet: Sheet, request: LabelRequest, seated: Seated[]): Seated[] {
  for (const [wording, seat] of triesOf(request)) {
    const found = seatAt(sheet, seat, { request, ...wording }, seated);
    if (found) return found;
  }
  return seated;
}

function placedOf({ request, seat, form, align, lines, box, leader, ground }: Seated, measure: Measure): Placed {
  const dot = leader.length > 0 ? request.anchor : undefined;
  return { id: request.id, seat, form, align, lines: linesIn(box, lines, align, measure), box, leader, dot, ground };
}

/**
 * Seats labels on a sheet greedily by priority: each takes the first of its seats at
 * which its text, padded 4 px, meets no obstacle, anchor, text or leader, and from which a leader can be drawn. What
 * finds no seat with its figure is tried without it, and then left out.
 *
 * @returns the labels that found a seat, in the order of the requests
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  obstacles: readonly Obstacle[],
  bounds: Bounds,
  measure: Measure,
): Placed[] {
  const sheet = sheetOf(requests, obstacles, bounds, measure);
  let seated: Seated[] = [];
  for (const request of [...requests].sort((a, b) => a.priority - b.priority)) {
    seated = seatOne(sheet, request, seated);
  }
  const order = new Map(requests.map(({ id }, i) => [id, i]));
  return seated.map((label) => placedOf(label, measure)).sort((a, b) => order.get(a.id)! - order.get(b.id)!);
}
