import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { FillPlan } from '../../sim/fill/plan.ts';
import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Stops } from '../../sim/studies/quick.ts';
import '../section/section.ts';
import type { Moment } from '../state/moment.ts';
import { shared } from '../views/styles.ts';
import { type Benchmark, EDGE, edgeBenchmark, edgeOf, type SheetFacts } from './block.ts';
import { blockView } from './block-view.ts';
import { settingOut } from './blocks.ts';
import { ownersCard } from './card.ts';
import { fitOnPage } from './fit.ts';
import { answerFrom, balanceFrom, scenarioFrom } from './from-benchmark.ts';
import { inkOnPaper } from './ink-on-paper.ts';
import { OverPage, overStyles } from './over-page.ts';
import { type Paper, printOn, usualPaper } from './paper.ts';
import { sheetStyles } from './styles.ts';
import { typedLength } from './typed-mark.ts';

type Kind = 'sheet' | 'card';

const TITLES: Readonly<Record<Kind, string>> = { sheet: 'Setting-out sheet', card: 'Owner’s card' };
/** px a drawing is laid out on before it is made as wide as the paper. */
const LAID = 984;

/** The setting-out sheet and the owner's card as they will be printed, over the page. */
@customElement('tb-sheet')
export class SettingOutSheet extends OverPage {
  static override styles = [shared, inkOnPaper, sheetStyles, overStyles];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) answer: RunAnswer | undefined;
  @property({ attribute: false }) balance: BalanceAnswer | null | undefined;
  @property({ attribute: false }) stops: Stops | null | undefined;
  @property({ attribute: false }) fill: FillPlan | null | undefined;
  /** The file behind the scenario. */
  @property({ attribute: false }) file: unknown;
  /** Of the print, as words. */
  @property() date = '';

  @state() private kind: Kind = 'sheet';
  @state() private paper: Paper | undefined;
  @state() private typed = { name: '', over: '', reading: '' };
  @state() private fits = true;

  override connectedCallback(): void {
    super.connectedCallback();
    // Lines break otherwise once the letters have come.
    void document.fonts.ready.then(() => this.requestUpdate());
  }

  #paperFor({ display }: Scenario): Paper {
    return this.paper ?? usualPaper(display);
  }

  protected override updated(): void {
    if (!this.scenario) return;
    printOn(this.#paperFor(this.scenario));
    void this.#fit();
  }

  /** The drawing sets itself a moment later than the words. */
  async #fit(): Promise<void> {
    await this.renderRoot.querySelector('tb-section')?.updateComplete;
    const article = this.renderRoot.querySelector('article');
    if (article) this.fits = fitOnPage(article);
  }

  #benchmark(s: Scenario): Benchmark {
    const own = edgeBenchmark(s);
    const { name, over, reading } = this.typed;
    const [above, rod] = [over, reading].map((text) => typedLength(text, s.display));
    return {
      name: name.trim() || (over.trim() ? 'the crew’s mark' : own.name),
      elevation: edgeOf(s) + ('value' in above ? (above.value ?? 0) : 0),
      reading: 'value' in rod ? rod.value : undefined,
    };
  }

  /** The running site, or as it stood at the start where it has no balance. */
  #drawing(site: Scenario, { elevation }: Benchmark): TemplateResult {
    const s = scenarioFrom(site, elevation);
    const answer = answerFrom(this.answer, elevation);
    const balance = balanceFrom(this.balance, elevation);
    const level = s.pond.fillMark ?? edgeOf(s);
    const first = (ranges: RunAnswer['levels'] | undefined): Record<string, number> =>
      Object.fromEntries(Object.entries(ranges ?? {}).map(([name, { start }]) => [name, start]));
    const moment: Moment = {
      t: 0,
      levels: { pond: level, vault: level, ...first(answer?.levels), ...balance?.levels },
      flows: { ...first(answer?.flows), ...balance?.flows },
    };
    return html`<figure inert aria-hidden="true">
      <tb-section .scenario=${s} .answer=${answer} .balance=${balance} .moment=${moment} .width=${LAID}></tb-section>
    </figure>`;
  }

  #article(s: Scenario): TemplateResult {
    const { answer, balance, stops, fill, file, kind } = this;
    const benchmark = this.#benchmark(s);
    const facts: SheetFacts = { scenario: s, answer, balance, stops, fill, file, benchmark };
    const blocks = kind === 'sheet' ? settingOut(facts) : ownersCard(facts);
    const units = s.display === 'us' ? 'inches, feet, US gallons' : 'millimeters, meters, liters';
    return html`<article class=${kind} aria-label=${TITLES[kind]}>
      <header>
        <h2>${s.title}: ${TITLES[kind].toLowerCase()}</h2>
        <p>${this.date}${this.date ? '; ' : ''}in ${units}. Local codes and licensed practice come first; a simulation is no survey.</p>
      </header>
      ${kind === 'sheet' ? this.#drawing(s, benchmark) : nothing}
      <div class="words">${blocks.map(blockView)}</div>
    </article>`;
  }

  #field(key: 'name' | 'over' | 'reading', label: string, hint: string, s: Scenario): TemplateResult {
    const text = this.typed[key];
    const read = key === 'name' ? undefined : typedLength(text, s.display);
    const wrong = read && 'wrong' in read ? read.wrong : '';
    return html`<label class=${key}>${label}
      <input .value=${text} placeholder=${hint} aria-invalid=${wrong !== ''} aria-describedby="wrong-${key}"
        @input=${(event: Event) => {
          this.typed = { ...this.typed, [key]: (event.target as HTMLInputElement).value };
        }} /><span id="wrong-${key}" role="status">${wrong}</span></label>`;
  }

  #presses(s: Scenario): TemplateResult {
    const paper = this.#paperFor(s);
    const choose = <T extends string>(each: T, now: T, set: (to: T) => void, words: string = each): TemplateResult =>
      html`<button aria-pressed=${each === now} @click=${() => set(each)}>${words}</button>`;
    const kinds: Kind[] = ['sheet', 'card'];
    const papers: Paper[] = ['A4', 'Letter'];
    return html`<div role="group" aria-label="What is printed">${kinds.map((each) =>
      choose(
        each,
        this.kind,
        (to) => {
          this.kind = to;
        },
        TITLES[each].toLowerCase(),
      ),
    )}</div>
      <div role="group" aria-label="Paper">${papers.map((each) =>
        choose(each, paper, (to) => {
          this.paper = to;
        }),
      )}</div>
      <div class="marks">
        ${this.#field('name', 'benchmark', EDGE, s)}
        ${this.#field('over', 'its height over the edge', s.display === 'us' ? '0 in' : '0 mm', s)}
        ${this.#field('reading', 'the rod reads on it', s.display === 'us' ? '4 ft 3 1/2 in' : '1.30 m', s)}
      </div>
      <p class="note" role="status">${this.fits ? '' : 'More stands on this sheet than one page holds: it goes on over a second.'}</p>`;
  }

  override render(): TemplateResult | typeof nothing {
    const s = this.scenario;
    if (!s) return nothing;
    const preview = html`<div class="room" role="region" tabindex="0" aria-label="Preview">${this.#article(s)}</div>`;
    return this.dialog('Setting-out sheet and owner’s card', this.#presses(s), preview);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-sheet': SettingOutSheet;
  }
}
