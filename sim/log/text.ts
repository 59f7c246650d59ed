import { displayName, SAFETY } from '../results/summary.ts';
import { columns, hang, printable } from '../results/textLayout.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { LogProblem } from './reading.ts';
import type { LeakAnswer } from './said.ts';
import { besideWords, leadWords, rateWords, restWords } from './words.ts';

/** What a log says, for a terminal. */
export function leakText(s: Scenario, answer: LeakAnswer, problems: readonly LogProblem[]): string {
  const { display } = s;
  const rate = (name: string, banded: { value: number; band: readonly number[] } | undefined): string[][] =>
    banded === undefined
      ? []
      : [
          [
            name,
            rateWords(banded.value, display),
            banded.band.map((each) => rateWords(Math.max(0, each), display)).join(' to '),
          ],
        ];
  const rows = [
    ['lost', 'at best guess', 'nine times in ten'],
    ...rate('in all', answer.loss),
    ...rate('with the pump off', answer.standing),
    ...rate('more while it runs', answer.running),
    ...rate('to evaporation', answer.evaporation),
  ];
  const told = [
    ...besideWords(answer, display).map(({ line, says }) => `line ${line}: ${says}`),
    ...problems.map(({ place, found, wanted, left }) => `${place}: found ${found}, wanted ${wanted}${LEFT[left]}`),
  ];
  const blocks = [
    `${printable(s.title)} · ${answer.readings} readings · ${displayName(display)}`,
    hang('', leadWords(answer, display), 0),
    ...restWords(answer, display).map((each) => hang('', each, 0)),
    columns(rows, 0),
    told.map((each) => hang('', printable(each), 0)).join('\n'),
    SAFETY,
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

const LEFT: Readonly<Record<LogProblem['left'], string>> = { line: ' (line left out)', part: ' (left out)', all: '' };
