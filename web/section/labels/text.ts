import type { Display } from '../../../sim/quantity/format.ts';
import type { BalanceAnswer, RunAnswer } from '../../../sim/results/answer.ts';
import type { Scenario } from '../../../sim/scenario/scenario.ts';
import type { Moment } from '../../state/moment.ts';
import type { LabelLine, LabelRequest } from './request.ts';

/** What labels are read from: the site, its answers, and the moment at which it is drawn. */
export interface Subject {
  readonly scenario: Scenario;
  readonly answer: Pick<RunAnswer, 'levels' | 'flows' | 'events'>;
  /** Undefined where the site has no running balance. */
  readonly balance: Pick<BalanceAnswer, 'duty'> | undefined;
  readonly moment: Moment;
  readonly display: Display;
}

/** The words of one part of the drawing; its id is the part's place in the file. */
export type LabelText = Pick<LabelRequest, 'id' | 'lines' | 'short' | 'bare'>;

/** Longest names of the site's own that are written out: where there is room, and where it is short, characters. */
const LONG_NAME = 32;
const LONG_SHORT_NAME = 20;

/** A name cut at a blank where it is too long for a drawing; whole it is said by the press. */
export function shortName(name: string, longest = LONG_SHORT_NAME): string {
  if (name.length <= longest) return name;
  const cut = name.slice(0, longest);
  const blank = cut.lastIndexOf(' ');
  return `${(blank > longest / 2 ? cut.slice(0, blank) : cut).trimEnd()}…`;
}

const under = (name: string, figure: string): LabelLine[] => [
  { text: shortName(name, LONG_NAME), style: 'name' },
  ...(figure === '' ? [] : [{ text: figure, style: 'figure' } as const]),
];

/** A name with its figure under it; short, both without what can be spared. */
export function labelText(id: string, name: string, figure: string, short = figure): LabelText {
  const spared = shortName(name);
  const bare = under(spared, '');
  const lines = under(name, figure);
  return spared === name && short === figure ? { id, lines, bare } : { id, lines, short: under(spared, short), bare };
}

/** A name with its figure under it; short, both in one line. */
export function labelTextOrLine(id: string, name: string, figure: string, short: string): LabelText {
  const spared = shortName(name);
  return { id, lines: under(name, figure), short: under(`${spared} ${short}`, ''), bare: under(spared, '') };
}
