const DAY = 86400;

/** The site's own clock: local, without zone and summer time; `starts` is `YYYY-MM-DDTHH:MM`. */
function epoch(starts: string): number {
  return Date.parse(`${starts}:00Z`) / 1000;
}

/** Seconds after midnight at a run's start. */
export function timeOfDay(starts: string): number {
  return epoch(starts) % DAY;
}

/** Moments of a run, s, at which the clock shows a time of day (s after midnight), from 0 to `span`. */
export function dailyMoments(starts: string, at: number, span: number): number[] {
  const first = (((at - timeOfDay(starts)) % DAY) + DAY) % DAY;
  const moments: number[] = [];
  for (let t = first; t <= span; t += DAY) moments.push(t);
  return moments;
}

/** Month (0 January .. 11) in force at a moment of a run. */
export function monthAt(starts: string, t: number): number {
  return new Date((epoch(starts) + t) * 1000).getUTCMonth();
}

/** Moments in (0, span] at which a new month begins, s. */
export function monthStarts(starts: string, span: number): number[] {
  const begin = epoch(starts);
  const date = new Date(begin * 1000);
  const moments: number[] = [];
  for (let k = 1; ; k++) {
    const t = Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + k, 1) / 1000 - begin;
    if (t > span) return moments;
    moments.push(t);
  }
}
