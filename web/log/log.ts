import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { LogProblem, Measured } from '../../sim/log/index.ts';
import { parseMoment } from '../../sim/quantity/index.ts';
import type { LeakGiven } from '../engine/log-asked.ts';
import type { Display, Given } from '../engine/protocol.ts';
import { Asking, type Giving } from '../fill/ask.ts';
import { keepLog, logKey, logOf } from '../keep/logs.ts';
import { trueFractions } from '../state/typed-inches.ts';
import { shared } from '../views/styles.ts';
import { Width } from '../views/width.ts';
import { helpView } from './help.ts';
import { logMarks } from './marks.ts';
import { logPlot } from './plot-view.ts';
import { logStyles } from './styles.ts';

/** The hand has rested for this long, ms. */
const REST = 350;
/** No log is longer, bytes. */
const LONGEST = 500_000;

const LEFT: Readonly<Record<LogProblem['left'], string>> = {
  line: 'The line is left out.',
  part: 'The rest of the line counts.',
  all: '',
};

/** The text has an undo of its own, which is not the site's. */
const ownUndo = (event: KeyboardEvent): void => {
  if (event.key.toLowerCase() === 'z') event.stopPropagation();
};

/** Whether the pond leaks: a log of its levels pasted, typed or opened, and what follows from it. */
@customElement('tb-log')
export class LogPanel extends LitElement {
  static override styles = [shared, logStyles];

  @property({ attribute: false }) text = '';
  /** Of the site: another name is another site. */
  @property({ attribute: false }) name = '';
  @property({ attribute: false }) display: Display | undefined;
  @property({ attribute: false }) engine: Giving | undefined;
  @state() private log = '';
  @state() private measured: Measured | undefined;
  @state() private given: LeakGiven | undefined;
  @state() private failed = '';
  /** What is to be told of the keeping, or of a file. */
  @state() private news = '';

  readonly #asking = new Asking(this);
  readonly #width = new Width(this);
  #rest: ReturnType<typeof setTimeout> | undefined;
  #key = '';

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#keep();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('name')) this.#open();
    // A demo that is edited becomes a site of its own: its log goes with it.
    else if (this.#key !== logKey(location.hash)) this.#keep();
    if (changed.has('name') || changed.has('text') || changed.has('display')) this.#ask();
  }

