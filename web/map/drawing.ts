/** A map as marks: the region, lines with their words, the present point. Pure. */
import type { BalanceCheck, MapPoint, OperatingMap } from '../../sim/map/answer.ts';
import { borderOf, liftOnset, lineAt, type MapLine, regionOf } from '../../sim/map/lines.ts';
import { isLifted } from '../../sim/map/region.ts';
import { closed, type Pixel, through } from '../section/marks.ts';
import { type Family, levelsOf } from './families.ts';
import { type Area, type Seat, Seating } from './labels.ts';
import { pixelAt, type Sheet } from './sheet.ts';

export interface DrawnLine {
  readonly d: string;
  /** Class of its look: a family's figure, 'border' or 'onset'. */
  readonly look: string;
  readonly level: number;
}

export interface MapDrawing {
  /** Outline of the region where all checks hold; '' where none is. */
  readonly region: string;
  readonly lines: readonly DrawnLine[];
  readonly words: readonly Seat[];
}

/** Levels a family has at the most, on a narrow plane and on a wide one. */
const [FEW, MANY, WIDE] = [3, 5, 400];
/** Words of an area want this many grid steps round them. */
const ROOM = 1.6;
/** Room kept free round the present point, px. */
const POINT = 12;

/**
 * @param shown the families drawn
 * @param at the present point's place on the plane, which no words may cover
 */
export function drawMap(
  map: OperatingMap,
  families: readonly Family[],
  sheet: Sheet,
  at: readonly [number, number],
): MapDrawing {
  const toPixels = ({ pieces }: MapLine): Pixel[][] =>
    pieces.map((piece) => piece.map((place) => pixelAt(sheet, place)));
  const plane: Area = {
    left: sheet.left + 2,
    right: sheet.left + sheet.across - 2,
    top: sheet.top + 2,
    bottom: sheet.top + sheet.down - 2,
  };
  const seating = new Seating(plane, [pointArea(pixelAt(sheet, at))]);
  const lines: DrawnLine[] = [];
  const add = (line: MapLine, look: string): Pixel[][] => {
    const pieces = toPixels(line);
    if (pieces.length > 0) lines.push({ d: pieces.map(through).join(''), look, level: line.level });
    return pieces;
  };
  const onset = add(liftOnset(map), 'onset');
  const border = borderOf(map);
  add(border, 'border');
  const unnamed = seatAreas(map, sheet, seating, onset);
  for (const family of families) {
    const drawn = levelsOf(map, family, sheet.across > WIDE ? MANY : FEW).map((level) => {
      const pieces = add(lineAt(map, family.figure, level), family.figure);
      return { level, pieces, length: pieces.reduce((sum, piece) => sum + piece.length, 0) };
    });
    seatFamily(family, drawn, seating);
  }
  for (const { check, line } of bordersOf(map, border, unnamed))
    seating.besideLine(
      line.map((place) => pixelAt(sheet, place)),
      [`${check} fails beyond`, `${check} fails`],
    );
  return {
    region: regionOf(map)
      .map((ring) => closed(ring.map((place) => pixelAt(sheet, place))))
      .join(''),
    lines,
    words: seating.seats,
  };
}

const pointArea = ([x, y]: Pixel): Area => ({ left: x - POINT, right: x + POINT, top: y - POINT, bottom: y + POINT });

interface Drawn {
  readonly level: number;
  readonly pieces: readonly (readonly Pixel[])[];
  readonly length: number;
}

/** The longest line says what its figure is of, the others only how much. */
function seatFamily({ level, whole, round = level }: Family, drawn: readonly Drawn[], seating: Seating): void {
  const byLength = [...drawn].filter(({ length }) => length > 0).sort((a, b) => b.length - a.length);
  const lead = byLength.find((line) => seating.onLine(line.pieces, [whole(line.level)]));
  for (const line of byLength) if (line !== lead) seating.onLine(line.pieces, [round(line.level)]);
}

const AFLOAT = 'media float up';

/** What a place is called by: that all checks hold, that one fails, or that the media float. */
const kindOf = (point: MapPoint): string => {
  if (point.fails === null) return 'all checks hold';
  return point.fails === 'channeling' && isLifted(point) ? AFLOAT : `${point.fails} fails here`;
};

/**
 * Each kind of place named where it has the most room; where floating media have none, on the line at which they lift.
 *
 * @returns checks that fail in places too small for their name
 */
function seatAreas(
  map: OperatingMap,
  sheet: Sheet,
  seating: Seating,
  onset: readonly (readonly Pixel[])[],
): BalanceCheck[] {
  const unnamed: BalanceCheck[] = [];
  const found = map.points.filter((point) => point.found);
  for (const kind of new Set(found.map(kindOf))) {
    const same = found.filter((point) => kindOf(point) === kind);
    const seats = roomiest(map, same);
    const seated = seats.some(({ x, y }) => seating.at(kind, pixelAt(sheet, [x, y]), true));
    if (!seated && kind === AFLOAT && onset.length > 0) seating.onLine(onset, [AFLOAT, 'afloat']);
    else if (!seated && kind !== AFLOAT && same[0].fails !== null) unnamed.push(same[0].fails);
  }
  return unnamed;
}

/** The parts of the region's border that checks draw: those next to which they fail. */
function bordersOf(
  map: OperatingMap,
  { pieces }: MapLine,
  checks: readonly BalanceCheck[],
): { check: BalanceCheck; line: MapLine['pieces'][number] }[] {
  const failing = map.points.filter(({ fails }) => fails !== null);
  return checks.flatMap((check) => {
    const next = ([x, y]: MapLine['pieces'][number][number]): boolean => {
      const far = (point: MapPoint): number => Math.hypot(point.x - x, point.y - y);
      return failing.reduce((a, b) => (far(b) < far(a) ? b : a)).fails === check;
    };
    const line = pieces.map((piece) => piece.filter(next)).sort((a, b) => b.length - a.length)[0] ?? [];
    return line.length > 0 ? [{ check, line }] : [];
  });
}

/** Points by how far the next one of another kind is, the farthest first; those with too little room left out. */
function roomiest({ x, y, points }: OperatingMap, same: readonly MapPoint[]): MapPoint[] {
  const steps = (axis: readonly number[]): number => (axis[axis.length - 1] - axis[0]) / (axis.length - 1);
  const [dx, dy] = [steps(x), steps(y)];
  const kind = new Set(same);
  const others = points.filter((point) => !kind.has(point));
  const room = (point: MapPoint): number => {
    const edge = Math.min(point.x - x[0], x[x.length - 1] - point.x) / dx + 1;
    return others.reduce(
      (least, other) => Math.min(least, Math.hypot((other.x - point.x) / dx, (other.y - point.y) / dy)),
      Math.min(edge, (point.y - y[0]) / dy + 1, (y[y.length - 1] - point.y) / dy + 1),
    );
  };
  return same
    .map((point) => ({ point, room: room(point) }))
    .filter(({ room: each }) => each >= ROOM)
    .sort((a, b) => b.room - a.room)
    .slice(0, 40)
    .map(({ point }) => point);
}
