import { formatLevel } from '../../../sim/quantity/format.ts';
import { type Cut, leftAt, rightAt } from '../cut.ts';
import { type Mark, words } from '../marks.ts';
import type { Scale } from '../scale.ts';
import type { Scene } from '../scene.ts';
import { boxAt, LINE_HEIGHT } from './block.ts';
import type { LevelMark } from './levelMarks.ts';
import { meetsBox, type Ready, readied } from './obstacles.ts';
import type { Measure, Obstacle } from './request.ts';
import { type Box, boxesMeet, cornersOf, type Point } from './shapes.ts';

/** Words of a level of the pond on its own line in the water: its name and clock time at one end, its figure at the other. */
export interface TideMark {
  readonly id: LevelMark['id'];
  readonly elevation: number;
  readonly ends: readonly { readonly text: string; readonly at: Point; readonly box: Box }[];
}

/** From the bank to the words, from the line to their baseline over or under it, and between both ends, px. */
const ASIDE = 7;
const BASELINE = { over: -4, under: 12.5 };
const BETWEEN = 24;

interface Room {
  readonly left: number;
  readonly right: number;
}

/** What the banks leave of a line of words: the narrower of its top and foot. */
function roomAt(cut: Cut, face: number, y: number, scale: Scale): Room {
  const zOf = (px: number): number => (scale.y(0) - px) / (scale.k * scale.a);
  const [top, foot] = [zOf(y), zOf(y + LINE_HEIGHT)];
  return {
    left: scale.x(Math.max(face, leftAt(cut, top), leftAt(cut, foot))) + ASIDE,
    right: scale.x(Math.min(rightAt(cut, top), rightAt(cut, foot))) - ASIDE,
  };
}

function tideMark(
  { id, name, elevation, clock }: LevelMark,
  baseline: number,
  room: Room,
  figure: string,
  measure: Measure,
): TideMark | undefined {
  const named = clock ? `${name} ${clock}` : name;
  const widths = [named, figure].map((text) => measure(text, 'figure'));
  if (room.right - room.left < widths[0] + widths[1] + BETWEEN) return undefined;
  const ends = [room.left, room.right - widths[1]].map((x, i) => ({
    text: i === 0 ? named : figure,
    at: { x, y: baseline },
    box: boxAt(x, baseline - 12, { width: widths[i], height: LINE_HEIGHT }),
  }));
  return { id, elevation, ends };
}

/**
 * Marks of the pond written on their own lines, over or under them, as far as they have room: on a strip, where leaders
 * would lead out of the window.
 */
export function tideMarksOf(
  scene: Scene,
  scale: Scale,
  marks: readonly LevelMark[],
  measure: Measure,
  obstacles: readonly Obstacle[],
): TideMark[] {
  const { pond, walls, reaches, scenario } = scene;
  const face = Math.max(-Infinity, ...walls.filter(({ into }) => into === reaches.length).map(({ right }) => right));
  const found: TideMark[] = [];
  const own = (o: Obstacle): boolean => o.of === 'pond' || marks.some(({ id }) => id === o.of);
  const ready: Ready[] = obstacles.filter((o) => !own(o)).flatMap(readied);
  const lines = marks.map(({ elevation }) => scale.y(elevation));
  const free = ({ ends }: TideMark): boolean =>
    ends.every(
      ({ box }) =>
        lines.every((y) => y <= box.top || y >= box.bottom - 1) &&
        !ready.some((o) => meetsBox(o, box)) &&
        !found.some((other) => other.ends.some((end) => boxesMeet(end.box, box))),
    );
  for (const mark of marks) {
    const y = scale.y(mark.elevation);
    const tries = [BASELINE.over, BASELINE.under].flatMap((by) => {
      const room = roomAt(pond.cut, face, y + by - 12, scale);
      return tideMark(mark, y + by, room, formatLevel(mark.elevation, scenario.display), measure) ?? [];
    });
    const seat = tries.find(free);
    if (seat) found.push(seat);
  }
  return found;
}

export const tideObstacles = ({ ends }: TideMark): Obstacle[] =>
  ends.map(({ box }) => ({ kind: 'figure', points: cornersOf(box), closed: true }));

/** Depths down to which the tints take dark text, and from which they take white, m. */
const PALE_TO = 0.3;
const DEEP_FROM = 0.45;

/** The words as they stand at a level of the pond: on the dry wall, in pale water or in deep. */
export function tideMarks(tides: readonly TideMark[], level: number, scale: Scale): Mark[] {
  const surface = scale.y(level);
  const perMeter = scale.k * scale.a;
  return tides.flatMap(({ ends }) =>
    ends.map(({ text, at, box }) => {
      const [from, to] = [box.top - surface, box.bottom - surface].map((d) => d / perMeter);
      const pale = from >= 0 && to <= PALE_TO;
      const ground = to <= 0 ? '' : pale ? ' pale' : from >= DEEP_FROM ? ' deep' : ' halo';
      return words(at.x, at.y, text, `label figure${ground}`);
    }),
  );
}
