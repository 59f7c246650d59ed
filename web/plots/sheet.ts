/** Both plots on one opened axis as plain marks: what the page draws, what is saved, and where its playhead runs. */
import type { Display } from '../engine/protocol.ts';
import type { Clip, Mark } from '../section/marks.ts';
import { type Axis, openAxis, type Window } from './axis.ts';
import type { Back } from './back.ts';
import { flowMarks } from './flow-marks.ts';
import { barMarks, frameMarks, type Place, placeOf, titleEnd } from './frame-marks.ts';
import { levelMarks } from './level-marks.ts';
import type { Limit, Line } from './subjects.ts';
import { type Anchor, axisTicks } from './ticks.ts';
import { flowScale, levelScale, type ValueScale } from './values.ts';
import type { LevelsBy } from './words.ts';

/** The first of each is the subject; what another case has of it is dashed. */
export interface Drawn {
  readonly lines: readonly Line[];
  readonly other: Line | undefined;
}

export interface SheetTask {
  readonly width: number;
  readonly span: number;
  readonly window: Window;
  readonly starts: string;
  readonly display: Display;
  readonly by: LevelsBy;
  readonly levels: Drawn;
  readonly flows: Drawn;
  readonly limits: readonly Limit[];
  /** The other case fails: its lines and names say so. */
  readonly otherFails: boolean;
  readonly anchor: Anchor | undefined;
  /** What runs back after the stop the window is about, and the line it lies under. */
  readonly back: { readonly back: Back; readonly line: Line } | undefined;
}

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
  const known = { task, axis, place };
  const upper = levelMarks(known, levels);
  const lower = flowMarks(known, flows);
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

/** What the marks of one plot are made from. */
export interface Known {
  readonly task: SheetTask;
  readonly axis: Axis;
  readonly place: Place;
}
