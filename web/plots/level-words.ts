/** Levels and flows in words. */
import { formatFlow, formatLength, formatLevel } from '../../sim/quantity/index.ts';
import type { Display } from '../engine/protocol.ts';
import type { Line } from './subjects.ts';

/** From where levels are told: down from each basin's own edge, or up from the site's datum. */
export type LevelsBy = 'depth' | 'elevation';

/** '64 mm below its edge', '−124 mm', '120 L/min'. */
export function inWords(value: number, line: Pick<Line, 'measure' | 'edge'>, display: Display, by: LevelsBy): string {
  if (line.measure === 'flow') return formatFlow(value, display);
  if (line.edge === undefined || by === 'elevation') return formatLevel(value, display);
  const below = line.edge - value;
  return `${formatLength(Math.abs(below), display)} ${below >= 0 ? 'below' : 'over'} its edge`;
}
