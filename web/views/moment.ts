/** Somebody chose a moment of the run to look at, s from its start: an event, or the moment of a check. */
export function momentChosen(t: number): CustomEvent<number> {
  return new CustomEvent('moment-chosen', { detail: t, bubbles: true, composed: true });
}

/** A window of minutes round a moment, within the run: what a stop sets off is over in about that time. */
export function windowRound(t: number, span: number): [from: number, to: number] {
  const from = Math.max(0, Math.min(t - 120, span - 60));
  return [from, Math.min(span, from + 1200)];
}
