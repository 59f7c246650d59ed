import { html, nothing, type TemplateResult } from 'lit';
import type { Line } from '../../plots/subjects.ts';
import type { Row } from '../../plots/table.ts';

/** The numbers of the plots, a row a moment; each event is a press in the row of its moment. */
export function tableView(lines: readonly Line[], rows: readonly Row[], press: (t: number) => void): TemplateResult {
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
          ({ t, clock, figures, what }) => html`<tr>
            <th scope="row">${clock}</th>
            ${figures.map((figure) => html`<td>${figure}</td>`)}
            <td>${what ? html`<button @click=${() => press(t)}>${what}</button>` : nothing}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}
