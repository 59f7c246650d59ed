import {
  type Display,
  formatDuration,
  formatFine,
  formatFlow,
  formatHead,
  formatLength,
  formatLevel,
  formatNumber,
  formatPercent,
  formatSpeed,
} from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { BalanceAnswer } from './answer.ts';
import { drivenWords, settledWords } from './asSet.ts';
import { displayName, SAFETY } from './summary.ts';
import { columns, printable } from './textLayout.ts';

/** The running balance as tables for a terminal: what a ruler, a bucket and a valve handle would show. */
export function balanceText(answer: BalanceAnswer, s: Scenario): string {
  const { display } = s;
  const { title, levels, flows, duty } = answer;
  const blocks = [
    `${printable(title)} · running balance · ${displayName(display)}`,
    columns(dutyRows(answer, s), 0),
    table(
      'levels',
      Object.entries(levels).map(([name, z]) => [name, formatLevel(z, display)]),
    ),
    table(
      'flows',
      Object.entries(flows).map(([name, q]) => [name, formatFlow(q, display, duty.flow)]),
    ),
    stoneTable(answer, display),
    SAFETY,
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** Rows of name and figure, the figures right behind the names. */
function dutyRows({ duty, split, channeled, contact, mediaHead, lift }: BalanceAnswer, s: Scenario): string[][] {
  const { display } = s;
  const [driven, settled] = [drivenWords(s), settledWords(s)];
  const rows = [
    ['pump', formatFlow(duty.flow, display)],
    ['at a head of', formatHead(duty.head, display)],
  ];
  if (driven !== '') rows.push(['driven at', driven]);
  if (duty.power > 0) rows.push(['wire power', `${formatNumber(duty.power)} W`]);
  for (const [pipe, speed] of Object.entries(duty.velocity)) {
    if (speed !== 0) rows.push([`speed in the ${pipe}`, formatSpeed(speed, display)]);
  }
  if (split !== null) rows.push(['bottom feed of the main', formatPercent(split)]);
  if (channeled !== null) rows.push(['channeled round the media', formatPercent(channeled)]);
  if (mediaHead !== null) rows.push(['head across the media', formatFine(mediaHead, display)]);
  if (lift !== null) rows.push(['of the head that lifts them', formatPercent(lift)]);
  if (settled !== '') rows.push(['settled in the media', settled]);
  if (contact !== null) {
    rows.push(
      ['contact, empty bed', formatDuration(contact.emptyBed)],
      ['contact, pores', formatDuration(contact.pore)],
    );
  }
  return rows;
}

const table = (title: string, rows: readonly string[][]): string => `${title}\n${columns(rows)}`;

function stoneTable({ stones }: BalanceAnswer, display: Display): string {
  const rows = Object.entries(stones).map(([name, { share, head, criticalDepth, reach }]) => [
    name,
    formatPercent(share),
    ...[head, criticalDepth, reach].map((length) => formatLength(length, display)),
  ]);
  return rows.length === 0 ? '' : columns([['stones', 'share', 'head', 'sheet', 'reach'], ...rows], 0);
}
