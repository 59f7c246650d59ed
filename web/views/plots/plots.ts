import { html, LitElement, nothing, type PropertyValues, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import type { RunAnswer, Series } from '../../../sim/results/answer.ts';
import type { Scenario } from '../../../sim/scenario/scenario.ts';
import type { Giving } from '../../fill/ask.ts';
import { headMarks, playheadAt, poleMarks } from '../../plots/flag-marks.ts';
import { minutesRound, type SeatedFlag } from '../../plots/flags.ts';
import { keyMoved, type Speed } from '../../plots/pass.ts';
import type { Reading } from '../../plots/readings.ts';
import { type Choice, type Other, USUAL } from '../../plots/task.ts';
import type { Window } from '../../plots/time-axis.ts';
import { shared } from '../styles.ts';
import { Width } from '../width.ts';
import { type ControlDeeds, type Controlled, controlsView, linesView, windowView, windowWords } from './controls.ts';
import { BarHand, PlotHand } from './hand.ts';
import { Plotted } from './model.ts';
import { Runner } from './runner.ts';
import { boxStyle, clipElement, flagsView, isAt, markElement } from './sheet.ts';
import { plotsStyles } from './styles.ts';
import { tableView } from './table.ts';

/** After the playhead has stood for so long its moment is told to those who listen, ms. */
const REST = 700;

/**
 * Levels and flows on one time axis, with one playhead through both.
 *
 * @fires moment-moved the playhead was moved; detail: seconds from the start of the run
 * @fires window-chosen minutes were opened; detail: [from, to] in seconds
 */
@customElement('tb-plots')
export class Plots extends LitElement {
  static override styles = [shared, plotsStyles];

  @property({ attribute: false }) scenario: Scenario | undefined;
  @property({ attribute: false }) answer: RunAnswer | undefined;
  @property({ attribute: false }) series: Series | undefined;
  /** Another case, drawn dashed. */
  @property({ attribute: false }) other: Other | undefined;
  /** Name of the check whose trial it is; '' for the run. */
  @property() trial = '';
  /** The drawing beside the plots, as the text of an SVG file. */
  @property({ attribute: false }) drawing: (() => string) | undefined;
  /** Asked for what is saved and not drawn. */
  @property({ attribute: false }) engine: Giving | undefined;
  @property({ attribute: false }) window: Window = [0, 1];
  @property({ type: Number }) moment = 0;
  @state() private choice: Choice = USUAL;
  @state() private speed: Speed = 'evenly';
  @state() private brush: readonly [number, number] | undefined;
  /** What is unfolded below the plots: the rest is not even made. */
  @state() private unfolded: ReadonlySet<string> = new Set();
  @state() private told = '';
  /** What saves files; fetched when something is to be saved. */
  @state() private saving: typeof import('./save.ts') | undefined;

  #plotted: Plotted | undefined;
  #sent = Number.NaN;
  #rest: ReturnType<typeof setTimeout> | undefined;

  readonly #width = new Width(this);
  readonly #runner = new Runner(this, () => ({
    axis: this.#plotted?.sheet.axis,
    moment: this.moment,
    speed: this.speed,
    move: (t) => this.#send(t),
  }));
  readonly #handDeeds = {
    held: () => this.#plotted?.sheet,
    move: (t: number) => this.#move(t),
    open: (window: Window) => this.#open(window),
    brushing: (stretch: readonly [number, number] | undefined) => {
      this.brush = stretch;
    },
  };
  readonly #hand = new PlotHand(this.#handDeeds);
  readonly #barHand = new BarHand(this.#handDeeds);
  readonly #deeds: ControlDeeds = {
    run: () => (this.#runner.running ? this.#runner.stop() : this.#runner.start()),
    minuteOn: () => this.#move(Math.min(this.answer?.span ?? 0, this.moment + 60)),
    open: (window) => this.#open(window),
    pace: (speed) => {
      this.speed = speed;
    },
    choose: (choice) => {
      this.choice = choice;
    },
  };

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#rest);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('moment')) this.#momentChanged();
    const { scenario, answer, series, other, window, choice } = this;
    const width = this.#width.px;
    if (!scenario || !answer || !series || width < 240) return;
    const given = { scenario, answer, series, other, window, width, choice };
    const was = this.#plotted?.given;
    const same = was && (Object.keys(given) as (keyof typeof given)[]).every((key) => was[key] === given[key]);
    if (!same) this.#plotted = new Plotted(given, this.#plotted);
  }

  /** A moment that came from elsewhere takes the playhead out of the runner's hands. */
  #momentChanged(): void {
    if (this.moment !== this.#sent) this.#runner.stop();
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => {
      this.told = this.#plotted?.says(this.moment) ?? '';
    }, REST);
  }

  #send(t: number): void {
    this.#sent = t;
    this.dispatchEvent(new CustomEvent('moment-moved', { detail: t, bubbles: true, composed: true }));
  }

  #move(t: number): void {
    this.#runner.stop();
    this.#send(t);
  }

  #open([from, to]: Window): void {
    this.dispatchEvent(new CustomEvent('window-chosen', { detail: [from, to], bubbles: true, composed: true }));
  }

  /** An event opens its own minutes; high and low water only where they are not open yet. */
  #pressed({ t, own }: Pick<SeatedFlag, 't' | 'own'>): void {
    const [from, to] = this.window;
    if (own || t < from || t > to) this.#open(minutesRound(t, this.answer?.span ?? t));
    this.#move(t);
  }

  readonly #key = (event: KeyboardEvent): void => {
    const t = keyMoved(event.key, event, this.moment, this.answer?.span ?? 0);
    if (t === undefined) return;
    event.preventDefault();
    this.#move(t);
  };

  #sheet(plotted: Plotted): TemplateResult {
    const { sheet, flags, height } = plotted;
    const { place, axis } = sheet;
    const width = this.#width.px;
    const [level, flow] = plotted.subjects;
    const head = playheadAt(sheet, level, flow, this.moment);
    const across = place.right - place.left;
    const plots = [place.levels.top - 8, place.flows.bottom - place.levels.top + 12] as const;
    return html`<div class="sheet">
      ${guard([plotted, flags.find((flag) => isAt(flag, this.moment))], () =>
        flagsView(flags, place.flagLines, this.moment, (flag) => this.#pressed(flag)),
      )}
      <svg width=${width} height=${height} viewBox="0 ${-place.rail} ${width} ${height}" aria-hidden="true">
        ${guard(
          [plotted],
          () => svg`<defs>${sheet.clips.map(clipElement)}</defs>
          ${[...poleMarks(flags, sheet), ...sheet.marks].map(markElement)}`,
        )}
        ${this.#brushed(place.left, place.bar)}
        <g transform="translate(${head.x} 0)">${guard([plotted], () => headMarks(sheet).map(markElement))}
          ${head.rings.map((y) => svg`<circle class="ring" cx="0" cy=${y} r="3.4"></circle>`)}</g>
      </svg>
      <div class="hand" role="slider" tabindex="0" aria-label="moment" aria-valuemin="0" aria-valuemax=${axis.span}
        aria-valuenow=${Math.round(this.moment)} aria-valuetext=${plotted.says(this.moment)}
        .style=${boxStyle(place, place.left, plots[0], across, plots[1])} @keydown=${this.#key}
        @pointerdown=${this.#hand.down} @pointermove=${this.#hand.moved} @pointerup=${this.#hand.up}
        @pointercancel=${this.#hand.up} @wheel=${{ handleEvent: this.#hand.wheel, passive: false }}></div>
      <div class="brush" .style=${boxStyle(place, place.left, place.bar - 22, across, 44)}
        @pointerdown=${this.#barHand.down} @pointermove=${this.#barHand.moved} @pointerup=${this.#barHand.up}
        @pointercancel=${this.#barHand.up}></div>
    </div>`;
  }

  #brushed(left: number, bar: number) {
    if (!this.brush) return nothing;
    const [from, to] = [Math.min(...this.brush), Math.max(...this.brush)];
    return svg`<rect class="sliver" x=${left + from} y=${bar - 5} width=${Math.max(1, to - from)} height="10"></rect>`;
  }

  #readings(plotted: Plotted): TemplateResult {
    const { levels, flows } = plotted.readings(this.moment);
    const reading = ({ name, says, subject }: Reading): TemplateResult =>
      html`; <span class=${subject ? 'subject' : ''}><i>${name}</i> ${says}</span>`;
    return html`<p class="readings"><b>${plotted.momentWords(this.moment)}</b>${[...levels, ...flows].map(reading)}</p>
      <p class="unseen" role="status">${this.told}</p>
      ${plotted.notes.map((note) => html`<p class="note">${note}</p>`)}`;
  }

  #fold(name: string, summary: string, content: () => unknown): TemplateResult {
    const turn = (open: boolean): void => {
      if (open && name === 'save') void this.#loadSaving();
      const unfolded = new Set(this.unfolded);
      if (open) unfolded.add(name);
      else unfolded.delete(name);
      this.unfolded = unfolded;
    };
    // Made at the press already, so that the next key finds it there.
    return html`<details @toggle=${(event: Event) => turn((event.target as HTMLDetailsElement).open)}>
      <summary @click=${() => turn(true)}>${summary}</summary>${this.unfolded.has(name) ? content() : nothing}</details>`;
  }

  async #loadSaving(): Promise<void> {
    this.saving ??= await import('./save.ts');
  }

  #more(plotted: Plotted, now: Controlled): TemplateResult {
    const { moment, trial, drawing, engine } = this;
    const { levels, flows, still } = plotted.columns;
    const table = (): TemplateResult =>
      tableView(plotted.lines, plotted.rows(), (t) => this.#pressed({ t, own: true }));
    return html`<div class="more">
      ${this.#fold('minutes', windowWords(now.window, now.span), () => windowView(now, moment, this.#deeds))}
      ${this.#fold('lines', 'which lines', () => linesView(levels, flows, still, now.choice, this.#deeds))}
      ${this.#fold('table', 'the same numbers as a table', () => guard([plotted], table))}
      ${this.#fold('save', 'save', () => this.saving?.saveView({ plotted, moment, trial, drawing, engine, host: this }))}
    </div>`;
  }

  override render(): TemplateResult | typeof nothing {
    const plotted = this.#plotted;
    if (!plotted) return html`<div class="sheet"></div>`;
    const { span, starts } = plotted.task;
    const { speed, moment, window, choice } = this;
    const [running, over] = [this.#runner.running, moment >= span];
    const now: Controlled = { running, speed, over, window, span, starts, choice };
    const controls = guard([running, over, speed, window, choice], () => controlsView(now, this.#deeds));
    return html`<section aria-label="Levels and flows">${controls} ${this.#sheet(plotted)}
      ${this.#readings(plotted)} <slot name="beside"></slot> ${this.#more(plotted, now)}</section>`;
  }
}
