/** What the worker does for the filling of a site. */
import { fillBand, fillBandWords } from '../../sim/fill/band.ts';
import { momentsOfDay } from '../../sim/fill/clock.ts';
import { fillCourse, toBeFilled } from '../../sim/fill/course.ts';
import { type Opening, openingFor } from '../../sim/fill/opening.ts';
import { type FillOptions, fillPlan } from '../../sim/fill/plan.ts';
import { Schedule } from '../../sim/fill/schedule.ts';
import { readScenario } from '../../sim/index.ts';
import { pondStart } from '../../sim/network/start.ts';
import { momentText } from '../../sim/quantity/index.ts';
import { RunFailure } from '../../sim/results/failure.ts';
import type { RunRecord } from '../../sim/results/record.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { FillDay, FillRequest } from './fill-asked.ts';
import type { Given } from './protocol.ts';

const DAY = 86400;

/**
 * A site on the day it is filled: everything its file does by the clock moves along with the opening of its hose, and a
 * pond of which nobody says where its water stands is empty.
 */
export function siteOn(s: Scenario, { opened, water }: FillDay): Scenario {
  const first = new Schedule(s).opened;
  const starts =
    opened === undefined ? s.starts : momentText(opened, Number.isFinite(first) ? -first : 0).replace(/:00$/, '');
  return { ...s, starts, pond: { ...s.pond, level: water ?? toBeFilled(s).pond.level } };
}

interface Planned {
  readonly site: Scenario;
  readonly options: FillOptions;
  readonly opening: Opening | undefined;
}

function planned(s: Scenario, day: FillDay): Planned {
  const site = siteOn(s, day);
  const options: FillOptions = { nights: day.nights, zone: day.zone };
  if (day.by === undefined) return { site, options, opening: undefined };
  const by = momentsOfDay(site.starts, day.by, 2 * DAY, day.zone).find((t) => t > 0) ?? DAY;
  const opening = openingFor(site, by, options);
  return { site, options: { ...options, open: opening?.open ?? undefined }, opening };
}

/** The march of a fill, for the drawing; undefined where there is none. */
export function fillRecord(s: Scenario, day: FillDay): RunRecord | undefined {
  const { fillMark } = s.pond;
  if (fillMark === undefined || !s.hoses.some(({ flow }) => flow > 0)) return undefined;
  const { site, options } = planned(s, day);
  return fillCourse(site, fillMark, options).record;
}

export function fillGiven({ text, display, day, part }: FillRequest): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const s = display ? { ...reading.scenario, display } : reading.scenario;
  try {
    return part === 'plan' ? planOf(planned(s, day)) : moreOf(planned(s, day));
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    return { kind: 'fault', message: `The fill could not be computed to its end: ${error.words}.` };
  }
}

function planOf({ site, options, opening }: Planned): Given {
  return {
    kind: 'fill plan',
    plan: fillPlan(site, options) ?? null,
    water: pondStart(site),
    opening: opening ?? null,
  };
}

function moreOf({ site, options }: Planned): Given {
  const band = fillBand(site, options);
  return {
    kind: 'fill more',
    band: band ? { band: band.band, most: fillBandWords(site, band) } : null,
    pumped: fillPlan(site, { ...options, pumpAt: site.pond.fillMark }) ?? null,
  };
}
