import {
  type Display,
  formatDuration,
  formatFlow,
  formatHead,
  formatLength,
  formatLevel,
  formatNumber,
  formatPercent,
  formatSpeed,
} from '../quantity/index.ts';
import type { BalanceAnswer } from './answer.ts';
import { displayName, SAFETY } from './summary.ts';
import { columns, printable } from './textLayout.ts';

/** The running balance as tables for a terminal: what a ruler, a bucket and a valve handle would show. */
export function balanceText(answer: BalanceAnswer, display: Display): string {
  const { title, levels, flows, duty } = answer;
  const blocks = [
    `${printable(title)} · running balance · ${displayName(display)}`,
    columns(dutyRows(answer, display), 0),
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
function dutyRows({ duty, split, channeled, contact, mediaHead, lift }: BalanceAnswer, display: Display): string[][] {
  const rows = [
    ['pump', formatFlow(duty.flow, display)],
    ['at a head of', formatHead(duty.head, display)],
  ];
  if (duty.power > 0) rows.push(['wire power', `${formatNumber(duty.power)} W`]);
  for (const [pipe, speed] of Object.entries(duty.velocity)) {
    if (speed !== 0) rows.push([`speed in the ${pipe}`, formatSpeed(speed, display)]);
  }
  if (split !== null) rows.push(['bottom feed of the main', formatPercent(split)]);
  if (channeled !== null) rows.push(['channeled round the media', formatPercent(channeled)]);
  if (mediaHead !== null) rows.push(['head across the media', formatLength(mediaHead, display)]);
  if (lift !== null) rows.push(['of the head that lifts them', formatPercent(lift)]);
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
