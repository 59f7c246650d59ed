import {
  type Display,
  formatDuration,
  formatFlow,
  formatLength,
  formatLevel,
  formatVolume,
  momentText,
} from '../quantity/index.ts';
import type { Band } from '../results/checks/bands.ts';
import { displayName, SAFETY } from '../results/summary.ts';
import { columns, hang, printable } from '../results/textLayout.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { fillBandWords } from './band.ts';
import type { FillPlan } from './plan.ts';
import { FILL_CAUTION, meterText, neverWords } from './words.ts';

/** A fill as tables for a terminal. */
export function fillText(s: Scenario, plan: FillPlan, band: Band | undefined): string {
  const { display } = s;
  const blocks = [
    `${printable(s.title)} · filling to ${formatLevel(plan.fillMark, display)} · ${displayName(display)}`,
    columns(headRows(s, plan, band), 0),
    hoseTable(plan, display),
    markTable(plan, display),
    upstairsText(plan, display),
    hang('', FILL_CAUTION, 0),
    SAFETY,
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function headRows(
  s: Scenario,
  { open, full, never, lasts, volume, lost }: FillPlan,
  band: Band | undefined,
): string[][] {
  const { display } = s;
  const rows = [['open', open?.clock ?? 'never']];
  if (full === null || lasts === null || volume === null) return [...rows, ['full', neverWords(never ?? 'weak')]];
  if (full.t === 0) return [['full', 'already: the pond stands at its mark']];
  rows.push(['shut', full.clock], ['after', formatDuration(lasts)]);
  if (band !== undefined) {
    const most = fillBandWords(s, band);
    rows.push(['give or take', formatDuration(band.band)]);
    if (most !== undefined) rows.push(['moved most by', most]);
  }
  rows.push(['run in', formatVolume(volume, display)]);
  if (lost !== null && lost > 2e-4) rows.push(['of it lost', formatVolume(lost, display)]);
  return rows;
}

function hoseTable({ hoses }: FillPlan, display: Display): string {
  const rows = hoses.map(({ name, flow, stretches, volume, meter }) => [
    name,
    formatFlow(flow, display),
    stretches.map(({ from, to }) => (to === null ? `from ${from.clock}` : `${from.clock} to ${to.clock}`)).join(', ') ||
      'shut',
    volume === null ? '–' : formatVolume(volume, display),
    meter === null ? '–' : meterText(meter, display),
  ]);
  return columns([['hoses', 'flow', 'open', 'gives', 'meter'], ...rows], 0);
}

function markTable({ marks, open }: FillPlan, display: Display): string {
  const [step, name] = display === 'us' ? [0.0254, 'an inch'] : [0.01, 'a cm'];
  const rows = marks.map(({ name: mark, level, reached, volume, surface }) => [
    mark,
    formatLevel(level, display),
    reached?.clock ?? 'never',
    reached === null ? '–' : formatDuration(Math.max(0, reached.t - (open?.t ?? 0))),
    volume === null ? '–' : formatVolume(volume, display),
    formatVolume(surface * step, display),
  ]);
  return columns([['marks', 'level', 'clock', 'after', 'run in', `${name} is`], ...rows], 0);
}

function upstairsText({ upstairs, full }: FillPlan, display: Display): string {
  if (upstairs === null) return '';
  const { level, on, falls, lowest, fallsShut, missing, starves, starvesShut, lasts } = upstairs;
  const length = (value: number): string => formatLength(value, display);
  const shut = fallsShut === null ? '' : ` (${length(fallsShut)} with the hose shut)`;
  const more = missing === null ? '' : ` ${formatVolume(Math.max(0, missing), display)} are missing then.`;
  const then =
    full === null || lasts === null ? '' : ` The mark comes ${formatDuration(lasts)} later, at ${full.clock}.`;
  const dry = starves
    ? ' The pump draws air meanwhile: stop it, let the pond come up and start again.'
    : starvesShut
      ? ' With the hose shut the pump would draw air.'
      : '';
  return hang(
    '',
    `The pump is started at ${on.clock}, the pond at ${formatLevel(level, display)}: filter, pools, streams and pipes ` +
      `fill, and the pond falls ${length(falls)}${shut}, lowest at ${lowest.clock}.${more}${then}${dry}`,
    0,
  );
}

/** Level against time as lines of a CSV file (RFC 4180), SI: seconds, the site's clock without zone, levels, water run in. */
export function* fillCsv({ series, starts }: FillPlan): Generator<string, void> {
  yield 't[s],clock,pond[m],vault[m],run in[m3]\r\n';
  for (const [i, t] of series.t.entries()) {
    yield `${[t, momentText(starts, t), series.pond[i], series.vault[i], series.volume[i]].join(',')}\r\n`;
  }
}
