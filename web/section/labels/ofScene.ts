import { lengthMarks } from '../rulers.ts';
import type { Running } from '../running.ts';
import type { Scale } from '../scale.ts';
import type { Scene } from '../scene.ts';
import { type Detail, detailOf } from './detail.ts';
import { crowded } from './detailFrame.ts';
import { footOf } from './detailShapes.ts';
import { type Dimension, dimensionObstacles, dimensionsOf } from './dimension.ts';
import { fallHeights } from './heights.ts';
import { type LevelMark, levelMarksOf } from './levelMarks.ts';
import { letterBox } from './markShapes.ts';
import { placeLabels } from './place.ts';
import type { Bounds, LabelRequest, Measure, Obstacle, Placed } from './request.ts';
import { markObstacles, sceneObstacles } from './sceneObstacles.ts';
import { markRequests, sceneRequests } from './sceneRequests.ts';
import { type Box, cornersOf } from './shapes.ts';
import { outlinesOf, regionsOf, roomInSky } from './skyline.ts';
import type { Subject } from './text.ts';
import { roomyTexts } from './texts.ts';
import { type TideMark, tideMarksOf, tideObstacles } from './tideMarks.ts';

/** From the sheet's border to the first line of the top rail, and from rail to rail, px. */
const TOP_RAIL = 4;
const RAIL_STEP = 48;
/** From the middle of the lowest pipe to the bottom rail, px. */
const BOTTOM_RAIL = 9;
/** Narrowest drawing with a second rail and a wide detail, px; a strip is seen a little at a time. */
const WIDE = 900;
const isWide = ({ width, strip }: Scale): boolean => width >= WIDE && !strip;
/** Widths of the detail, px: on a strip no wider than its narrowest window. */
const DETAIL = { wide: 348, narrow: 270, window: 330 } as const;
/** Its least and greatest height with its caption, and what labels under it take, px. */
const DETAIL_HEIGHT = { least: 124, most: 190 };
const UNDER_DETAIL = 48;
/** From the middle of the narrowest window on a strip to the end of the detail, px. */
const STRIP_HALF = 170;

/** All words of a drawing in their places: they stand still while the water moves. */
export interface SceneWords {
  readonly labels: readonly Placed[];
  /** The parts that found no room for words: theirs come by the press. */
  readonly byPress: readonly string[];
  readonly dimensions: readonly Dimension[];
  /** Marks of the pond written on their own lines. */
  readonly tides: readonly TideMark[];
  readonly detail: Detail | undefined;
  /** What the detail shows, framed on the drawing. */
  readonly window: Box | undefined;
}

export interface WordsRequest {
  readonly scene: Scene;
  readonly scale: Scale;
  /** The site with its water running: anchors stand on this water, and words keep off what falls. */
  readonly subject: Subject;
  readonly running: Running;
  readonly measure: Measure;
  /** Places of the parts the question asked is about; they are seated first. */
  readonly asked?: readonly string[];
}

const frameOf = ({ left, right, height }: Scale): Box => ({ left, top: 2, right, bottom: height - 2 });

function boundsOf(scene: Scene, scale: Scale): Bounds {
  const frame = frameOf(scale);
  const second = isWide(scale) ? { second: TOP_RAIL + RAIL_STEP } : {};
  return {
    frame,
    rails: { top: TOP_RAIL, ...second, bottom: scale.y(scene.pipes.low) + BOTTOM_RAIL },
    ...regionsOf(outlinesOf(scene, scale), frame),
  };
}

const closed = (kind: Obstacle['kind'], box: Box): Obstacle => ({ kind, points: cornersOf(box), closed: true });

/** The bar of lengths and the words beside it. */
function rulerObstacles({ scale, subject, measure }: WordsRequest): Obstacle[] {
  return lengthMarks(scale, subject.display).flatMap((mark) => {
    if (mark.kind !== 'text') return [];
    const width = measure(mark.text, 'name');
    const left = mark.x - { start: 0, middle: width / 2, end: width }[mark.at];
    return [closed('figure', { left, top: mark.y - 10, right: left + width, bottom: mark.y + 7 })];
  });
}

/** Rooms for the detail up to an end, the wished one first: wide on a wide drawing, with labels under it. */
const detailRooms = (sky: readonly Box[], scale: Scale, end: number): Box[] =>
  (isWide(scale) ? [DETAIL.wide, DETAIL.narrow] : [DETAIL.narrow, scale.strip ? DETAIL.window : DETAIL.wide]).flatMap(
    (width) => [UNDER_DETAIL, 0].flatMap((below) => roomInSky(sky, width, { ...DETAIL_HEIGHT, below, end }) ?? []),
  );

