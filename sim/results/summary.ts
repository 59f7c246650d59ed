import { type Display, formatClock, formatConcentration, formatDuration, formatVolume } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Check, Ledger, LedgerIn, LedgerOut, RunAnswer } from './answer.ts';
import { drivenWords } from './asSet.ts';
import { hang, hangParts, printable } from './textLayout.ts';

export const SAFETY = 'Local codes and licensed practice come first; a simulation is no survey.';

/** Columns of the verdict, and of the verdict and a check's name. */
const VERDICT = 7;
const NAME = 20;
/** More events than this are counted, not listed. */
const MOST_EVENTS = 16;
/** An extreme this near the first or the last level is no moment of its own, m. */
const CLEAR = 0.0005;
/** Less than a milliliter is nothing to tell, m³. */
const LEAST = 1e-6;

const WAYS: Record<keyof LedgerIn | keyof LedgerOut, string> = {
  hose: 'hose',
  rain: 'rain',
  runoff: 'runoff',
  autofill: 'autofill',
  evaporation: 'evaporation',
  splash: 'splash',
  rim: 'over the pond’s rim',
  overflow: 'overflow pipe',
  filterRim: 'over the filter’s rim',
  edges: 'over edges of pools and streams',
  leak: 'leaks',
  pumpedOut: 'pumped out',
};

export const displayName = (display: Display): string => (display === 'us' ? 'US units' : 'metric');

/** A run in words: what was asked, each check with its sentence, where the water went and what happened when. */
export function summaryText(scenario: Scenario, answer: RunAnswer): string {
  const { title, starts, span, display } = scenario;
  const driven = drivenWords(scenario);
  const lines = [
    `${printable(title)} · ${formatDuration(span)} from ${formatClock(starts, 0)} · ${displayName(display)}${driven && ` · pump at ${driven}`}`,
    ...answer.cautions.map((caution) => hang('note'.padEnd(VERDICT), caution, VERDICT)),
    ...answer.checks.map(checkText),
    waterText(answer.ledger, display),
    broughtText(answer, display),
    timesText(answer, starts),
    SAFETY,
  ];
  return `${lines.filter((line) => line !== '').join('\n')}\n`;
}

function checkText({ verdict, name, says, mend, places }: Check): string {
  const lead = `${verdict.padEnd(VERDICT)}${name.padEnd(NAME - VERDICT - 2)}  `;
  const further = places.filter((place) => place.verdict === 'fail' || place.verdict === 'tight');
  const indented = (text: string): string => hang(' '.repeat(NAME), text, NAME);
  return [
    hang(lead, says, NAME),
    ...(mend === '' ? [] : [indented(mend)]),
    ...further.map((place) => indented(`${place.verdict}: ${place.says}`)),
  ].join('\n');
}

function waterText({ in: inward, out, stored, closure }: Ledger, display: Display): string {
  const parts = [
    `in ${waysText(inward, display)}`,
    `out ${waysText(out, display)}`,
    `stored ${changeText(stored, display)}`,
    `closes to ${closure === 0 ? 0 : closure.toExponential(0)}`,
  ];
  return hangParts('water'.padEnd(VERDICT), parts, VERDICT);
}

/** What has settled in the media by the end, and the waste that the water then holds; '' where there is neither. */
function broughtText({ deposits, concentration }: RunAnswer, display: Display): string {
  const settled = Object.entries(deposits).filter(([, held]) => held >= LEAST);
  const parts = [
    ...settled.map(([name, held]) => `${formatVolume(held, display)} settled in ${printable(name)}`),
    ...(concentration > 0 ? [`${formatConcentration(concentration)} of waste in the water`] : []),
  ];
  return parts.length === 0 ? '' : hangParts('muck'.padEnd(VERDICT), parts, VERDICT);
}

function waysText(side: LedgerIn | LedgerOut, display: Display): string {
  const ways = Object.entries(side).filter(([, volume]) => volume >= LEAST);
  if (ways.length === 0) return formatVolume(0, display);
  return ways.map(([way, volume]) => `${formatVolume(volume, display)} ${WAYS[way as keyof typeof WAYS]}`).join(', ');
}

/** '8,458 → 8,407 L': the unit once, where both have the same. */
function changeText({ start, end }: Ledger['stored'], display: Display): string {
  const from = formatVolume(start, display);
  const to = formatVolume(end, display);
  const unit = to.slice(to.lastIndexOf(' '));
  return `${from.endsWith(unit) ? from.slice(0, -unit.length) : from} → ${to}`;
}

/** The log in its order, with the pond's highest and lowest moments where they are not the start or the end. */
function timesText({ events, levels }: RunAnswer, starts: string): string {
  const { start, end, min, max } = levels['pond'];
  const extremes = [
    { ...max, what: 'highest level' },
    { ...min, what: 'lowest level' },
  ].filter(({ value }) => Math.min(Math.abs(value - start), Math.abs(value - end)) > CLEAR);
  const all = [...events, ...extremes].sort((a, b) => a.t - b.t);
  if (all.length === 0) return '';
  const parts = all.slice(0, MOST_EVENTS).map(({ t, what }) => `${formatClock(starts, t)} ${what}`);
  if (all.length > MOST_EVENTS) parts.push(`and ${all.length - MOST_EVENTS} more`);
  return hangParts('times'.padEnd(VERDICT), parts, VERDICT);
}
