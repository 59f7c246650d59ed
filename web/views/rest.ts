import { html, nothing, type TemplateResult } from 'lit';
import { formatDuration } from '../../sim/quantity/index.ts';
import type { Answered } from '../engine/protocol.ts';
import { checkOf } from '../state/headline.ts';
import type { Session } from '../state/session.ts';
import './balance.ts';
import './checks.ts';
import './ledger.ts';

/** Everything else that is known of a site: its other checks, its balance, its ledger, what was assumed. */
export function restView({ full, about, isWhole, trouble }: Session, run: Answered): TemplateResult | typeof nothing {
  if (!full) return nothing;
  const { answer, scenario } = full;
  return html`<div class="rest ${isWhole || trouble ? '' : 'pending'}">
    ${answer.cautions.map((caution) => html`<p class="caution">${caution}</p>`)}
    <tb-checks .checks=${answer.checks} .asked=${checkOf[about]} .starts=${scenario.starts}></tb-checks>
    <tb-balance .balance=${run.balance ?? undefined} .display=${run.scenario.display}></tb-balance>
    <tb-ledger .ledger=${run.answer.ledger} .energy=${run.answer.energy} .display=${run.scenario.display}></tb-ledger>
    ${answer.assumed.length > 0 ? assumptions(answer.assumed) : nothing}
    <details>
      <summary>about this site</summary>
      <p>${scenario.notes || 'The file has no notes.'} ${formatDuration(answer.span)} are simulated.</p>
    </details>
  </div>`;
}

function assumptions(assumed: Answered['answer']['assumed']): TemplateResult {
  return html`<details>
    <summary>${assumed.length} values were assumed</summary>
    <p class="note">What the file does not give, in m, m³/s and s, with the range it may lie in.</p>
    <table>
      ${assumed.map(
        ({ place, value, band }) => html`<tr>
          <th scope="row">${place}</th>
          <td class="figure">${value}${band ? html` <span class="note">${band[0]} to ${band[1]}</span>` : nothing}</td>
        </tr>`,
      )}
    </table>
  </details>`;
}
