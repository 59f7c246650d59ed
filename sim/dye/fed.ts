/** Whether a filter is fed at a moment of a run, by flows that last, and what is said where it is not. */
import { type Settings, speedAt } from '../network/settings.ts';
import { formatDuration, formatFlow } from '../quantity/index.ts';
import type { RunRecord } from '../results/record.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** A bottom feed under this carries no dye anywhere in the time anybody watches, m³/s. */
export const NOT_FED = 1e-5;
/** A pump that was switched so short a time before still moves the flows, s. */
export const SWITCHED = 60;
/** And so long may its water be on its way up, s. */
const ON_ITS_WAY = 600;

export const outsideWords = 'The moment of the pour lies outside the run, so there are no flows to carry the dye.';

/** Why the filter is not fed at a moment, and what follows for dye in the plenum. */
export function unfedWords(s: Scenario, record: RunRecord, t: number): string {
  const { parts, flow } = record.network;
  const settings = record.settingsAt(record.rowAt(t));
  const bottom = flow[parts.circuit.flow.bottom];
  if (bottom > NOT_FED && isJustStopped(settings.ramp, t)) return stoppedWords(settings.ramp, t);
  const still = 'Dye poured into the plenum stays there until water comes.';
  if (bottom < -NOT_FED) {
    const amount = formatFlow(-bottom, s.display);
    return `Water runs back out of the filter through its bottom feed, ${amount} of it: dye in the plenum goes down with it.`;
  }
  if (settings.bottomValve === 0) return `The bottom valve is shut: nothing enters under the media. ${still}`;
  const starts = startWords(record, settings.ramp, t);
  if (starts !== '') return starts;
  if (speedAt(settings.ramp, t) === 0) return `The pump stands, so no water goes up through the filter. ${still}`;
  const less = formatFlow(NOT_FED, s.display);
  return `Less than ${less} comes through the bottom feed, which is no flow to time. ${still}`;
}

/** The pump was switched on a moment ago and its water is about to come; '' where it is not. */
function startWords(record: RunRecord, { from, to, start }: Settings['ramp'], t: number): string {
  if (to <= from || t - start > ON_ITS_WAY) return '';
  const comes = firstFed(record, t);
  if (comes === undefined || comes - t > ON_ITS_WAY) return '';
  const begins = t === start ? 'starts at this moment' : `started ${formatDuration(t - start)} ago`;
  const minutes = Math.ceil((comes - t + 10) / 60);
  const later = minutes === 1 ? 'a minute' : `${minutes} minutes`;
  return `The pump ${begins} and nothing flows through the filter yet: pour ${later} later.`;
}

/** The pump stands since a moment ago: what still comes up is the last of its water, and no flow to time. */
export const isJustStopped = ({ from, to, start, end }: Settings['ramp'], t: number): boolean =>
  from > 0 && to === 0 && t >= end && t < start + SWITCHED;

const stoppedWords = ({ start }: Settings['ramp'], t: number): string =>
  `The pump was stopped ${formatDuration(t - start)} ago, and its water is coming to rest: pour before the stop.`;

/** That flows are held which do not last, the pump being on its way from one speed to another; '' where they do. */
export function passingWords({ from, to, start, end }: Settings['ramp'], t: number): string {
  if (from === to || t >= end) return '';
  if (to === 0) {
    return t === start
      ? 'The pump stops at this moment, and the flows held here end within seconds: pour before it stops.'
      : `The pump was stopped ${formatDuration(t - start)} ago, and the flows held here end within seconds: pour before the stop.`;
  }
  const speed = from === 0 ? 'its speed' : 'its new speed';
  return `The pump is still coming to ${speed}, and the flows held here do not last: pour a minute later.`;
}

/** First moment of a record, from one on, at which the filter is fed, s; undefined where it never is. */
export function firstFed(record: RunRecord, from: number): number | undefined {
  const { bottom } = record.network.parts.circuit.flow;
  for (let row = record.rowAt(from); row < record.length; row++) {
    if (record.time(row) >= from && record.flow(row, bottom) >= NOT_FED) return record.time(row);
  }
  return undefined;
}

export const notInRunWords =
  'The filter takes no water at any moment of this run, so there is no flow by which dye could be timed.';
