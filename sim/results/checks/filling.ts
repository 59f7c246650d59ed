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
    t: trial.time,
    says: fillingSays(scenario, trial),
  });
}

function fillingSays(s: Scenario, { time, opened, hoses, flow }: FillingTrial): string {
  const { display, pond } = s;
  const hose = hoses.length > 1 ? `The ${hoses.length} hoses together (${formatFlow(flow, display)})` : 'The hose';
  const rate = hoses.length > 1 ? '' : ` (${formatFlow(flow, display)})`;
  if (time === null)
    return `${hose}${rate} never bring${hoses.length > 1 ? '' : 's'} the pond to its mark: it loses as much as runs in.`;
  if (time === 0) return 'The pond stands at its fill mark already.';
  const volume = flow * time;
  const when = `${formatDuration(time)}, at ${formatClock(s.starts, opened + time)}`;
  const box =
    pond.level === 'empty' && pond.boxVolume !== undefined
      ? ` By its box (length × width × depth) it would be ${formatDuration(pond.boxVolume / flow)}.`
      : '';
  return (
    `${hose}${rate} bring${hoses.length > 1 ? '' : 's'} the pond to its fill mark in ${when}, the pump off, with ` +
    `${formatVolume(volume, display)}.${metersSay(s, hoses, time)}${box} A first fill is never left alone.`
  );
}

function metersSay({ display }: Scenario, hoses: FillingTrial['hoses'], time: number): string {
  return hoses
    .filter((hose) => hose.meter !== undefined)
    .map((hose) => {
      const reading = (hose.meter ?? 0) + hose.flow * time;
      const which = hoses.length > 1 ? ` of the ${hose.name}` : '';
      const text = display === 'us' ? formatVolume(reading, display) : `${formatNumber(reading, 3)} m³`;
      return ` The meter${which} then reads ${text}.`;
    })
    .join('');
}
