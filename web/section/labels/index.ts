/** Words on the drawing: where labels stand, dimensions, the detail that takes over where levels crowd. */
export { type Detail, detailOf } from './detail.ts';
export { crowded, type DetailRequest } from './detailFrame.ts';
export type { DetailWord } from './detailWords.ts';
export { type Dimension, dimensionObstacles, dimensionsOf, type HeightRequest } from './dimension.ts';
export { type LevelMark, levelMarksOf } from './levelMarks.ts';
export { measureText } from './measure.ts';
export { type LabelTask, labelTask, type SceneWords, type WordsRequest, wordsOfScene } from './ofScene.ts';
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
export { labelsCss } from './styles.ts';
export type { LabelText, Subject } from './text.ts';
export { labelTexts, reworded, roomyTexts } from './texts.ts';
export { wordMarks } from './wordMarks.ts';
