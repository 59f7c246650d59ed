import { balancesOf } from '../balance.ts';
import { pondInBalance } from '../network/start.ts';
import { momentText, parseMoment } from '../quantity/index.ts';
import { deviation } from '../readings/leastSquares.ts';
import { NINETY } from '../readings/prior.ts';
import type { Banded } from '../readings/readBack.ts';
import { lowestOf } from '../results/checks/variants.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { stopTrial } from '../trials/stop.ts';
import { courseLevels } from './course.ts';
import { factsOf } from './facts.ts';
import { fitLog, type LawFit, type LogFit, READ_OFF, type Watched } from './fit.ts';
import { oneMore } from './more.ts';
import type { Log, LogProblem } from './reading.ts';
import type { LeakAnswer, LogPlot, Where } from './said.ts';
import type { Shift } from './shifts.ts';
import { type Track, trackOf } from './track.ts';
import { holeSlope, pumpTimes } from './unknowns.ts';

const DAY = 86400;

export type Leak =
  | { readonly ok: true; readonly problems: readonly LogProblem[]; readonly answer: LeakAnswer }
  | { readonly ok: false; readonly problems: readonly LogProblem[] };

/** A loss is claimed only beyond this many standard deviations: without one, one log in forty is beyond it. */
const CLAIM = 1.96;
/** The same where two losses are asked after at once (Bonferroni). */
const CLAIM_OF_TWO = 2.241;
/** The most that may be lost unseen where a pond is said to hold, m/s: 1 1/2 in a week, what common practice takes as normal. */
export const NORMAL = (1.5 * 0.0254) / (7 * DAY);

const THREE = 3;

/** Whether a pond loses more than evaporation and splash explain, by a log of its levels. */
export function leakIn(s: Scenario, log: Log): Leak {
  const track = trackOf(log);
  if (track === undefined || track.readings.length < THREE) {
    const found = track ? 'two readings' : 'fewer than two readings';
    const wanted = 'three readings or more, over two days or more: two cannot tell a fall from a slip of the ruler';
    const problem: LogProblem = { place: 'the log', line: 0, left: 'all', found, wanted };
    return {
      ok: false,
      problems: [...log.problems, ...(log.problems.some(({ left }) => left === 'all') ? [] : [problem])],
    };
  }
  try {
    return { ok: true, problems: log.problems, answer: answerOf(watchedOf(s, log, track), log.noons) };
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    const problem = { place: 'the site', found: `no running balance (${error.words})`, wanted: 'a site that runs' };
    return { ok: false, problems: [...log.problems, { ...problem, line: 0, left: 'all' }] };
  }
}

/** What is watched, and the clock time of its first line. */
export type Dated = Watched & { readonly starts: string };

/** The log's site: where its first reading stands, and what it says of evaporation, splash and stops. */
function watchedOf(s: Scenario, log: Log, track: Track): Dated {
  const starts = log.dated ? momentText('1970-01-01T00:00', track.start) : s.starts;
  const edge = lowestOf(s.pond.rim.crest);
  const reference = log.measured === 'down' ? edge - track.zero : (s.pond.fillMark ?? pondInBalance(s));
  const facts = factsOf(s, {
    balance: balancesOf(s)(s),
    rise: riseOf(s),
    reference,
    evaporation: log.evaporation,
    starts: starts.slice(0, 16),
  });
  const clock = log.dated ? (((parseMoment(starts) ?? 0) % DAY) + DAY) % DAY : undefined;
  return { track, facts, clock, starts };
}

function riseOf(s: Scenario): number | undefined {
  const stop = stopTrial(s);
  return stop?.rise;
}

interface Loss extends Banded {
  readonly sd: number;
}

function lossOf({ estimate, unknowns }: LawFit, of: readonly ('pond' | 'pump')[]): Loss {
  const slopes = estimate.u.map((_, k) => (of.some((each) => unknowns.at[each] === k) ? unknowns.rate : 0));
  const value = estimate.u.reduce((all, u, k) => all + slopes[k] * u, 0);
  const sd = deviation(slopes, estimate.covariance);
  return { value, sd, band: [value - NINETY * sd, value + NINETY * sd] };
}

const isClaimed = ({ value, sd }: Loss, claim: number): boolean => value > claim * sd;
const bare = ({ value, band }: Banded): Banded => ({ value, band });

