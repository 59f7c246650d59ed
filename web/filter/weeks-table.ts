import { html, type TemplateResult } from 'lit';
import type { ClogCourse } from '../../sim/clogging/answer.ts';
import { type Display, formatDuration, formatFlow, formatNumber, formatPercent } from '../../sim/quantity/index.ts';

const WEEK = 604800;
/** Of a course so many moments stand in its table. */
const ROWS = 6;

/** Figures of some of its moments, from clean to its end. */
export function weeksTable(course: ClogCourse, display: Display): TemplateResult {
  const { t, split, channeled, pore, duty, lift } = course;
  const last = t.length - 1;
  const picked = [...new Set(Array.from({ length: ROWS }, (_, i) => Math.round((last * i) / (ROWS - 1))))];
  const stay = (seconds: number): string => (Number.isNaN(seconds) ? 'none goes there' : formatDuration(seconds));
  return html`<div class="rows" tabindex="0" role="region" aria-label="Week by week"><table>
      <thead><tr><th scope="col">weeks</th><th scope="col">slips round</th><th scope="col">from below</th>
        <th scope="col">time in the pores</th><th scope="col">the pump gives</th><th scope="col">of the head that lifts</th></tr></thead>
      <tbody>${picked.map(
        (
          i,
        ) => html`<tr><th scope="row">${formatNumber(t[i] / WEEK, 1)}</th><td>${formatPercent(channeled[i])}</td><td>${formatPercent(split[i])}</td>
          <td>${stay(pore[i])}</td><td>${formatFlow(duty[i], display)}</td><td>${formatPercent(lift[i])}</td></tr>`,
      )}</tbody></table></div>`;
}
