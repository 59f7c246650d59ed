import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { FILL_CAUTION } from '../../sim/fill/words.ts';
import { momentText } from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { FillDay, FillMore, FillPlanned } from '../engine/fill-asked.ts';
import type { Display, FileEdits, Given } from '../engine/protocol.ts';
import { kept } from '../state/one-line.ts';
import { fileName, save } from '../views/save.ts';
import { shared } from '../views/styles.ts';
import { Asking, type Giving } from './ask.ts';
import { Blanks } from './blanks.ts';
import { dateWords, shutOff } from './calendar.ts';
import { clockText } from './clock.ts';
import { dayView, hoursView } from './day-view.ts';
import { hoseRows, moreEdits } from './edits.ts';
import { hoseView } from './hose-view.ts';
import { PondView } from './pond-view.ts';
import { blankStyles, fillStyles } from './styles.ts';
import { tableView } from './table.ts';
import { type FillSeen, fillAnswer, fillSentences, pumpSentences } from './words.ts';

/** What is put into the site's file, as one step that can be undone. */
export interface SiteEdited {
  readonly edits: FileEdits;
  readonly label: string;
}

/** A moment of a fill, s from its run's start, and the day it is filled on. */
export interface FillMoment {
  readonly t: number;
  readonly day: FillDay;
}

/** What a fill is asked anew for. */
const ASKED = ['text', 'display', 'day', 'engine'] as const;

/** 'When will it be full?': when to shut the hose, the pond with its tide marks, and what decides it. */
@customElement('tb-fill')
export class Fill extends LitElement {
  static override styles = [shared, ...fillStyles, blankStyles];

  @property({ attribute: false }) scenario: Scenario | undefined;
  /** The site's file as it stands, as it was typed, and as text. */
  @property({ attribute: false }) file: unknown;
  @property({ attribute: false }) text = '';
  @property({ attribute: false }) display: Display | undefined;
  @property({ attribute: false }) engine: Giving | undefined;
  /** The day it is filled on, which is no part of the site. */
  @property({ attribute: false }) day: FillDay = {};
  /** The moment drawn elsewhere, where that is of this fill, s. */
  @property({ attribute: false }) moment: number | undefined;
  @state() private planned: FillPlanned | undefined;
  @state() private more: FillMore | undefined;
  /** Why what is shown is older than what was typed. */
  @state() private old = '';

  readonly #blanks = new Blanks(this);
  readonly #asking = new Asking(this);
  readonly #pond = new PondView(this, (t) => this.#tell('fill-moment', { t, day: this.#dayInZone() }));
  readonly #buckets = new Map<number, number>();
  /** The day that is drawn elsewhere. */
  #drawn = '';
  readonly #zone = Intl.DateTimeFormat().resolvedOptions().timeZone;

  protected override willUpdate(changed: PropertyValues): void {
    if (!this.engine || this.text === '') return;
    if (ASKED.some((key) => changed.has(key))) this.#ask(this.engine);
  }

  #dayInZone(): FillDay {
    return { ...this.day, zone: this.#zone };
  }

  #ask(engine: Giving): void {
    const { text, display } = this;
    const common = { want: 'fill', text, display, day: this.#dayInZone() } as const;
    const parts = [
      { ...common, part: 'plan' as const },
      { ...common, part: 'more' as const },
    ];
    void this.#asking.ask(engine, parts, (given) => this.#take(given));
  }