  #open(): void {
    const found = logOf(() => localStorage, location.hash);
    this.#key = logKey(location.hash);
    this.log = found?.log.text ?? '';
    this.measured = found?.log.measured;
    this.given = undefined;
    this.news =
      found?.kind === 'damaged'
        ? 'The log that was kept here is damaged. What is left of it stands below as it was found.'
        : '';
  }

  #keep(): void {
    this.#key = logKey(location.hash);
    if (this.log === '' && logOf(() => localStorage, location.hash) === undefined) return;
    const { log: text, measured } = this;
    const done = keepLog(() => localStorage, location.hash, { text, measured });
    if (!done)
      this.news = 'This browser keeps no more: the log will be gone after a reload. Save it with ‘save the log’.';
    else if (this.news.startsWith('This browser')) this.news = '';
  }

  #type(text: string): void {
    this.log = text;
    this.#keep();
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.#ask(), REST);
  }

  #measure(measured: Measured): void {
    this.measured = measured;
    this.#keep();
    this.#ask();
  }

  #ask(): void {
    clearTimeout(this.#rest);
    const { engine, text, display, log, measured } = this;
    if (!engine || log.trim() === '') {
      this.given = undefined;
      this.failed = '';
      return;
    }
    void this.#asking.ask(engine, [{ want: 'leak', text, display, log, measured }], (given) => this.#take(given));
  }

  #take(given: Given): void {
    this.failed = given.kind === 'fault' ? given.message : '';
    if (given.kind === 'refused') this.failed = 'The site has problems: once they are mended, its log is read.';
    if (given.kind === 'leak') this.given = given;
  }

  async #openFile(file: File | undefined): Promise<void> {
    if (!file) return;
    if (file.size > LONGEST) {
      this.news = `‘${file.name}’ is longer than any log. Nothing was opened.`;
      return;
    }
    try {
      const text = await file.text();
      this.news = '';
      this.#type(text.replace(/\r\n?/g, '\n'));
    } catch {
      this.news = `‘${file.name}’ could not be read: it may have been moved or be in use. Nothing was opened.`;
    }
  }

  readonly #dropped = (event: DragEvent): void => {
    event.preventDefault();
    event.stopPropagation();
    void this.#openFile(event.dataTransfer?.files[0]);
  };

  async #save(): Promise<void> {
    const { save } = await import('../views/save.ts');
    save(this.log, 'text/plain', 'pond-log.txt');
  }

  /** The line of a problem, marked in the text. */
  #show(line: number): void {
    const field = this.renderRoot.querySelector('textarea');
    if (!field) return;
    const lines = this.log.split('\n');
    const from = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
    field.focus();
    field.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0));
  }

  #lineSays(line: number, says: string): TemplateResult {
    return html`<li>${
      line > 0 ? html`<button @click=${() => this.#show(line)}>line ${line}</button> ` : nothing
    }${trueFractions(says)}</li>`;
  }

  #told(): TemplateResult | typeof nothing {
    const { problems = [], said } = this.given ?? {};
    const beside = said?.beside ?? [];
    if (problems.length + beside.length === 0) return nothing;
    return html`<section class="told" role="status" aria-label="What is wrong in the log"><ul>
      ${problems.map(({ line, found, wanted, left }) => this.#lineSays(line, `found ${found}; wanted ${wanted}. ${LEFT[left]}`))}
      ${beside.map(({ line, says }) => this.#lineSays(line, says))}
    </ul></section>`;
  }

  #answer(): TemplateResult | typeof nothing {
    if (this.failed) return html`<p class="wrong" role="alert">${this.failed}</p>`;
    const said = this.given?.said;
    if (!said) return this.#asking.busy ? html`<p class="note">Computing …</p>` : nothing;
    const { lead, rest, plot, starts } = said;
    const at = starts === undefined ? undefined : parseMoment(starts);
    const marks = logMarks(
      plot,
      Math.max(240, this.#width.px),
      this.display ?? 'metric',
      at === undefined ? at : 1000 * at,
    );
    return html`<section aria-label="What the log says" aria-live="polite" class=${this.#asking.busy ? 'pending' : ''}>
      <p class="large">${trueFractions(lead)}</p>
      ${rest.map((each) => html`<p>${trueFractions(each)}</p>`)}
      ${logPlot(marks, `${plot.dots.length} levels, the fall that fits them, and the fall by evaporation alone`)}
      <p class="note">Dots: levels as read. Line: the fall that fits them. Dashed: evaporation and splash alone.</p>
    </section>`;
  }

  #measures(): TemplateResult {
    const press = (to: Measured, words: string): TemplateResult =>
      html`<button aria-pressed=${(this.measured ?? 'down') === to} @click=${() => this.#measure(to)}>${words}</button>`;
    return html`<div class="presses" role="group" aria-label="How the level is measured">
      ${press('down', 'down from the edge')} ${press('up', 'on a ruler in the water')}
    </div>`;
  }

  override render(): TemplateResult {
    const pick = (): void => this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
    return html`<div @dragover=${(event: DragEvent) => event.preventDefault()} @drop=${this.#dropped}>
      <label for="log">The pond’s level, a line for each reading</label>
      <textarea id="log" spellcheck="false" autocomplete="off" autocapitalize="off" rows="7" .value=${live(this.log)}
        @keydown=${ownUndo} @input=${(event: Event) => this.#type((event.target as HTMLTextAreaElement).value)}></textarea>
      ${this.#measures()}
      <div class="presses">
        <button @click=${pick}>open a log</button>
        ${this.log === '' ? nothing : html`<button @click=${() => void this.#save()}>save the log</button>`}
        <input type="file" accept=".txt,.csv,.tsv,text/plain,text/csv" aria-label="a log" tabindex="-1"
          @change=${({ target }: Event) => {
            const field = target as HTMLInputElement;
            void this.#openFile(field.files?.[0]);
            field.value = '';
          }} />
      </div>
      ${this.news ? html`<p class="wrong" role="status">${this.news}</p>` : nothing}
      ${this.#told()} ${this.#answer()} ${helpView(this.display ?? 'metric')}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-log': LogPanel;
  }
}
