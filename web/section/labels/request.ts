import type { Box, Point } from './shapes.ts';

/** A name is set in italic 13 px, a figure in roman 12.5 px. */
export type LineStyle = 'name' | 'figure';

export interface LabelLine {
  readonly text: string;
  readonly style: LineStyle;
}

/** Width in px of a text as it will be set. */
export type Measure = (text: string, style: LineStyle) => number;

/** The kinds of places where words may stand, in the order in which a label would have them. */
export type Seat = 'top rail' | 'second rail' | 'sky right' | 'inside water' | 'blank earth' | 'bottom rail';

/** A part of the drawing that wants words. */
export interface LabelRequest {
  /** The part's place in the file, 'watercourse[0].stones[1]'. */
  readonly id: string;
  /** Lower is seated sooner; equal ones by their order. */
  readonly priority: number;
  readonly lines: readonly LabelLine[];
  /** Shorter lines, tried where the full ones find no seat. */
  readonly short?: readonly LabelLine[];
  /** What is left without the figure; left out: the lines that are names. */
  readonly bare?: readonly LabelLine[];
  /** Where the leader's dot stands: on the part, at its edge rather than its middle. */
  readonly anchor: Point;
  readonly seats: readonly Seat[];
  /** Stretch of the part's own water dark or pale enough for text; without it 'inside water' is no seat. */
  readonly water?: { readonly box: Box; readonly tint: 'pale' | 'deep' };
}

/** What stands in the way. Text keeps off all of it; the kind decides what a leader may do with it. */
export type ObstacleKind = 'stone' | 'frame' | 'figure' | 'pipe' | 'nappe' | 'dimension' | 'line' | 'water';

/**
 * A thing that words keep off. A leader misses stones, frames, figures and water in which its anchor doesn't stand,
 * crosses pipes at right angles only and may cross the rest. A label's own part (`of` its id) does not stop its leader, nor the text in its own water.
 */
export interface Obstacle {
  readonly kind: ObstacleKind;
  readonly of?: string;
  /** A polyline, or a closed outline where `closed`. */
  readonly points: readonly Point[];
  readonly closed?: boolean;
  /** Of the stroke, px; 0 where left out. */
  readonly width?: number;
}

/** The sheet labels are set on. */
export interface Bounds {
  readonly frame: Box;
  /** Top of the first line on each rail, px; a rail left out has no seats. */
  readonly rails: { readonly top?: number; readonly second?: number; readonly bottom?: number };
  /** Open sky and bare earth as boxes side by side, from left to right; a text may span several that touch. */
  readonly sky: readonly Box[];
  readonly earth: readonly Box[];
}

/** Which of a label's wordings found room. */
export type Form = 'full' | 'short' | 'figure dropped';

export type Align = 'start' | 'middle' | 'end';

export interface PlacedLine extends LabelLine {
  /** Left end of the baseline. */
  readonly x: number;
  readonly y: number;
}

/** A label that found its seat. One that found none is not among the placed: its words come by the press. */
export interface Placed {
  readonly id: string;
  readonly seat: Seat;
  readonly form: Form;
  /** Side of the box with which the lines are flush. */
  readonly align: Align;
  readonly lines: readonly PlacedLine[];
  /** Round the text, without padding. */
  readonly box: Box;
  /** From the text to the anchor; empty where the text stands in its own water. */
  readonly leader: readonly Point[];
  /** The anchor's dot; undefined where the text stands in its own water. */
  readonly dot: Point | undefined;
  /** What the text stands on: a halo over earth, the color of the text over water. */
  readonly ground: 'paper' | 'earth' | 'pale water' | 'deep water';
}
