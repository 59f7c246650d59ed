/** Words on the drawing: where labels stand, dimensions, the detail that takes over where levels crowd. */
export type { Dimension, HeightRequest } from './dimension.ts';
export { measureText } from './measure.ts';
export { placeLabels } from './place.ts';
export type {
  Bounds,
  LabelLine,
  LabelRequest,
  LineStyle,
  Measure,
  Obstacle,
  ObstacleKind,
  Placed,
  PlacedLine,
  Seat,
} from './request.ts';
export type { Box, Point } from './shapes.ts';
