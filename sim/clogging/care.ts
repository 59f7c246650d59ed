import { settledVolume } from '../results/asSet.ts';
import { MOST_CHANNELED } from '../results/checks/limits.ts';
import type { Media, Scenario } from '../scenario/scenario.ts';
import type { Care, CareAnswer, ClogCourse, NoCare, Passing } from './answer.ts';
import { CloggingPath, shareOf } from './path.ts';
import { hoursADay } from './timetable.ts';
import { type Point, walkOn } from './walk.ts';
import { careSays, LONGEST } from './words.ts';

const WEEK = 604800;
/** The course is drawn to this many times the time of passing. */
const BEYOND = 1.4;

/**
 * How often a site's media are to be cleaned: from clean, by the site's own timetable or with the pump always on,
 * through the running balances of the clogging media until the channeled share passes its limit, whole weeks rounded
 * down; with a band from what nobody has measured, the gap, the pores a deposit takes, the media's weight.
 *
 * The pond is held at its level, the pump at its speed, the valves as at t = 0, the debris steady.
 * @throws RunFailure where a running balance fails
 */
export function care(s: Scenario): CareAnswer {
  const hours = hoursADay(s.actions);
  const media = s.filter?.media;
  const path = CloggingPath.of(s);
  if (path === undefined || media === undefined || s.debris === 0) return none(whyNothing(s));
  if (media.layers.every((layer) => layer.capture === 0))
    return none(
      `No layer of the media catches anything by the file, so none of them clogs${settledVolume(s) > 0 ? ' further' : ''}.`,
    );
  if (hours === 0) return none('By its timetable the pump never runs, so nothing settles in the media.');
  const limit = s.limits.channeling ?? MOST_CHANNELED;
  const running = (hours / 24) * LONGEST * WEEK;
  const { points, passing } = walkOn(path, limit, running, BEYOND);
  if (points[0].media <= 0) return none('No water goes up through the media, so nothing settles in them.');
  const byClock = clock(passing, hours);
  const rests = restsOf(s, media, limit, hours);
  const weeks = wholeWeeks(byClock);
  const all = [weeks, ...rests.flatMap(({ atLow, atHigh }) => [atLow, atHigh])].map((w) => w ?? NEVER);
  const found: Omit<Care, 'says'> = {
    passing: byClock,
    weeks,
    band: [finite(Math.min(...all)), finite(Math.max(...all))],
    rests,
    limit,
    hoursADay: hours,
    course: courseOf(path, points, hours),
    since: sinceCleaning(path, points, hours),
  };
  return { care: true, ...found, says: careSays(found, s.display) };
}

const NEVER = Number.POSITIVE_INFINITY;
const finite = (weeks: number): number | null => (weeks === NEVER ? null : weeks);
const none = (says: string): NoCare => ({ care: false, says });

function whyNothing(s: Scenario): string {
  if (s.debris === 0)
    return settledVolume(s) > 0
      ? 'The file gives no debris, so nothing more settles in the media; what has settled stays until it is rinsed out.'
      : 'The file gives no debris, so the media stay as clean as they are.';
  if (s.filter?.media === undefined) return 'There are no media that could clog.';
  return 'No bottom feed brings water up through the media, so nothing settles in them.';
}

function clock(passing: Passing, hours: number): Passing {
  return passing.when === 'later' ? { when: 'later', t: (passing.t * 24) / hours } : passing;
}

function wholeWeeks(passing: Passing): number | null {
  if (passing.when === 'later') return Math.floor(passing.t / WEEK);
  return passing.when === 'clean' ? 0 : null;
}

const BETA = /^filter\.media\.layers\[\d+\]\.beta$/;

/** Weeks at both ends of each thing assumed of the media; what a deposit takes of the pores is one for all layers. */
function restsOf(s: Scenario, media: Media, limit: number, hours: number): Care['rests'] {
  const betas = new Set(s.assumed.filter(({ place }) => BETA.test(place)).map(({ place }) => place));
  const weeksWith = (change: Partial<Media>): number | null => {
    const path = s.filter && CloggingPath.of({ ...s, filter: { ...s.filter, media: { ...media, ...change } } });
    return path ? wholeWeeks(clock(walkOn(path, limit, (hours / 24) * LONGEST * WEEK, 0).passing, hours)) : null;
  };
  const changes: Record<string, (value: number) => Partial<Media>> = {
    'filter.media.gap': (gap) => ({ gap }),
    'filter.media.submergedWeight': (submergedWeight) => ({ submergedWeight }),
    [[...betas][0] ?? '']: (beta) => ({
      layers: media.layers.map((l, i) => (betas.has(`filter.media.layers[${i}].beta`) ? { ...l, beta } : l)),
    }),
  };
  return s.assumed.flatMap(({ place, band }) => {
    const change = changes[place];
    if (change === undefined || band === undefined) return [];
    return [{ place, ends: band, atLow: weeksWith(change(band[0])), atHigh: weeksWith(change(band[1])) }];
  });
}

/** Time by the clock at which the course holds what the media hold at t = 0, s, evenly between its points. */
function sinceCleaning({ clogging }: CloggingPath, points: readonly Point[], hours: number): number | null {
  const sum = (held: readonly number[]): number => held.reduce((a, b) => a + b, 0);
  const there = sum(clogging.atStart);
  const next = points.findIndex(({ held }) => sum(held) >= there);
  if (next <= 0) return next === 0 ? 0 : null;
  const [from, to] = [points[next - 1], points[next]];
  const part = (there - sum(from.held)) / (sum(to.held) - sum(from.held));
  return ((from.ran + part * (to.ran - from.ran)) * 24) / hours;
}

function courseOf(path: CloggingPath, points: readonly Point[], hours: number): ClogCourse {
  const column = (of: (point: Point) => number): Float64Array => Float64Array.from(points, of);
  const { layers } = path.clogging;
  const pores = (held: readonly number[]): number =>
    layers.reduce((sum, { bulk }, i) => sum + bulk * path.clogging.porosity(i, held[i]), 0);
  const bed = layers.reduce((sum, { bulk }) => sum + bulk, 0);
  const per = (volume: number, flow: number): number => (flow > 0 ? volume / flow : Number.NaN);
  return {
    t: column(({ ran }) => (ran * 24) / hours),
    split: column(({ media: through, gap, main }) => (main > 0 ? (through + gap) / main : 0)),
    channeled: column(shareOf),
    emptyBed: column((p) => per(bed, p.media)),
    pore: column((p) => per(pores(p.held), p.media)),
    duty: column(({ main }) => main),
    lift: column(({ lift }) => lift),
    deposits: Object.fromEntries(layers.map(({ name }, i) => [name, column(({ held }) => held[i])])),
  };
}
