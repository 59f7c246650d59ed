/** The answer to each question as it stands largest on the page: verdict first, then the margin. */

import { areaAt, makeStorage } from '../../sim/laws/storage.ts';
import {
  type Display,
  formatDuration,
  formatFlow,
  formatLength,
  formatPercent,
  formatVolume,
} from '../../sim/quantity/index.ts';
import type { Check, RunAnswer, Verdict } from '../../sim/results/answer.ts';
import { settledVolume } from '../../sim/results/asSet.ts';
import { judgeAtLeast, judgeAtMost } from '../../sim/results/checks/check.ts';
import { MOST_CHANNELED } from '../../sim/results/checks/limits.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { StopFigures, Stops } from '../../sim/studies/quick.ts';
import type { Answered, Subject } from '../engine/protocol.ts';

export interface Headline {
  readonly verdict: Verdict;
  /** One sentence; after the verdict's word. */
  readonly says: string;
  /** What else is known at this depth. */
  readonly more: string;
}

/** The check that answers a question. */
export const checkOf: Record<Subject, string> = { stop: 'drain-back', filling: 'filling', filter: 'channeling' };

/**
 * @param full the last answer in full: its band goes on being taken while the hand moves
 */
export function headlineOf(about: Subject, now: Answered, full: Answered | undefined): Headline {
  const check = (from: Answered | undefined): Check | undefined =>
    from?.answer.checks.find(({ name }) => name === checkOf[about]);
  switch (about) {
    case 'stop':
      return now.stops ? ofStops(now.stops, now.scenario, check(full)?.band ?? 0) : withoutStops(check(full));
    case 'filling':
      return ofFilling(check(now) ?? check(full));
    case 'filter':
      return ofFilter(now, check(now), check(full));
  }
}

/** Levels nearer than this are one, m. */
const SAME = 5e-4;

/** The stop told is one from the fill mark: how the run that is drawn ends up where it stops lower; '' where it does not. */
export function inRunWords({ stops, answer, scenario: { pond, display } }: Answered): string {
  const stopped = answer.events.some(({ what }) => what === 'pump off' || what === 'power off');
  if (stops?.asIs.where !== 'trial' || !stopped) return '';
  const below = Math.min(...pond.rim.crest.map(([, z]) => z)) - answer.levels.pond.max.value;
  return below > stops.asIs.below + SAME
    ? `That is a stop from the fill mark; in the run drawn here the pond stands lower by then and stays ${formatLength(below, display)} below its edge.`
    : '';
}

/** A loss over the edge under this is none, m³. */
const NO_WATER = 5e-5;

function ofStops(stops: Stops, { plumbing, pond, display }: Scenario, band: number): Headline {
  const { kind } = plumbing.main.checkValve;
  const verdict = judgeAtLeast(stops.asIs.below, band, stops);
  const ends = (stop: StopFigures): string => endsWords(stop, display);
  const holds = kind === 'sound' || kind === 'unknown';
  const says = holds
    ? `with the check valve sound the pond ${ends(stops.asIs)}; with it failed it ${ends(stops.failed)}.`
    : `with ${kind === 'none' ? 'no check valve' : 'its leaking check valve'} the pond ${ends(stops.asIs)}; ` +
      `with a sound one it ${ends(stops.sound)}.`;
  return { verdict, says, more: `${riseWords(stops.asIs, display)} ${perStep(pond, stops.level, display)}` };
}

/** Where the highest level is the end of a long tail, the time of nine tenths of the rise says more. */
function riseWords({ rise, took, soon }: StopFigures, display: Display): string {
  if (rise < 5e-5) return 'It does not rise.';
  const rises = `It rises ${formatLength(rise, display)}`;
  return took > 3 * soon
    ? `${rises}, nine tenths of it within ${formatDuration(soon)}.`
    : `${rises} within ${formatDuration(took)}.`;
}

function endsWords({ below, overRim, overflow }: StopFigures, display: Display): string {
  const piped = overflow > NO_WATER ? `, ${formatVolume(overflow, display)} going down its overflow` : '';
  if (below >= 0) return `stays ${formatLength(below, display)} below its edge${piped}`;
  return overRim > NO_WATER
    ? `runs over, ${formatVolume(overRim, display)} lost`
    : `stands ${formatLength(-below, display)} above its edge`;
}

