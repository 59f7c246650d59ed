/** The map as a table on the page, and what it tells chosen above it. */
import { html, type TemplateResult } from 'lit';
import type { OperatingMap } from '../../sim/map/answer.ts';
import type { Family } from './families.ts';
import { tableOf } from './table.ts';

/** A family's figure, or the check that fails. */
export type Told = Family['figure'] | 'checks';

export function tableView(
  map: OperatingMap,
  families: readonly Family[],
  told: Told,
  tell: (told: Told) => void,
): TemplateResult {
  const family = families.find(({ figure }) => figure === told);
  const { corner, columns, rows } = tableOf(map, family);
  const choose = ({ target }: Event): void => tell((target as HTMLSelectElement).value as Told);
  return html`<details class="fold">
    <summary>the same as a table</summary>
    <select aria-label="what the table tells" @change=${choose}>
      <option value="checks" ?selected=${!family}>the check that fails first</option>
      ${families.map(({ figure, name }) => html`<option value=${figure} ?selected=${figure === family?.figure}>${name}</option>`)}
    </select>
    <div class="rows" tabindex="0" role="group" aria-label="Table of settings"><table>
      <caption class="note">${corner}</caption>
      <thead><tr><td></td>${columns.map((each) => html`<th scope="col">${each}</th>`)}</tr></thead>
      <tbody>${rows.map(({ name, cells }) => html`<tr><th scope="row">${name}</th>${cells.map((each) => html`<td>${each}</td>`)}</tr>`)}</tbody>
    </table></div>
  </details>`;
}
