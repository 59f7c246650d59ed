import {
  formatClock,
  formatDuration,
  formatFlow,
  formatNumber,
  formatPercent,
  formatVolume,
} from '../quantity/index.ts';
import { displayName, SAFETY } from '../results/summary.ts';
import { columns, hang, printable } from '../results/textLayout.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { DyeFigures, DyeTest } from './answer.ts';

/** A dye test as tables and sentences for a terminal. */
export function dyeText(s: Scenario, test: DyeTest): string {
  const moment = test.at === null ? '' : ` at ${formatDuration(test.at)} (${formatClock(s.starts, test.at)})`;
  const blocks = [
    `${printable(s.title)} · dye test of the filter${moment} · ${displayName(s.display)}`,
    test.fed ? wayTable(s, test) : '',
    test.fed ? columns(timeRows(test), 0) : '',
    hang('', test.says, 0),
    SAFETY,
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function wayTable({ display }: Scenario, { flows, times, volumes }: DyeFigures): string {
  const row = (name: string, flow: number, volume: number, stay: number | null): string[] => [
    name,
    formatFlow(flow, display, flows.bottom),
    formatVolume(volume, display),
    stay === null ? '–' : formatDuration(stay),
  ];
  return columns(
    [
      ['way', 'flow', 'holds', 'stay'],
      row('plenum', flows.bottom, volumes.plenum, times.plenum),
      row('media', flows.media, volumes.pore, times.media),
      row('gap', flows.gap, volumes.gap, times.gap),
      row('free water', flows.bottom + Math.max(0, flows.top), volumes.free, times.mixed),
    ],
    0,
  );
}

/** Rows of name and figure, the figures right behind the names. */
function timeRows(test: DyeFigures): string[][] {
  const { channeled, mean, variance, t10, t50, t90, morrill, baffling } = test;
  return [
    ['channeled round the media', formatPercent(channeled)],
    ['mean stay', formatDuration(mean)],
    ['spread, one standard deviation', formatDuration(Math.sqrt(variance))],
    ['a tenth is out after, t10', formatDuration(t10)],
    ['half, t50', formatDuration(t50)],
    ['nine tenths, t90', formatDuration(t90)],
    ['Morrill index, t90/t10', formatNumber(morrill, 2)],
    ['baffling, t10/T', `${formatNumber(baffling, 2)} ${test.class}`],
  ];
}

/** A dye test as the plain object that a file gets: the curve as rows of t, E through, E round, F. */
export function dyeJson(s: Scenario, test: DyeTest): object {
  if (!test.fed) return { title: s.title, ...test };
  const { E, F, ...figures } = test;
  const curve = Array.from(E.t, (t, k) => [t, E.through[k], E.round[k], F[k]]);
  return { title: s.title, ...figures, curve };
}

/** The curve as lines of a CSV file (RFC 4180), SI. */
export function* dyeCsv({ E, F }: DyeFigures): Generator<string, void> {
  yield 't[s],E through[1/s],E round[1/s],F\r\n';
  for (const [k, t] of E.t.entries()) yield `${[t, E.through[k], E.round[k], F[k]].join(',')}\r\n`;
}
