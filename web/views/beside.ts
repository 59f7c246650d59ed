import { html, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { OtherValve } from '../engine/protocol.ts';
import { intoPond, runsBack } from '../plots/back.ts';
import type { Other } from '../plots/task.ts';
import { type Case, caseOf, differenceWords, moved } from '../state/case.ts';
import type { Session } from '../state/session.ts';
import type { Shown } from '../state/shown.ts';
import { trueFractions } from '../state/typed-inches.ts';

/** What the stop with another valve is called, at length and where there is little room. */
const VALVES = {
  failed: {
    holds: ['if the check valve fails', 'failed valve'],
    fails: ['if the check valve fails', '× valve fails'],
  },
  sound: {
    holds: ['with a sound check valve', 'sound valve'],
    fails: ['with a sound check valve', '× fails: sound valve'],
  },
} as const;

/** As 'undo' names it. */
const YEAR_STEP = 'a year later';

/** The case drawn dashed beside the present one: the check valve otherwise than it is, or one that was kept. */
export class Beside {
  readonly #changed: () => void;
  readonly #session: Session;
  readonly #engine: Engine;
  #kept: Case | undefined;
  /** What a year has done to the case on the screen, while the one of today is kept. */
  #year: string | undefined;
  #valve: { readonly of: unknown; readonly given: OtherValve } | undefined;
  #made: { readonly from: readonly unknown[]; readonly other: Other | undefined } | undefined;

  constructor(changed: () => void, session: Session, engine: Engine) {
    this.#changed = changed;
    this.#session = session;
    this.#engine = engine;
  }

  /** The case that was kept. */
  get kept(): Case | undefined {
    return this.#kept;
  }

  /** A case of another site is none of this one. */
  clear(): void {
    this.#kept = undefined;
    this.#year = undefined;
    this.#valve = undefined;
  }

  /** Once a site has its answer in full, the stop with its valve otherwise is asked for, too. */
  async answered(): Promise<void> {
    const { shown, text } = this.#session;
    if (shown?.depth !== 'full' || !shown.stops) return;
    const given = await this.#engine.give({ want: 'other valve', text });
    if (given === 'superseded' || given.kind !== 'other valve') return;
    this.#valve = { of: shown, given };
    this.#changed();
  }

  /** Made anew only where it is another. */
  other(record: Shown): Other | undefined {
    const { shown, about } = this.#session;
    const valve = about === 'stop' && this.#valve?.of === shown ? this.#valve?.given : undefined;
    const from = [record, shown, this.#kept, valve];
    const same = this.#made?.from.every((each, i) => each === from[i]);
    if (!same) this.#made = { from, other: this.#make(record, valve) };
    return this.#made?.other;
  }

  #make(record: Shown, valve: OtherValve | undefined): Other | undefined {
    const { shown } = this.#session;
    const stop = record.stopping?.at;
    if (this.#kept) {
      const { series, scenario, stop: keptStop } = this.#kept;
      const by = stop !== undefined && keptStop !== undefined ? stop - keptStop : 0;
      return { name: 'as kept', series: moved(series, by), scenario };
    }
    const aboutStop = record.trial === undefined || record.trial === 'drain-back';
    if (!shown || !valve || stop === undefined || !aboutStop) return undefined;
    const { end } = runsBack(record.series, intoPond(record.series, shown.scenario), stop);
    const [name, short] = VALVES[valve.valve][valve.fails ? 'fails' : 'holds'];
    return { name, short, series: moved(valve.series, stop, end), fails: valve.fails, only: 'levels' };
  }

  /**
   * A press that keeps the present case or lets it go, and in what the two differ.
   *
   * @param more presses about the two
   */
  view(record: Shown, more?: unknown): TemplateResult | undefined {
    const { shown } = this.#session;
    if (!shown) return undefined;
    const turn = (): void => {
      this.#kept = this.#kept ? undefined : caseOf(shown.scenario, record);
      this.#year = undefined;
      this.#changed();
    };
    if (!this.#kept)
      return html`<p class="kept" slot="beside"><button @click=${turn}>keep this case beside</button>
        <button @click=${() => void this.#later(record)}>a year later</button></p>`;
    const now = caseOf(shown.scenario, record);
    return html`<p class="kept" slot="beside">${this.#isLater() ? this.#year : ''} ${differenceWords(now, this.#kept, shown.scenario.display)}
      ${more} <button @click=${turn}>let the case kept go</button></p>`;
  }

  /** The year's step stands, or edits that were made after it. */
  #isLater(): boolean {
    const { doc } = this.#session;
    return doc !== undefined && [doc.now, ...doc.past].some(({ label }) => label === YEAR_STEP);
  }

  /** Today's case is kept, and what a year does to it is put into the site as one step. */
  async #later(record: Shown): Promise<void> {
    const { shown, doc } = this.#session;
    if (!shown || !doc) return;
    const { yearLater } = await import('../../sim/studies/yearLater.ts');
    // Another edit meanwhile makes it another case.
    if (this.#session.doc !== doc) return;
    const { edits, done, left } = yearLater(doc.now.file, shown.scenario.display);
    if (edits.length === 0) return;
    this.#kept = caseOf(shown.scenario, record);
    const stays = left.length > 0 ? ` There is no room for ${left.join(' or ')}.` : '';
    this.#year = trueFractions(`A year later (our default): ${done.join(', ')}.${stays}`);
    this.#session.put(edits, YEAR_STEP);
    this.#changed();
  }
}