  #take(given: Given): void {
    if (given.kind === 'fill plan') {
      this.planned = given;
      this.more = undefined;
      this.old = '';
      this.#tell('fill-planned', given);
      this.#follow();
    } else if (given.kind === 'fill more') this.more = given;
    else if (given.kind === 'refused')
      this.old = given.problems.map(({ found, wanted }) => `found ${found}; wanted ${wanted}`).join('. ');
    else if (given.kind === 'fault') this.old = given.message;
  }

  /** What is drawn elsewhere of this fill is of the same day. */
  #follow(): void {
    const day = this.#dayInZone();
    const now = JSON.stringify(day);
    if (this.#drawn !== now && this.moment !== undefined) this.#tell('fill-moment', { t: this.moment, day });
    this.#drawn = now;
  }

  #tell(name: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  #put(edits: FileEdits, label: string): void {
    const detail: SiteEdited = { edits, label };
    this.#tell('site-edited', detail);
  }

  readonly #to = (day: FillDay): void => {
    this.day = day;
    this.#tell('fill-day', day);
  };

  #answer(seen: FillSeen): TemplateResult {
    const { lead, clock } = fillAnswer(seen);
    return html`<section class=${this.#asking.busy && !seen.more ? 'pending' : ''} aria-label="The answer">
      ${this.old ? html`<p class="old" role="alert">Older than what is typed: ${this.old}</p>` : nothing}
      <h2 class="lead">${lead} ${
        clock
          ? html`<span class="clock">${clock.figure}<span class="half"> ${clock.half}</span></span> ${
              clock.day ? html`<span class="day">${clock.day}</span>` : nothing
            }`
          : nothing
      }</h2>
      <div class="said">${fillSentences(seen).map((says) => html`<p>${kept(says)}</p>`)}</div>
      ${this.#openThen(seen)}
    </section>`;
  }

  /** Takes the opening that was found for an hour as the one to go by. */
  #openThen({ planned: { plan, opening } }: FillSeen): TemplateResult | typeof nothing {
    const open = opening?.open;
    if (!plan || typeof open !== 'number') return nothing;
    const then = (): void =>
      this.#to({ ...this.day, by: undefined, opened: momentText(plan.starts, open).slice(0, 16) });
    return html`<button @click=${then}>it will be opened then</button>`;
  }

  #presses({ planned: { plan } }: FillSeen, s: Scenario): TemplateResult | typeof nothing {
    if (!plan?.full || plan.full.t === 0) return nothing;
    const file = (): void => {
      const text = shutOff(s, plan, this.#zone, Date.now());
      if (text !== undefined) save(text, 'text/calendar', `${fileName(s.title)}-shut-the-hose.ics`);
    };
    const ownDay =
      this.day.opened === undefined ? ' That day is the site’s own: say first when the hose is opened.' : '';
    return html`<div class="presses">
        <button @click=${() => this.#tell('fill-played', this.#dayInZone())}>let it fill</button>
        <button @click=${file}>ring me: a calendar file</button>
      </div>
      <p class="note told">It rings 10 minutes before, on ${dateWords(momentText(plan.starts, plan.full.t))}, by the clock of ${this.#zone}.${ownDay}</p>`;
  }

  #decides(s: Scenario, planned: FillPlanned, edge: number): TemplateResult {
    const blanks = this.#blanks;
    const day = { s, day: this.day, planned, edge, zone: this.#zone, blanks, to: this.#to } as const;
    const seen = { ...day, mark: (level: string) => this.#put([['pond.fillMark', level]], `fill mark ${level}`) };
    const rows = hoseRows(s, this.file, this.#buckets);
    const deeds = {
      put: (edits: FileEdits, label: string) => this.#put(edits, label),
      bucket: (hose: number, volume: number) => {
        this.#buckets.set(hose, volume);
        this.requestUpdate();
      },
    };
    const add = (what: 'hose' | 'truck') => () => this.#put(moreEdits(s, this.file, what), `one more ${what}`);
    return html`<section aria-label="What decides it">
      <h3>What decides it</h3>
      ${rows.map((row) => hoseView({ row, file: this.file, display: s.display, several: rows.length > 1, blanks }, deeds))}
      ${dayView(seen)}
      ${hoursView(seen)}
      <div class="presses">
        <button @click=${add('hose')}>${rows.length === 0 ? 'give it a hose' : 'one more hose'}</button>
        <button @click=${add('truck')}>a tank truck</button>
      </div>
    </section>`;
  }

  override render(): TemplateResult | typeof nothing {
    const { scenario, planned } = this;
    if (!scenario || !planned) return html`<p class="note">Computing …</p>`;
    const s = this.display ? { ...scenario, display: this.display } : scenario;
    const edge = Math.min(...s.pond.rim.crest.map(([, z]) => z));
    const seen: FillSeen = { planned, more: this.more, display: s.display, zone: this.#zone, edge };
    const then = pumpSentences(seen);
    const { lead, clock } = fillAnswer(seen);
    return html`<div class="sides">
      <div>
        ${this.#answer(seen)}
        <p class="unseen" role="status" aria-live="polite">${this.#asking.busy ? '' : `${lead} ${clock ? clockText(clock) : ''}`}</p>
        ${this.#pond.view(s, seen, this.moment)}
        ${this.#presses(seen, s)}
        ${then.length > 0 ? html`<section aria-label="Then the pump">${then.map((says) => html`<p>${kept(says)}</p>`)}</section>` : nothing}
      </div>
      <div>
        ${this.#decides(s, planned, edge)}
        ${tableView(seen)}
        <p class="note">${FILL_CAUTION}</p>
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-fill': Fill;
  }
}
