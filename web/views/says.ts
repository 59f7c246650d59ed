import { html, nothing, type TemplateResult } from 'lit';
import { formatClock, formatDuration } from '../../sim/quantity/index.ts';
import type { Check } from '../../sim/results/answer.ts';
import { momentChosen, trialChosen } from './moment.ts';
import { verdictMark } from './verdict.ts';

const originWords: Record<Check['origin'], string> = {
  published: 'published',
  'common practice': 'common practice, no source',
  'our default': 'our default',
  file: 'set in the site’s file',
};

/** The sentence with the answer, and what is said beside it; together the whole text but for one blank. */
export function firstSentence(says: string): [sentence: string, more: string] {
  const end = says.search(/[.!] (?=[\p{Lu}\d‘“])/u);
  return end < 0 ? [says, ''] : [says.slice(0, end + 1), says.slice(end + 2)];
}

/** Checks whose figure is from a trial that can be looked at. */
const looked = [
  'drain-back',
  'drain-back, valve failed',
  'drain-back in rain',
  'first start',
  'dammed falls',
  'filling',
];

/** A press to the moment of a check's figure, in the run or in the record of its trial. */
function lookPress({ name, where, t }: Check, starts: string): TemplateResult | typeof nothing {
  if (t === null || !(where === 'run' || looked.includes(name))) return nothing;
  const event = (): CustomEvent => (where === 'run' ? momentChosen(t) : trialChosen(name, t));
  const words = where === 'run' ? `look at ${formatClock(starts, t)}` : `look at its trial, ${formatDuration(t)} in`;
  return html`<button @click=${({ target }: Event) => target?.dispatchEvent(event())}>${words}</button>`;
}

/** What would mend a check, where its limit is from, a press to its moment in the run, and its other places. */
export function besides(check: Check, starts: string): TemplateResult {
  const { mend, verdict, origin, places } = check;
  return html`${mend ? html`<p class="mend">${mend}</p>` : nothing}
    ${verdict === 'told' ? nothing : html`<p class="note">Limit: ${originWords[origin]}.</p>`}
    ${lookPress(check, starts)}
    ${
      places.length > 0
        ? html`<p class="note">Elsewhere:</p>
          <ul>
            ${places.map((place) => html`<li>${verdictMark(place.verdict)} ${place.says}</li>`)}
          </ul>`
        : nothing
    }`;
}
