/** Both plots on one opened axis as plain marks: what the page draws, what is saved, and where its playhead runs. */
import type { Clip, Mark } from '../section/marks.ts';
import { flowMarks } from './flow-marks.ts';
import { barMarks, frameMarks, titleEnd } from './frame-marks.ts';
import { levelMarks } from './level-marks.ts';
import { type Place, placeOf } from './place.ts';
import type { Drawn, SheetTask } from './sheet-task.ts';
import type { Line } from './subjects.ts';
import { type Axis, openAxis } from './time-axis.ts';
import { axisTicks } from './time-ticks.ts';
import { flowScale, levelScale, type ValueScale } from './value-scale.ts';

export interface Sheet {
  readonly axis: Axis;
  readonly place: Place;
  readonly marks: readonly Mark[];
  readonly clips: readonly Clip[];
  /** Names that found no seat beside their lines. */
  readonly unnamed: readonly string[];
  /** Names of the lines that lie wholly beyond the scale. */
  readonly beyond: readonly string[];
  readonly levels: ValueScale;
  readonly flows: ValueScale;
  /** px where the title over the levels ends. */
  readonly titleEnd: number;
}

const all = ({ lines, other }: Drawn): Line[] => (other ? [...lines, other] : [...lines]);

export function sheetOf(task: SheetTask): Sheet {
  const place = placeOf(task.width);
  const axis = openAxis(task.span, task.window, place.right - place.left);
  const { display, by } = task;
  const levels = levelScale(all(task.levels), task.limits, by, { ...place.levels, display });
  const flows = flowScale(all(task.flows), { ...place.flows, display });
  const ticks = axisTicks(axis, task.starts, task.anchor, task.width - place.right);
  const laid = { task, axis, place };
  const upper = levelMarks(laid, levels);
  const lower = flowMarks(laid, flows);
  return {
    axis,
    place,
    marks: [
      ...frameMarks(axis, place, ticks, levels, flows, by),
      ...upper.marks,
      ...lower.marks,
      ...barMarks(axis, place, task.starts),
    ],
    clips: [upper.clip, lower.clip],
    unnamed: [...upper.unnamed, ...lower.unnamed],
    beyond: upper.beyond,
    levels,
    flows,
    titleEnd: titleEnd(levels, by, place),
  };
}