/** What a watched pond's levels say. @param noons some lines have a date alone, others their time of day too */
export function answerOf(watched: Dated, noons: boolean): LeakAnswer {
  const { track, facts } = watched;
  const fit = fitLog(watched);
  const { chosen } = fit;
  const times = pumpTimes(track);
  const both = times.on && times.off;
  const standing = lossOf(chosen, ['pond']);
  const total = both ? lossOf(chosen, ['pond', 'pump']) : standing;
  const claim = both ? CLAIM_OF_TWO : CLAIM;
  const leads = both && !isClaimed(total, claim) && isClaimed(standing, claim) ? standing : total;
  const verdict = verdictOf(leads, claim);
  const running = both ? lossOf(chosen, ['pump']) : undefined;
  return {
    verdict,
    where: verdict === 'loses' && running ? whereOf(standing, running) : 'unknown',
    loss: bare(leads),
    flow: flowOf(leads, facts.area),
    standing: times.off ? bare(standing) : undefined,
    running: running && bare(running),
    limit: (claim + NINETY) * leads.sd,
    most: leads.value + NINETY * leads.sd,
    hole: holeOf(chosen),
    gain: fit.gain,
    evaporation: evaporationOf(watched, chosen),
    beside: chosen.found.map((each) => besideOf(each, track, chosen)),
    scatter: chosen.scatter,
    decides: verdict === 'cannot tell' ? oneMore(watched, chosen, { both, claim, enough: NORMAL }) : undefined,
    plot: plotOf(watched, fit),
    facts: {
      silent: track.silent,
      noons,
      autofill: facts.autofill,
      starts: watched.starts,
      dated: watched.clock !== undefined,
    },
    pumpTimes: times,
    readings: track.readings.length,
  };
}

function verdictOf(loss: Loss, claim: number): LeakAnswer['verdict'] {
  if (isClaimed(loss, claim)) return 'loses';
  if (loss.value < -claim * loss.sd) return 'gains';
  return loss.band[1] <= NORMAL ? 'holds' : 'cannot tell';
}

function whereOf(standing: Loss, running: Loss): Where {
  const [pond, falls] = [standing, running].map((each) => isClaimed(each, CLAIM));
  return pond ? (falls ? 'both' : 'pond') : falls ? 'falls' : 'unknown';
}

/** The area may be off by a tenth, which adds to the loss's own band as squares (JCGM 100:2008, 5.1.6). */
function flowOf({ value, sd }: Loss, area: number): Banded {
  const half = area * Math.hypot(NINETY * sd, 0.1 * value);
  return { value: area * value, band: [area * value - half, area * value + half] };
}

function holeOf({ course, unknowns, estimate }: LawFit): Banded | undefined {
  const { hole } = course;
  if (hole === undefined) return undefined;
  const k = unknowns.at.hole;
  const relative = (NINETY * holeSlope(hole) * Math.sqrt(estimate.covariance[k][k])) / hole;
  // The depth's logarithm is what was fitted, and its band lies evenly about it.
  return { value: hole, band: [hole * Math.exp(-relative), hole * Math.exp(relative)] };
}

function evaporationOf({ track, facts }: Watched, { course, estimate, unknowns }: LawFit): LeakAnswer['evaporation'] {
  const end = track.readings.at(-1)?.t ?? 0;
  const at = (u: number): number => [1, 3, 5].reduce((sum, k) => sum + facts.evaporation((k * end) / 6, u) / 3, 0);
  const half = NINETY * Math.sqrt(estimate.covariance[unknowns.at.evaporation][unknowns.at.evaporation]);
  const u = course.evaporation;
  return { value: at(u), band: [at(u - half), at(u + half)], from: facts.evaporationFrom };
}

function besideOf(shift: Shift, { readings, legs }: Track, { course, scatter }: LawFit): LeakAnswer['beside'][number] {
  if (shift.kind === 'jump') {
    const reading = legs[shift.at].reading ?? 0;
    const off = course.jumps.get(shift.at) ?? 0;
    return { ...shift, line: readings[reading].line, from: readings[Math.max(0, reading - 1)].line, off };
  }
  return { ...shift, line: readings[shift.at].line, from: readings[shift.at].line, off: shift.by * scatter * READ_OFF };
}

function plotOf({ track, facts, clock }: Watched, { chosen }: LogFit): LogPlot {
  const line = (course: LawFit['course']): (readonly [number, number])[] => {
    const points: (readonly [number, number])[] = [];
    courseLevels(track, facts, course, clock, (t, level) => points.push([t, level]));
    return points;
  };
  const dry = { ...chosen.course, pond: 0, pump: 0, hole: undefined };
  return {
    dots: track.readings.map(({ t, level, line: at }, i) => ({
      t,
      level,
      line: at,
      counts: !chosen.shifts.strays.includes(i),
    })),
    fall: line(chosen.course),
    dry: line(dry),
    zero: track.zero,
    sign: track.sign,
  };
}
