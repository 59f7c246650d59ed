import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Check } from '../../sim/results/answer.ts';
import type { Stops } from '../../sim/studies/quick.ts';
import type { Display } from '../engine/protocol.ts';
import { marginRuler, marginRulerStyles } from './margin-ruler.ts';
import { besides } from './says.ts';
import { shared } from './styles.ts';
import { verdictStyles } from './verdict.ts';

/** Under the answer: its margin on a ruler, and everything its check says. */
@customElement('tb-whole-answer')
export class WholeAnswer extends LitElement {
  static override styles = [shared, verdictStyles, marginRulerStyles];

  /** The check in full; undefined while none has been computed. */
  @property({ attribute: false }) check: Check | undefined;
  @property({ attribute: false }) stops: Stops | null = null;
  /** How the run that is drawn differs from the stop that is told. */
  @property() inRun = '';
  @property() starts = '';
  @property() display: Display = 'metric';

  override render(): TemplateResult {
    const { check, stops } = this;
    return html`<section aria-label="The whole answer">
      ${stops ? marginRuler(stops, this.display) : nothing}
      ${this.inRun ? html`<p class="note">${this.inRun}</p>` : nothing}
      ${
        check
          ? html`<details>
            <summary>the whole answer</summary>
            <p class="says">${check.says}</p>
            ${besides(check, this.starts)}
          </details>`
          : nothing
      }
    </section>`;
  }
}
