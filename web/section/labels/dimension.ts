import type { Box, Point } from './shapes.ts';

/** A height to be measured on the drawing: two elevations and where the measuring line stands. */
export interface HeightRequest {
  readonly id: string;
  /** Elevations, m. */
  readonly upper: number;
  readonly lower: number;
  /** Of the measuring line, px. */
  readonly x: number;
  /** Where the thin lines at either end start, on the things measured, px. */
  readonly upperFrom: number;
  readonly lowerFrom: number;
}

/** A dimension line ready to draw: oblique ticks at its ends, thin lines to what it measures, its figure beside it. */
export interface Dimension {
  readonly id: string;
  readonly line: readonly [Point, Point];
  readonly ticks: readonly (readonly [Point, Point])[];
  readonly extensions: readonly (readonly [Point, Point])[];
  readonly text: string;
  /** Left end of the figure's baseline. */
  readonly at: Point;
  readonly box: Box;
}
