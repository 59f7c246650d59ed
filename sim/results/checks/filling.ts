import { toBeFilled } from '../../fill/course.ts';
import { formatClock, formatDuration, formatFlow, formatNumber, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { type FillingTrial, fill } from '../../trials/filling.ts';
import type { Check } from '../answer.ts';
import { type CheckInput, told } from './check.ts';

/** How long the hose takes to bring the pond to its mark, what runs in, and what the meter then reads. */
export function fillingCheck({ scenario }: CheckInput): Check | undefined {
  const trial = fill(scenario);
  if (!trial) return undefined;
  return told({
    name: 'filling',
    value: trial.time,
    unit: 's',
    t: trial.time === null ? null : trial.opened + trial.time,
    says: fillingSays(toBeFilled(scenario), trial, scenario.pond.level === undefined),
  });
}

function fillingSays(
  s: Scenario,
  { time, opened, schedule, hoses, flow, never }: FillingTrial,
  assumedEmpty: boolean,
): string {
  const { display, pond } = s;
  const many = hoses.length > 1;
  const from = assumedEmpty ? 'From empty, t' : 'T';
  const hose = many ? `${from}he ${hoses.length} hoses together (${formatFlow(flow, display)})` : `${from}he hose`;
  const rate = many ? '' : ` (${formatFlow(flow, display)})`;
  if (time === null) {
    if (never === 'long') return `${hose}${rate} would take more than three months to bring the pond to its mark.`;
    const why = never === 'shut' ? `${many ? 'they are' : 'it is'} shut before then` : 'it loses as much as runs in';
    return `${hose}${rate} never bring${many ? '' : 's'} the pond to its mark: ${why}.`;
  }
  if (time === 0) return 'The pond stands at its fill mark already.';
  const full = opened + time;
  const when = `${formatDuration(time)}, at ${formatClock(s.starts, full)}`;
  const box =
    pond.level === 'empty' && pond.boxVolume !== undefined
      ? ` By its box (length × width × depth) it would be ${formatDuration(pond.boxVolume / flow)}.`
      : '';
  return (
    `${hose}${rate} bring${many ? '' : 's'} the pond to its fill mark in ${when}, the pump off, with ` +
    `${formatVolume(schedule.givenByAll(full), display)}.${metersSay(s, hoses, schedule, full)}${box} ` +
    'A first fill is never left alone.'
  );
}

function metersSay(
  { display, hoses: all }: Scenario,
  hoses: FillingTrial['hoses'],
  schedule: FillingTrial['schedule'],
  full: number,
): string {
  return hoses
    .filter((hose) => hose.meter !== undefined)
    .map((hose) => {
      const reading = (hose.meter ?? 0) + schedule.given(all.indexOf(hose), full);
      const which = hoses.length > 1 ? ` of the ${hose.name}` : '';
      const text = display === 'us' ? formatVolume(reading, display) : `${formatNumber(reading, 3)} m³`;
      return ` The meter${which} then reads ${text}.`;
    })
    .join('');
}
