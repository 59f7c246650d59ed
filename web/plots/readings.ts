/** What stands at the playhead, in words. */
import { formatDuration } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';
import { inWords, type LevelsBy } from './level-words.ts';
import type { Line } from './subjects.ts';
import { clockToSecond } from './table.ts';
import { valueAt } from './thin.ts';
import type { Anchor } from './time-ticks.ts';

export interface Reading {
  readonly name: string;
  readonly says: string;
  readonly subject: boolean;
}

export const readingsOf = (lines: readonly Line[], t: number, display: Display, by: LevelsBy): Reading[] =>
  lines.map((line, i) => ({
    name: line.name,
    says: inWords(valueAt(line.times, line.values, t), line, display, by),
    subject: i === 0,
  }));

const EVENTS: Readonly<Record<string, string>> = { stop: 'stop', start: 'start' };

/** '12:04:10, 4 min 10 s after the stop'. */
export function momentWords(t: number, starts: string, anchor: Anchor | undefined): string {
  const clock = clockToSecond(starts, t);
  const event = anchor && EVENTS[anchor.word];
  if (!anchor || !event) return clock;
  const away = Math.round(t - anchor.t);
  if (away === 0) return `${clock}, at the ${event}`;
  return `${clock}, ${formatDuration(Math.abs(away))} ${away > 0 ? 'after' : 'before'} the ${event}`;
}
