/** Figures of labels: short, in the display's units, in words where a figure says nothing. */
import { type Display, formatFlow, formatLength, formatLevel } from '../../../sim/quantity/format.ts';

/** A flow under this is none, m³/s: a few drops a second. */
export const NO_FLOW = 5e-7;
/** Differences of level under this are none, m: no ruler shows them. */
const NO_LENGTH = 5e-4;

/** An elevation over the datum with its sign: '+646 mm', '−110 mm'. */
export const elevationFigure = (z: number, display: Display): string =>
  `${z > NO_LENGTH ? '+' : ''}${formatLevel(z, display)}`;

/** '27 mm over its lip', '4.0 mm under its lip', 'level with its lip'. */
export function overFigure(by: number, what: string, display: Display): string {
  if (Math.abs(by) < NO_LENGTH) return `level with ${what}`;
  return `${formatLength(Math.abs(by), display)} ${by > 0 ? 'over' : 'under'} ${what}`;
}

/** '235 L/min', 'no flow', '12 L/min back'. */
export function flowFigure(flow: number, display: Display): string {
  if (Math.abs(flow) < NO_FLOW) return 'no flow';
  return `${formatFlow(Math.abs(flow), display)}${flow < 0 ? ' back' : ''}`;
}
