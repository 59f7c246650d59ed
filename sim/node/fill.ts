import { fillBand } from '../fill/band.ts';
import { calendarFile } from '../fill/calendar.ts';
import { instantOf, isZone, momentsOfDay } from '../fill/clock.ts';
import { openingFor } from '../fill/opening.ts';
import { type FillOptions, type FillPlan, fillPlan } from '../fill/plan.ts';
import { fillCsv, fillText } from '../fill/text.ts';
import { FILL_CAUTION, meterText } from '../fill/words.ts';
import { formatVolume, parseTimeOfDay } from '../quantity/index.ts';
import type { Problem, Scenario } from '../scenario/scenario.ts';
import { writeLines } from './files.ts';

/** What a call wants of a fill, as it was typed. */
export interface FillWishes {
  readonly json: boolean;
  readonly csv: string | undefined;
  readonly ics: string | undefined;
  readonly zone: string | undefined;
  readonly pump: boolean;
  readonly by: string | undefined;
  readonly nights: string | undefined;
}

/** The calendar rings so long before the hose is to be shut, s. */
const ALARM = 600;
const DAY = 86400;

/** Everything that is wrong with the wishes at once. */
export function wishProblems({ ics, zone, by, nights }: Omit<FillWishes, 'json' | 'csv'>): Problem[] {
  const problems: Problem[] = [];
  const tell = (place: string, found: string, wanted: string): void => void problems.push({ place, found, wanted });
  if (zone && !isZone(zone)) tell('--zone', JSON.stringify(zone), 'a time zone’s name, as Europe/Berlin');
  if (ics !== undefined && zone === undefined) tell('--ics', 'it without --zone', 'a time zone by --zone');
  if (by && parseTimeOfDay(by) === undefined) tell('--by', JSON.stringify(by), 'a clock time HH:MM');
  if (nights && nightsOf(nights) === undefined)
    tell('--nights', JSON.stringify(nights), 'two clock times, as 22:00-07:00');
  return problems;
}

function nightsOf(text: string): readonly [number, number] | undefined {
  const [from, to] = text.split('-').map(parseTimeOfDay);
  return text.split('-').length === 2 && from !== undefined && to !== undefined ? [from, to] : undefined;
}

/** The fill of a site, printed; files are written by the way. Problems where there is none to tell of. */
export function fillCommand(s: Scenario, wishes: FillWishes): { output: string; code: 0 | 1 } | readonly Problem[] {
  const options: FillOptions = {
    zone: wishes.zone,
    nights: wishes.nights === undefined ? undefined : nightsOf(wishes.nights),
    pumpAt: wishes.pump ? s.pond.fillMark : undefined,
  };
  const late = wishes.by === undefined ? undefined : openedFor(s, wishes.by, options);
  if (late !== undefined && 'place' in late) return [late];
  const planned: FillOptions = late === undefined ? options : { ...options, open: late.open };
  const plan = fillPlan(s, planned);
  if (plan === undefined) {
    return [{ place: 'supply.hose', found: 'none that gives anything', wanted: 'a hose with its flow' }];
  }
  const { csv, ics, json, zone } = wishes;
  if (ics !== undefined && plan.full === null) {
    return [{ place: '--ics', found: 'a pond that is never full', wanted: 'a fill that ends' }];
  }
  if (csv !== undefined) writeLines(csv, fillCsv(plan));
  if (ics !== undefined && zone !== undefined) writeLines(ics, [shutOff(s, plan, zone)]);
  const band = fillBand(s, planned);
  const output = json ? `${JSON.stringify({ ...plan, band: band?.band ?? null }, null, 2)}\n` : fillText(s, plan, band);
  return { output, code: plan.full === null ? 1 : 0 };
}

/** The latest opening with which the pond is full by the next showing of a clock time. */
function openedFor(s: Scenario, by: string, options: FillOptions): { open: number } | Problem {
  const moment = momentsOfDay(s.starts, parseTimeOfDay(by) ?? 0, 2 * DAY, options.zone).find((t) => t > 0) ?? DAY;
  const opening = openingFor(s, moment, options);
  if (opening === undefined || typeof opening.open === 'number') return { open: opening?.open ?? 0 };
  const found = opening.full === null ? 'a pond that is never full' : 'too little time until then';
  return { place: '--by', found, wanted: 'a later time, more hoses, or water that stands there already' };
}

/** The moment to shut the hose, for a calendar. */
function shutOff({ title, display, starts }: Scenario, { full, volume, hoses }: FillPlan, zone: string): string {
  const t = full?.t ?? 0;
  const meters = hoses.flatMap(({ name, meter }) =>
    meter === null ? [] : [`The meter of ${name} then reads ${meterText(meter, display)}.`],
  );
  const at = instantOf(starts, t, zone);
  return calendarFile({
    title: `Shut the hose: ${title}`,
    description: [`${formatVolume(volume ?? 0, display)} have run in.`, ...meters, FILL_CAUTION].join('\n'),
    at,
    alarmBefore: ALARM,
    uid: `fill-${Math.round(at)}@tumblebay`,
    stamp: Date.now(),
  });
}
