import { html, type TemplateResult } from 'lit';
import type { DyeWatch } from '../../sim/dye/answer.ts';
import type { DyeGiven, DyeIn } from '../engine/filter-asked.ts';
import { Asking } from '../fill/ask.ts';
import type { Case } from '../state/case.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';
import { DyePlayer } from './dye-player.ts';
import { playedAt } from './dye-words.ts';
import './dye.ts';
import type { DyeDeeds, DyeShown } from './dye.ts';
import { keptLater } from './kept-time.ts';

/** Minutes before the pour that the plots show, as a part of the dye's time. */
const BEFORE = 0.08;

/** Dye poured under the rack at a moment of the run: asked for, played, and poured anew where the site is edited. */
export class DyePour {
  readonly #around: Around;
  readonly #asking: Asking;
  readonly #player: DyePlayer;
  #at: number | undefined;
  #given: DyeGiven | undefined;
  #of = '';
  /** The case kept, by how much later its run is read, s, and the ones whose dye is asked for and at hand. */
  #kept: Case | undefined;
  #later = 0;
  #askedOf: Case | undefined;
  #givenOf: Case | undefined;
  #trouble = '';

  constructor(around: Around) {
    this.#around = around;
    const { host, stage } = around;
    this.#asking = new Asking(host);
    this.#player = new DyePlayer({
      moment: () => stage.moment,
      to: (t) => stage.moveTo(t),
      changed: () => host.requestUpdate(),
    });
  }

  /** The dye on its way; undefined where none is. */
  get watch(): DyeWatch | undefined {
    return watchOf(this.#given);
  }

  /** The dye on its way in the case kept. */
  get keptWatch(): DyeWatch | undefined {
    return this.#givenOf === this.#kept ? watchOf(this.#given?.kept) : undefined;
  }

  clear(): void {
    this.#player.stop();
    this.#at = undefined;
    this.#given = undefined;
    this.#around.host.requestUpdate();
  }

  #pour(): void {
    this.#player.stop();
    this.#at = this.#around.stage.moment;
    this.#given = undefined;
    this.#ask(true);
    this.#around.host.requestUpdate();
  }

  #ask(play: boolean): void {
    const { session, engine, stage } = this.#around;
    const at = this.#at;
    if (at === undefined) return;
    this.#of = this.#key();
    const { text, display } = session;
    const of = this.#kept;
    this.#askedOf = of;
    const kept = of && { scenario: of.scenario, at: at + this.#later };
    void this.#asking.ask(engine, [{ want: 'dye', text, display, at, kept }], (given) => {
      if (at !== this.#at) return;
      this.#trouble = given.kind === 'fault' ? given.message : '';
      if (given.kind !== 'dye') return;
      this.#given = given;
      this.#givenOf = of;
      const { watch } = given;
      if (!watch.poured || !play) return;
      const lasts = watch.t[watch.t.length - 1] - at;
      stage.choose([Math.max(0, at - BEFORE * lasts), at + lasts]);
      this.#play();
    });
  }

  #play(): void {
    const { watch } = this;
    if (!watch) return;
    if (this.#player.running) {
      this.#player.stop();
      return;
    }
    const end = watch.t[watch.t.length - 1];
    const now = this.#around.stage.moment;
    this.#player.play(now >= watch.at && now < end - 1 ? now : watch.at, end, playedAt(end - watch.at));
  }

  readonly deeds: DyeDeeds = {
    pour: () => this.#pour(),
    play: () => this.#play(),
    clear: () => this.clear(),
    to: (t) => {
      this.#player.stop();
      this.#around.stage.moveTo(t);
    },
  };

  /**
   * The dye of a site that was edited is poured anew at its moment, once the hand rests; so it is where another case is
   * kept. A trial that was kept has no run of its own to pour into.
   */
  follow(record: Shown, kept: Case | undefined): void {
    this.#kept = kept?.lost === undefined ? undefined : kept;
    this.#later = this.#kept ? keptLater(record, this.#kept) : 0;
    if (this.#at === undefined || !this.#around.session.isWhole) return;
    if (this.#of !== this.#key() || this.#askedOf !== this.#kept) this.#ask(false);
  }

  /** What a dye depends on: the site, the units it is told in, and when it is poured in the case kept. */
  #key(): string {
    const { text, display } = this.#around.session;
    return `${display} ${this.#later} ${text}`;
  }

  /** What has been poured, as far as it is known, and what can be done. */
  get shown(): DyeShown {
    const { deeds } = this;
    if (this.#at === undefined) return { deeds, poured: undefined, trouble: '' };
    const given = this.#given && (this.#givenOf === this.#kept ? this.#given : { ...this.#given, kept: undefined });
    return { deeds, poured: { at: this.#at, given, playing: this.#player.running }, trouble: this.#trouble };
  }

  view({ trial }: Shown): TemplateResult {
    const { deeds, poured, trouble } = this.shown;
    return html`<tb-dye .poured=${poured} .deeds=${deeds} .moment=${this.#around.stage.moment}
      .trial=${trial !== undefined} .trouble=${trouble}></tb-dye>`;
  }
}

const watchOf = (dye: DyeIn | null | undefined): DyeWatch | undefined => (dye?.watch.poured ? dye.watch : undefined);
