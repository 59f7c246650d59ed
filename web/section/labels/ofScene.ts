import type { Display } from '../../../sim/quantity/format.ts';
import type { Scale } from '../scale.ts';
import type { Scene } from '../scene.ts';
import { type Detail, detailOf } from './detail.ts';
import type { DetailRequest } from './detailFrame.ts';
import type { LevelMark } from './levelMarks.ts';
import { placeLabels } from './place.ts';
import type { Bounds, Measure, Obstacle, Placed } from './request.ts';
import { markObstacles, sceneObstacles } from './sceneObstacles.ts';
import { markRequests, sceneRequests } from './sceneRequests.ts';
import { type Box, cornersOf } from './shapes.ts';
import { outlinesOf, regionsOf, roomInSky } from './skyline.ts';
import type { LabelText } from './text.ts';

/** From the sheet's border to the first line of the top rail, and from rail to rail, px. */
const TOP_RAIL = 4;
const RAIL_STEP = 48;
/** From the lowest pipe to the bottom rail, px. */
const BOTTOM_RAIL = 4;
/** Narrowest drawing with a second rail, px. */
const TWO_RAILS = 900;
/** Width of the detail, its least and greatest height with its caption, px. */
const DETAIL = { width: 348, narrow: 270, least: 124, most: 190 } as const;

export interface SceneLabels {
  readonly scene: Scene;
  readonly scale: Scale;
  /** Of the basins where anchors on water stand, m: those of the running site, so that labels stand still. */
  readonly levels: Readonly<Record<string, number>>;
  readonly texts: readonly LabelText[];
  readonly measure: Measure;
  readonly display: Display;
  /** The pond's marks drawn from bank to bank, and the detail that may say some of them in its own words. */
  readonly marks: readonly LevelMark[];
  readonly detail: Detail | undefined;
  /** What is drawn beyond the scene itself: nappes, dimensions, scale bars. */
  readonly more?: readonly Obstacle[];
  readonly asked?: readonly string[];
}

const frameOf = ({ left, right, height }: Scale): Box => ({ left, top: 2, right, bottom: height - 2 });

function boundsOf(scene: Scene, scale: Scale): Bounds {
  const frame = frameOf(scale);
  const second = scale.width >= TWO_RAILS ? { second: TOP_RAIL + RAIL_STEP } : {};
  return {
    frame,
    rails: { top: TOP_RAIL, ...second, bottom: scale.y(scene.pipes.low) + BOTTOM_RAIL + 5 },
    ...regionsOf(outlinesOf(scene, scale), frame),
  };
}

/** What a detail puts in the way of words. */
const detailObstacle = ({ room }: Detail): Obstacle => ({
  kind: 'frame',
  of: 'detail',
  points: cornersOf(room),
  closed: true,
});

/** The labels of a scene in their seats. */
export function labelsOf(by: SceneLabels): Placed[] {
  const { scene, scale, levels, texts, measure, marks, detail, display, more = [], asked } = by;
  const told = detail?.lines.map(({ id }) => id) ?? [];
  const untold = marks.filter(({ id }) => !told.includes(id));
  const requests = [
    ...sceneRequests(scene, scale, texts, levels, asked),
    ...markRequests(scene, scale, untold, display),
  ];
  const obstacles = [
    ...sceneObstacles(scene, scale, levels),
    ...markObstacles(scene, scale, marks),
    ...(detail ? [detailObstacle(detail)] : []),
    ...more,
  ];
  return placeLabels(requests, obstacles, boundsOf(scene, scale), measure);
}

/** The detail of the pond's edge in the open sky over it, where the pond's marks crowd and the sky has room. */
export function detailInScene(
  scene: Scene,
  scale: Scale,
  by: Omit<DetailRequest, 'room' | 'pxPerMeter' | 'overflowWidth'>,
): Detail | undefined {
  const { sky } = regionsOf(outlinesOf(scene, scale), frameOf(scale));
  const width = scale.width >= TWO_RAILS ? DETAIL.width : DETAIL.narrow;
  const room = roomInSky(sky, width, DETAIL.least, DETAIL.most);
  const overflowWidth = scene.scenario.pond.overflow?.diameter ?? 0;
  return room && detailOf({ ...by, room, overflowWidth, pxPerMeter: scale.k * scale.a });
}
