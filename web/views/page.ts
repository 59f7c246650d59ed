import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { formatDuration } from '../../sim/quantity/index.ts';
import { Engine } from '../engine/client.ts';
import { openLine } from '../engine/line.ts';
import type { Answered, Display, Outcome } from '../engine/protocol.ts';
import { demoSites, type Site, siteOf } from '../sites.ts';
import './answer.ts';
import './balance.ts';
import { cautions } from './cautions.ts';
import './checks.ts';
import './ledger.ts';
import { windowRound } from './moment.ts';
import { pageStyles } from './page-styles.ts';
import type { Plots } from './plots.ts';
import './plots.ts';
import { shared } from './styles.ts';
import { troubleWords } from './troubles.ts';

/** The page: which site, in which units, and what came of it. */
@customElement('tb-page')
export class Page extends LitElement {
  static override styles = [shared, pageStyles];

  @state() private sites: readonly Site[] = demoSites;
  @state() private site: Site | undefined = siteByAddress() ?? demoSites[0];
  /** Chosen on the page; undefined: as the file has it. */
  @state() private display: Display | undefined;
  @state() private computing = false;
  @state() private outcome: Outcome | undefined;
  @state() private window: readonly [number, number] = [0, 1];
  @state() private moment = 0;

  #engine = new Engine(openLine);

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#ask();
  }

  async #ask(): Promise<void> {
    if (!this.site) return;
    const { text, name } = this.site;
    this.computing = true;
    const outcome = await this.#engine.ask({ text, display: this.display });
    if (outcome === 'superseded') return;
    this.computing = false;
    this.#show(outcome, name);
  }

  #shownSite = '';

  /** A site asked again in other units keeps the minutes that are being looked at. */
  #show(outcome: Outcome, site: string): void {
    this.outcome = outcome;
    if (outcome.kind === 'answered' && site !== this.#shownSite) {
      this.window = [0, outcome.answer.span];
      this.moment = 0;
    }
    this.#shownSite = outcome.kind === 'answered' ? site : '';
  }

  #choose(site: Site): void {
    this.site = site;
    history.replaceState(null, '', `#${encodeURIComponent(site.name)}`);
    void this.#ask();
  }

  async #open(event: Event): Promise<void> {
    const field = event.target as HTMLInputElement;
    const file = field.files?.[0];
    if (!file) return;
    const site = siteOf(file.name, await file.text());
    field.value = '';
    this.sites = [...this.sites.filter(({ name }) => name !== site.name), site];
    this.#choose(site);
  }

  #units(display: Display): void {
    this.display = display;
    void this.#ask();
  }

  #lookAt(t: number): void {
    if (this.outcome?.kind !== 'answered') return;
    this.moment = t;
    this.window = windowRound(t, this.outcome.answer.span);
    this.renderRoot.querySelector<Plots>('tb-plots')?.bringIntoView();
  }

  #header(): TemplateResult {
    const shown = this.outcome?.kind === 'answered' ? this.outcome.scenario.display : this.display;
    const unit = (display: Display, words: string): TemplateResult =>
      html`<button aria-pressed=${shown === display} @click=${() => this.#units(display)}>${words}</button>`;
    const choose = (event: Event): void => {
      const site = this.sites.find(({ name }) => name === (event.target as HTMLSelectElement).value);
      if (site) this.#choose(site);
    };
    return html`<header>
      <h1>tumblebay</h1>
      <label class="choice">site
        <select @change=${choose}>
          ${this.sites.map(
            ({ name, title }) => html`<option value=${name} ?selected=${name === this.site?.name}>${title}</option>`,
          )}
        </select></label>
      <label class="file">open a file<input type="file" accept=".json,application/json" @change=${this.#open} /></label>
      <div class="units" role="group" aria-label="Units">${unit('metric', 'mm, L')}${unit('us', 'in, gal')}</div>
    </header>`;
  }

  #answered(run: Answered): TemplateResult {
    const { scenario, answer, balance } = run;
    const assumed = answer.assumed.length;
    return html`<div class="run" aria-busy=${this.computing}>
      <div class="title">
        <h2 class="site">${answer.title}</h2>
        <details>
          <summary>${formatDuration(answer.span)} simulated; about this site</summary>
          <p>${scenario.notes || 'The file has no notes.'}</p>
        </details>
        ${answer.cautions.map((caution) => html`<p class="caution">${caution}</p>`)}
      </div>
      <tb-answer .check=${answer.checks[0]} .starts=${scenario.starts}></tb-answer>
      <div class="side">
        <tb-checks .checks=${answer.checks} .starts=${scenario.starts}></tb-checks>
        <tb-balance .balance=${balance ?? undefined} .display=${scenario.display}></tb-balance>
        <tb-ledger .ledger=${answer.ledger} .energy=${answer.energy} .display=${scenario.display}></tb-ledger>
        ${assumed > 0 ? assumptions(answer.assumed) : nothing}
      </div>
      <tb-plots .run=${run} .window=${this.window} .moment=${this.moment}
        @window-chosen=${(event: CustomEvent<[number, number]>) => {
          this.window = event.detail;
        }}
        @moment-moved=${(event: CustomEvent<number>) => {
          this.moment = event.detail;
        }}></tb-plots>
    </div>`;
  }

  #status(): string {
    if (!this.site) return 'No site is here to be computed.';
    if (this.computing) return `Computing ${this.site.title} …`;
    return this.outcome?.kind === 'answered' ? `${this.outcome.answer.title} is computed.` : '';
  }

  override render(): TemplateResult {
    const { outcome } = this;
    return html`${this.#header()}
      <main @moment-chosen=${(event: CustomEvent<number>) => this.#lookAt(event.detail)}>
        <p class=${this.computing ? 'note' : 'unseen'} role="status">${this.#status()}</p>
        ${outcome?.kind === 'answered' ? this.#answered(outcome) : outcome ? troubleWords(outcome) : nothing}
      </main>
      <footer>${cautions}</footer>`;
  }
}

/** The site the address names, '#courtyard', so that a reload and a link show the same. */
function siteByAddress(): Site | undefined {
  const asked = decodeURIComponent(location.hash.slice(1));
  return demoSites.find(({ name }) => name === asked);
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