/** Wherever a level stands, how much water that is in this pond. */
function perStep(pond: Scenario['pond'], level: number, display: Display): string {
  const area = areaAt(makeStorage(pond.profile, pond.displaced), level);
  const [name, step] = display === 'us' ? ['An inch', 0.0254] : ['A centimeter', 0.01];
  return `${name} of this pond is ${formatVolume(area * step, display)}.`;
}

function withoutStops(check: Check | undefined): Headline {
  if (check) return { verdict: check.verdict, says: check.says, more: '' };
  return {
    verdict: 'told',
    says: 'the file names no level at which the pond is kept, so no stop can be tried.',
    more: '',
  };
}

function ofFilling(check: Check | undefined): Headline {
  if (!check) return { verdict: 'told', says: 'no hose is given, or no fill mark; give both to know.', more: '' };
  const end = check.says.search(/[.!] (?=[\p{Lu}\d])/u);
  const [first, more] = end < 0 ? [check.says, ''] : [check.says.slice(0, end + 1), check.says.slice(end + 2)];
  return { verdict: check.verdict, says: first, more };
}

/** @param own the check of this very answer, where it was asked in full; `last` of the last one that was */
function ofFilter({ balance, scenario, answer }: Answered, own: Check | undefined, last: Check | undefined): Headline {
  const { display } = scenario;
  if (!scenario.filter) return { verdict: 'told', says: 'this site has no filter.', more: '' };
  if (!balance) return { verdict: 'told', says: 'the water course finds no balance while the pump runs.', more: '' };
  const { channeled, split, flows } = balance;
  const up = flows['bottom feed'] ?? 0;
  const main = `${formatFlow(flows.main, display)} come up the main line`;
  const shares = split === null ? `${main}.` : `${main}, ${formatPercent(split)} of it by the bottom feed.`;
  if (channeled === null) return { verdict: 'told', says: 'no water goes up through media.', more: shares };
  const limit = last?.limit ?? MOST_CHANNELED;
  const lifts = (balance.lift ?? 0) >= 1;
  const share = judgeAtMost(channeled, last?.band ?? 0, { fail: limit, pass: limit, origin: 'our default' });
  const says =
    `${formatPercent(channeled)} of the bottom feed’s ${formatFlow(up, display)} slips round the mats, ` +
    `${formatPercent(1 - channeled)} goes through them.`;
  const most = channeled + (last?.band ?? 0);
  const unsure =
    share === 'tight' && most > limit ? ` ${unknownOf(last?.rests?.place)}: it may be ${formatPercent(most)}.` : '';
  return {
    verdict: own?.verdict ?? (lifts ? 'fail' : share),
    says: lifts ? `the media float up; ${says}` : says,
    more: `${shares}${unsure}${standsWords(answer)}${cloggedWords(scenario, answer, channeled)}`,
  };
}

/** What makes the share unsure most, by its place in the file. */
function unknownOf(place = ''): string {
  if (place.endsWith('.gap')) return 'Nobody has measured the gap';
  if (place.endsWith('.beta')) return 'Nobody knows how much of the pores the muck takes';
  if (place.endsWith('Weight')) return 'Nobody has weighed the media under water';
  return 'How media hold water back is known to a third';
}

/** The balance is that of a running pump; a run in which it never does shows nothing of it. */
function standsWords({ flows }: RunAnswer): string {
  const most = flows['main']?.max.value;
  return most !== undefined && most < 1e-6 ? ' So it would be: in this run the pump moves no water.' : '';
}

/** A share that has grown by less over a run is not told. */
const GROWN = 0.01;

/** The share told is that of the media as they are at the start; a run with debris may end with quite another. */
function cloggedWords(s: Scenario, { media, deposits }: RunAnswer, atStart: number): string {
  const end = media?.channeled.end ?? 0;
  const settled = Object.values(deposits).some((each) => each > 0);
  if (!settled || end <= atStart + GROWN) return '';
  const then = settledVolume(s) > 0 ? 'what has settled in them at the start' : 'clean media';
  return ` That is with ${then}: at the end of this run, with what has settled by then, ${formatPercent(end)} slips round.`;
}
