import { html, nothing, type TemplateResult } from 'lit';
import { meterText } from '../../sim/fill/words.ts';
import { formatVolume } from '../../sim/quantity/index.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { shownFigure } from './typed-figure.ts';
import { type FillSeen, sayer } from './words.ts';

/** Every mark of a fill: its clock, its level below the edge, what has run in by then and what the meters read. */
export function tableView(seen: FillSeen): TemplateResult | typeof nothing {
  const { planned, display, edge } = seen;
  const { plan } = planned;
  if (plan === null || plan.marks.length === 0) return nothing;
  const clock = sayer(seen);
  const metered = plan.hoses.some(({ meter }) => meter !== null);
  const [step, name] = display === 'us' ? [0.0254, 'an inch'] : [0.01, 'a centimeter'];
  return html`<details>
    <summary>every mark, with its clock</summary>
    <table aria-label="Marks of the fill">
      <thead><tr><th scope="col">mark</th><th scope="col" class="figure">below the edge</th><th scope="col" class="figure">clock</th>
        <th scope="col" class="figure">run in</th>${metered ? html`<th scope="col" class="figure">meter</th>` : nothing}<th scope="col" class="figure">${name} there</th></tr></thead>
      <tbody>${plan.marks.map(
        ({ name: mark, level, reached, volume, meters, surface }) => html`<tr>
          <th scope="row">${mark}</th>
          <td class="figure">${trueFractions(shownFigure(edge - level, 'length', display))}</td>
          <td class="figure">${reached ? clock(reached.t) : 'never'}</td>
          <td class="figure">${volume === null ? '–' : formatVolume(volume, display)}</td>
          ${metered ? html`<td class="figure">${meters.flatMap((each) => (each === null ? [] : [meterText(each, display)])).join(', ') || '–'}</td>` : nothing}
          <td class="figure">${formatVolume(surface * step, display)}</td>
        </tr>`,
      )}</tbody>
    </table>
  </details>`;
}
