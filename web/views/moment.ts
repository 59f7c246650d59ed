/** Somebody chose a moment of the run to look at, s from its start: an event, or the moment of a check. */
export function momentChosen(t: number): CustomEvent<number> {
  return new CustomEvent('moment-chosen', { detail: t, bubbles: true, composed: true });
}

/** Somebody chose to look at the trial behind a check, at a moment from its start, s. */
export function trialChosen(check: string, t: number): CustomEvent<{ check: string; t: number }> {
  return new CustomEvent('trial-chosen', { detail: { check, t }, bubbles: true, composed: true });
}

/** Lengths of time to look at, s: what a stop sets off is over within the minutes, a pump by the clock turns in a day. */
export const lengths = { 'twenty minutes': 1200, 'one day': 86_400 } as const;

/** A window of that length within the run, the moment a tenth of the way along where there is room. */
export function windowRound(
  t: number,
  span: number,
  length: number = lengths['twenty minutes'],
): [from: number, to: number] {
  const from = Math.max(0, Math.min(t - length / 10, span - length));
  return [from, Math.min(span, from + length)];
}
