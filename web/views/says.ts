import { html, nothing, type TemplateResult } from 'lit';
import { formatClock } from '../../sim/quantity/index.ts';
import type { Check } from '../../sim/results/answer.ts';
import { momentChosen } from './moment.ts';
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

/** What would mend a check, where its limit is from, a press to its moment in the run, and its other places. */
export function besides(check: Check, starts: string): TemplateResult {
  const { mend, verdict, origin, where, t, places } = check;
  return html`${mend ? html`<p class="mend">${mend}</p>` : nothing}
    ${verdict === 'told' ? nothing : html`<p class="note">Limit: ${originWords[origin]}.</p>`}
    ${
      where === 'run' && t !== null
        ? html`<button @click=${(event: Event) => event.target?.dispatchEvent(momentChosen(t))}>
          look at ${formatClock(starts, t)}
        </button>`
        : nothing
    }
    ${
      places.length > 0
        ? html`<p class="note">Elsewhere:</p>
          <ul>
            ${places.map((place) => html`<li>${verdictMark(place.verdict)} ${place.says}</li>`)}
          </ul>`
        : nothing
    }`;
}
