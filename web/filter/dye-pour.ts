import { html, type TemplateResult } from 'lit';
import type { DyeWatch } from '../../sim/dye/answer.ts';
import type { DyeGiven } from '../engine/filter-asked.ts';
import { Asking } from '../fill/ask.ts';
import type { Session } from '../state/session.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';
import { DyePlayer } from './dye-player.ts';
import { playedAt } from './dye-words.ts';
import './dye.ts';
import type { DyeDeeds } from './dye.ts';

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
    const watch = this.#given?.watch;
    return watch?.poured ? watch : undefined;
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
    this.#of = keyOf(session);
    const { text, display } = session;
    void this.#asking.ask(engine, [{ want: 'dye', text, display, at }], (given) => {
      if (at !== this.#at) return;
      this.#trouble = given.kind === 'fault' ? given.message : '';
      if (given.kind !== 'dye') return;
      this.#given = given;
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

  readonly #deeds: DyeDeeds = {
    pour: () => this.#pour(),
    play: () => this.#play(),
    clear: () => this.clear(),
    to: (t) => {
      this.#player.stop();
      this.#around.stage.moveTo(t);
    },
  };

  /** The dye of a site that was edited is poured anew at its moment, once the hand rests. */
  follow(): void {
    const { session } = this.#around;
    if (this.#at !== undefined && session.isWhole && this.#of !== keyOf(session)) this.#ask(false);
  }

  view({ trial }: Shown): TemplateResult {
    const poured =
      this.#at === undefined ? undefined : { at: this.#at, given: this.#given, playing: this.#player.running };
    return html`<tb-dye .poured=${poured} .deeds=${this.#deeds} .moment=${this.#around.stage.moment}
      .trial=${trial !== undefined} .trouble=${this.#trouble}></tb-dye>`;
  }
}

/** What a dye depends on: the site, and the units it is told in. */
const keyOf = ({ text, display }: Session): string => `${display} ${text}`;
