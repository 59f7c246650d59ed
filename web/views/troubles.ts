import { html, type TemplateResult } from 'lit';
import { formatDuration } from '../../sim/quantity/index.ts';
import type { Fault, Refused, Unsolved } from '../engine/protocol.ts';

/** Why what stands on the screen is older than what was typed. */
export function oldWords(trouble: Refused | Unsolved | Fault): string {
  const lead = 'This is the last good run, older than what you typed.';
  if (trouble.kind !== 'refused') return `${lead} ${trouble.message}`;
  const [{ place, found, wanted }, ...more] = trouble.problems as [Refused['problems'][number]];
  const others = more.length > 0 ? ` (and ${more.length} more)` : '';
  return `${lead} At ${place}: found ${found}; wanted ${wanted}${others}.`;
}

/** Why there is no answer, and what to do about it, in words. */
export function troubleWords(trouble: Refused | Unsolved | Fault): TemplateResult {
  switch (trouble.kind) {
    case 'refused':
      return html`<section class="trouble" aria-label="Problems of the file">
        <h2 class="site">This file has ${trouble.problems.length === 1 ? 'a problem' : `${trouble.problems.length} problems`}; nothing was run</h2>
        <ul>
          ${trouble.problems.map(
            ({ place, found, wanted }) => html`<li><p><i>${place}</i>: found ${found}; wanted ${wanted}.</p></li>`,
          )}
        </ul>
      </section>`;
    case 'unsolved':
      return html`<section class="trouble" aria-label="No answer">
        <h2 class="site">${trouble.title}: the run ${trouble.why === 'capped' ? 'was cut short' : 'found no solution'}</h2>
        <p>After ${formatDuration(trouble.time)} it could not get past <i>${trouble.part}</i>: ${trouble.message}.</p>
      </section>`;
    case 'fault':
      return html`<section class="trouble" aria-label="A fault">
        <h2 class="site">A fault of this page, not of the site</h2>
        <p>${trouble.message}</p>
      </section>`;
  }
}
