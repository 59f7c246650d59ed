import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatClock } from '../../sim/quantity/index.ts';
import type { LoggedEvent } from '../../sim/results/answer.ts';
import type { Answered } from '../engine/protocol.ts';
import type { Subject } from '../plots/strip.ts';
import { flowSubjects, levelSubjects } from '../plots/subjects.ts';
import { lengths, momentChosen, windowRound } from './moment.ts';
import { basinName, flowName } from './names.ts';
import './strip.ts';
import { shared } from './styles.ts';

/** Events that stand on the page at once; a season of daily switching has hundreds. */
const mostEvents = 16;

/** Levels and flows on one time axis, with one playhead through all of them and the events as presses. */
@customElement('tb-plots')
export class Plots extends LitElement {
  static override styles = [
    shared,
    css`
      .group {
        margin-bottom: 16px;
      }
      tb-strip {
        margin-bottom: 8px;
      }
      .bar {
        position: sticky;
        top: 0;
        z-index: 1;
        background: var(--paper);
        border-bottom: 0.8px solid var(--rule);
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 16px;
        margin-bottom: 8px;
      }
      .bar label {
        flex: 1 1 220px;
        display: flex;
        align-items: center;
        gap: 12px;
        min-height: 44px;
      }
      input {
        flex: 1;
        min-width: 80px;
        height: 44px;
        margin: 0;
        accent-color: var(--ink);
      }
      output {
        min-width: 6ch;
      }
      .events {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 20px;
        margin-bottom: 16px;
      }
    `,
  ];

  @property({ attribute: false }) run: Answered | undefined;
  @property({ attribute: false }) window: readonly [number, number] = [0, 1];
  @property({ type: Number }) moment = 0;

  #levels: Subject[] = [];
  #flows: { moved: Subject[]; still: string[] } = { moved: [], still: [] };

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('run') || !this.run) return;
    this.#levels = levelSubjects(this.run.series, this.run.scenario, basinName);
    this.#flows = flowSubjects(this.run.series, flowName);
  }

  /** The playhead and the drawings under it, for somebody who pressed a moment elsewhere on the page. */
  bringIntoView(): void {
    this.renderRoot.querySelector('.bar')?.scrollIntoView({ block: 'start' });
  }

  #strips(subjects: readonly Subject[], { scenario }: Answered): TemplateResult[] {
    return subjects.map(
      (subject, i) => html`<tb-strip
        .subject=${subject}
        .window=${this.window}
        .moment=${this.moment}
        .height=${subject.name === 'pond' ? 150 : 56}
        .clock=${i === subjects.length - 1 || subject.name === 'pond'}
        .starts=${scenario.starts}
        .display=${scenario.display}
      ></tb-strip>`,
    );
  }

  #chooseWindow(window: readonly [number, number]): void {
    this.dispatchEvent(new CustomEvent('window-chosen', { detail: window, bubbles: true, composed: true }));
  }

  #playhead({ scenario, answer }: Answered): TemplateResult {
    const [from, to] = this.window;
    const clock = formatClock(scenario.starts, this.moment);
    const move = (event: Event): void => {
      const moment = from + (Number((event.target as HTMLInputElement).value) / 1000) * (to - from);
      this.dispatchEvent(new CustomEvent('moment-moved', { detail: moment, bubbles: true, composed: true }));
    };
    const { span } = answer;
    const window = (words: string, [start, end]: readonly [number, number]): TemplateResult =>
      html`<button aria-pressed=${end - start === to - from} @click=${() => this.#chooseWindow([start, end])}>${words}</button>`;
    const shorter = Object.entries(lengths).filter(([, length]) => length < span);
    return html`<div class="bar">
      <label>moment
        <input type="range" min="0" max="1000" .value=${String(((this.moment - from) / (to - from)) * 1000)}
          aria-valuetext=${clock} @input=${move} />
        <output>${clock}</output></label>
      ${shorter.map(([words, length]) => window(words, windowRound(this.moment, span, length)))}
      ${window('the whole run', [0, span])}
    </div>`;
  }

  #events({ scenario, answer }: Answered): TemplateResult {
    if (answer.events.length === 0) return html`<p class="note">Nothing was switched, and no mark was passed.</p>`;
    const list = (events: readonly LoggedEvent[]): TemplateResult => html`<ol class="events">
      ${events.map(
        ({ t, what }) => html`<li>
          <button @click=${() => this.dispatchEvent(momentChosen(t))}>${formatClock(scenario.starts, t)} ${what}</button>
        </li>`,
      )}
    </ol>`;
    const [shown, more] = [answer.events.slice(0, mostEvents), answer.events.slice(mostEvents)];
    if (more.length === 0) return list(shown);
    return html`${list(shown)}<details><summary>${more.length} more</summary>${list(more)}</details>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { run } = this;
    if (!run) return nothing;
    const { moved, still } = this.#flows;
    return html`<section aria-label="Events"><h3>What happened when: press one to see its minutes</h3>${this.#events(run)}</section>
      ${this.#playhead(run)}
      <section class="group" aria-label="Levels"><h3>Levels, from the basin’s own edge; where it has none, above the site’s datum</h3>${this.#strips(this.#levels, run)}</section>
      <section class="group" aria-label="Flows">
        <h3>Flows</h3>
        ${this.#strips(moved, run)}
        ${still.length > 0 ? html`<p class="note">Nothing flowed: ${still.join(', ')}.</p>` : nothing}
      </section>`;
  }
}
