/** Flags and the playhead as marks. */
import { circle, closed, type Mark, path, segment, words } from '../section/marks.ts';
import { FLAG, type SeatedFlag, whenAt } from './flags.ts';
import type { Place } from './place.ts';
import type { Sheet } from './sheet.ts';
import type { Line } from './subjects.ts';
import { valueAt } from './thin.ts';

/** Poles, and leaders from them to their moments. */
export function poleMarks(flags: readonly SeatedFlag[], { place, titleEnd }: Sheet): Mark[] {
  const top = place.levels.top - 6;
  const d = flags.map(({ left, x }) => {
    const pole = Math.max(0.5, left);
    return `${segment(pole, -place.rail + 4, pole, -4)}${segment(pole, -4, x, 4)}${x > titleEnd ? segment(x, 4, x, top) : ''}`;
  });
  return d.length > 0 ? [path(d.join(''), 'leader')] : [];
}

/** What a flag says, for a saved drawing; on the page a press says it. */
export function flagWords(flags: readonly SeatedFlag[], { rail, flagLines }: Place): Mark[] {
  return flags.flatMap((flag) => {
    const y = -rail + 18;
    const [x, below] = flagLines === 1 ? [whenAt(flag), 0] : [FLAG.pad, 16];
    return [words(flag.left + FLAG.pad, y, flag.what, 'name'), words(flag.left + x, y + below, flag.when, 'tick')];
  });
}

export interface Playhead {
  readonly x: number;
  /** y of the subjects' values, where they lie on their plots. */
  readonly rings: readonly number[];
}

/** Where the playhead stands at a moment; no path is made anew for it. */
export function playheadAt(sheet: Sheet, level: Line | undefined, flow: Line | undefined, t: number): Playhead {
  const { place, axis } = sheet;
  const ring = (line: Line | undefined, scale: Sheet['levels'], strip: { top: number; bottom: number }): number[] => {
    if (!line) return [];
    const y = scale.y(valueAt(line.times, line.values, t), line);
    return y >= strip.top - 1 && y <= strip.bottom + 1 ? [y] : [];
  };
  return {
    x: place.left + axis.x(t),
    rings: [...ring(level, sheet.levels, place.levels), ...ring(flow, sheet.flows, place.flows)],
  };
}

/** The playhead's own shape. */
export function headMarks({ place }: Sheet, x = 0): Mark[] {
  const { top } = place.levels;
  const head = closed([
    [x - 5, top - 7],
    [x + 5, top - 7],
    [x, top],
  ]);
  return [path(segment(x, top, x, place.flows.bottom), 'playhead'), path(head, 'dot')];
}

export const ringMark = (x: number, y: number): Mark => path(circle(x, y, 3.4), 'ring');
