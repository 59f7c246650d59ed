import { covarianceOf, deviation } from '../readings/leastSquares.ts';
import { NINETY } from '../readings/prior.ts';
import { type LawFit, LogModel, READ_OFF, type Watched } from './fit.ts';
import type { Track } from './track.ts';

const DAY = 86400;
/** Days after the last reading at which one more is tried. */
const DAYS = [1, 2, 3, 4, 5, 7, 10, 14];

/** The log with one reading more, its pump as it stands at the end. */
function longer(track: Track, days: number): Track {
  const last = track.readings[track.readings.length - 1];
  const t = last.t + days * DAY;
  const leg = {
    from: last.t,
    to: t,
    pump: last.on ? 'on' : 'off',
    added: 0,
    rain: 0,
    unknown: false,
    reading: track.readings.length,
  } as const;
  return {
    ...track,
    readings: [...track.readings, { ...last, t, line: 0 }],
    legs: [...track.legs.filter(({ from }) => from < last.t), leg],
  };
}

/**
 * Seconds after the last reading at which one more would decide, were the loss as the log has it: it would be claimed, or
 * less than what is normal would be left open. By the covariance the longer log would have. undefined: none within two weeks.
 */
export function oneMore(
  watched: Watched,
  fit: LawFit,
  { both, claim, enough }: { readonly both: boolean; readonly claim: number; readonly enough: number },
): number | undefined {
  const { at, rate, count } = fit.unknowns;
  const { u } = fit.estimate;
  const slopes = u.map((_, k) => (k === at.pond || (both && k === at.pump) ? rate : 0));
  const loss = u.reduce((sum, each, k) => sum + slopes[k] * each, 0);
  const decided = (days: number): boolean => {
    const there = { ...watched, track: longer(watched.track, days) };
    const model = new LogModel(there, fit.unknowns, fit.shifts.strays, fit.scatter * READ_OFF);
    const sd = deviation(slopes, covarianceOf(model.slopes(u, model.misfit(u)), count));
    return loss > claim * sd || loss + NINETY * sd <= enough;
  };
  const days = DAYS.find(decided);
  return days === undefined ? undefined : days * DAY;
}
