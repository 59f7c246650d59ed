import { html, type TemplateResult } from 'lit';
import type { Line } from '../plots/subjects.ts';
import type { Row } from '../plots/table.ts';

/** The numbers of the plots, a row a moment; events stand in the row of theirs. */
export function tableView(lines: readonly Line[], rows: readonly Row[]): TemplateResult {
  return html`<div class="rows" role="region" aria-label="Levels and flows as a table" tabindex="0">
    <table>
      <thead>
        <tr>
          <th scope="col">clock</th>
          ${lines.map(({ name }) => html`<th scope="col">${name}</th>`)}
          <th scope="col">what happened</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ({ clock, figures, what }) => html`<tr>
            <th scope="row">${clock}</th>
            ${figures.map((figure) => html`<td>${figure}</td>`)}
            <td>${what}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
