import { html, nothing, type TemplateResult } from 'lit';
import type { Block } from './block.ts';

/** One part of a sheet as it is set. In a table with heads all but the first column are figures. */
export function blockView({ title, heads, rows, steps, says }: Block): TemplateResult {
  const kind = heads ? 'figure' : '';
  const head = heads
    ? html`<thead><tr>${heads.map((each, i) => html`<th scope="col" class=${i > 0 ? kind : ''}>${each}</th>`)}</tr></thead>`
    : nothing;
  const row = ([name, ...figures]: readonly string[]): TemplateResult =>
    html`<tr><th scope="row">${name}</th>${figures.map((each) => html`<td class=${kind}>${each}</td>`)}</tr>`;
  return html`<section>
    <h3>${title}</h3>
    ${rows ? html`<table>${head}<tbody>${rows.map(row)}</tbody></table>` : nothing}
    ${steps ? html`<ol>${steps.map((each) => html`<li>${each}</li>`)}</ol>` : nothing}
    ${says?.map((each) => html`<p>${each}</p>`) ?? nothing}
  </section>`;
}