/**
 * The detail of the pond's edge where the pond's marks crowd, in the first room in which it is largest. On a strip it
 * stands where the strip is first seen, if it can.
 */
function detailIn(sky: readonly Box[], by: WordsRequest, marks: readonly LevelMark[]): Detail | undefined {
  const { scene, scale, subject, measure } = by;
  const { cut } = scene.pond;
  const { display } = subject;
  const overflowWidth = scene.scenario.pond.overflow?.diameter ?? 0;
  const pxPerMeter = scale.k * scale.a;
  if (!crowded(marks, pxPerMeter)) return undefined;
  for (const end of scale.strip ? [scale.x(cut.left + cut.width / 2) + STRIP_HALF, Infinity] : [Infinity]) {
    const details = (scale.strip ? [true, false] : [false]).flatMap((clocks) =>
      detailRooms(sky, scale, end).flatMap(
        (room) => detailOf({ marks, overflowWidth, pxPerMeter, room, display, measure, clocks }) ?? [],
      ),
    );
    const most = Math.max(...details.map(({ times }) => times));
    const best = details.find(({ times }) => times === most);
    if (best) return best;
  }
  return undefined;
}

/** What the detail shows, on the drawing: the pond's edge at the face of what stands in the water there. */
function windowOf({ frame, pxPerMeter, top, bottom }: Detail, { scene, scale }: WordsRequest): Box {
  const { pond, walls, reaches } = scene;
  const faces = walls.filter(({ into }) => into === reaches.length).map(({ right }) => right);
  const across = ((frame.right - frame.left) / pxPerMeter) * scale.a;
  const left = scale.x(Math.max(pond.cut.left, ...faces)) - footOf({ ...frame, left: 0, right: across });
  return { left, top: scale.y(top), right: left + across, bottom: scale.y(bottom) };
}

/** What the labels of a scene ask for, what stands in their way, and the sheet they are set on. */
export interface LabelTask {
  readonly requests: readonly LabelRequest[];
  readonly obstacles: readonly Obstacle[];
  readonly bounds: Bounds;
  readonly drawn: Pick<SceneWords, 'dimensions' | 'tides' | 'detail' | 'window'>;
}

export function labelTask(by: WordsRequest): LabelTask {
  const { scene, scale, subject, running, measure, asked } = by;
  const { levels } = running;
  const { display } = subject;
  const bounds = boundsOf(scene, scale);
  const marks = levelMarksOf(scene.scenario, subject.answer);
  const detail = detailIn(bounds.sky, by, marks);
  const window = detail && windowOf(detail, by);
  const drawn = [
    ...sceneObstacles(scene, scale, running),
    ...markObstacles(scene, scale, marks),
    ...(detail ? [closed('frame', detail.room)] : []),
    ...(window ? [closed('line', window), closed('figure', letterBox(window))] : []),
    ...rulerObstacles(by),
  ];
  const falls = fallHeights(scene, scale, levels);
  const dimensions = dimensionsOf(falls, scale.y, display, measure, bounds.frame, drawn);
  // The overflow's pipe has a label of its own.
  const untold = marks.filter(({ id }) => id !== 'pond.overflow' && !detail?.marks.some((mark) => mark.id === id));
  const heights = [...drawn, ...dimensions.flatMap(dimensionObstacles)];
  const tides = scale.strip ? tideMarksOf(scene, scale, untold, measure, heights) : [];
  const led = untold.filter(({ id }) => !tides.some((tide) => tide.id === id));
  const requests = [
    ...sceneRequests(scene, scale, roomyTexts(subject, measure), levels, asked),
    ...markRequests(scene, scale, led, display),
  ];
  const obstacles = [...heights, ...tides.flatMap(tideObstacles)];
  return { requests, obstacles, bounds, drawn: { dimensions, tides, detail, window } };
}

/** Finds all words of a drawing their places. */
export function wordsOfScene(request: WordsRequest): SceneWords {
  const { requests, obstacles, bounds, drawn } = labelTask(request);
  const labels = placeLabels(requests, obstacles, bounds, request.measure);
  const byPress = requests.map(({ id }) => id).filter((id) => !labels.some((label) => label.id === id));
  return { labels, byPress, ...drawn };
}
