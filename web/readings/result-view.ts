import { html, nothing, type TemplateResult } from 'lit';
import type { Display } from '../../sim/quantity/index.ts';
import type { ReadBackGiven } from '../engine/protocol.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { fittedBand, fittedFigure, fittedName, flowWords, isTold } from './words.ts';

type Said = Extract<ReadBackGiven['result'], { ok: true }>;

/** What the readings say: contradictions first, then the real flow, the fitted values, and what they can't tell. */
export function resultView(said: Said, display: Display, put: () => void): TemplateResult {
  const { flow, contradictions, fitted, cannotTell, converged, edits } = said;
  const feeds = (['bottom feed', 'top feed'] as const).flatMap((name) => {
    const banded = flow[name];
    return banded ? [{ name, banded }] : [];
  });
  return html`<section aria-label="What the readings say">
    ${contradictions.map(({ says }) => html`<p class="wrong" role="alert">${trueFractions(says)}</p>`)}
    ${converged ? nothing : html`<p class="note">The readings lie where the pump begins to draw air: the ranges are rough.</p>`}
    <p class="large">The real flow is ${flowWords(flow.main, display)}.</p>
    ${feeds.length > 1 ? feeds.map(({ name, banded }) => html`<p>By the ${name}: ${flowWords(banded, display)}.</p>`) : nothing}
    ${fittedTable(fitted.filter(isTold))}
    ${
      cannotTell.length > 0
        ? html`<details><summary>what they can’t tell</summary><ul>${cannotTell.map(({ says }) => html`<li>${trueFractions(says)}</li>`)}</ul></details>`
        : nothing
    }
    <p class="note">Ranges hold nine times in ten, the readings being as good as they were given.</p>
    ${edits.length > 0 ? html`<button class="deed" @click=${put}>put these into the site</button>` : nothing}
  </section>`;
}

function fittedTable(fitted: Said['fitted']): TemplateResult | typeof nothing {
  if (fitted.length === 0) return nothing;
  return html`<table aria-label="Fitted values">
    <thead><tr><th scope="col">fitted</th><th scope="col" class="figure">was</th><th scope="col" class="figure">is</th></tr></thead>
    <tbody>${fitted.map(
      (each) => html`<tr>
        <th scope="row">${fittedName(each)}</th>
        <td class="figure">${fittedFigure(each, each.before.value)}</td>
        <td class="figure">${fittedFigure(each, each.value)}<br /><span class="range">${fittedBand(each)}</span></td>
      </tr>`,
    )}</tbody>
  </table>`;
}
