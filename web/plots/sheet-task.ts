/** What is to be drawn, and where the sheet has room for it: the words all marks of the plots are made from. */
import type { Display } from '../engine/protocol.ts';
import type { Back } from './back.ts';
import type { LevelsBy } from './level-words.ts';
import type { Place } from './place.ts';
import type { Limit, Line } from './subjects.ts';
import type { Axis, Window } from './time-axis.ts';
import type { Anchor } from './time-ticks.ts';

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

/** A task laid out on its axis, each plot in its place. */
export interface Laid {
  readonly task: SheetTask;
  readonly axis: Axis;
  readonly place: Place;
}
