import { html, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { Answered, DepositsGiven, DyeGiven } from '../engine/protocol.ts';
import { Asking } from '../fill/ask.ts';
import { columnsAt, momentAt } from '../state/moment.ts';
import type { Session } from '../state/session.ts';
import type { Shown } from '../state/shown.ts';
import type { Stage } from '../views/stage.ts';
import { porositiesOf } from './deposit.ts';
import { DyePlayer } from './dye-player.ts';
import { playedAt } from './dye-words.ts';
import './filter.ts';
import type { FilterDeeds } from './filter.ts';
import { FilterInside } from './inside.ts';

/** Minutes before the pour that the plots show, as a part of the dye's time. */
const BEFORE = 0.08;

/** What the room of the filter needs of the page. */
export interface Around {
  readonly host: ReactiveControllerHost;
  readonly session: Session;
  readonly engine: Engine;
  readonly stage: Stage;
}

/** The inside of the filter while its question is asked: what runs in the drawing, the words beside it, and the dye. */
export class FilterRoom {
  readonly inside = new FilterInside();
  readonly #around: Around;
  readonly #asking: Asking;
  readonly #settling: Asking;
  readonly #player: DyePlayer;
  #at: number | undefined;
  #given: DyeGiven | undefined;
  #of: unknown;
  /** Deposits over the run, and the text they are of. */
  #settled: { readonly of: string; given: DepositsGiven | undefined } | undefined;

  constructor(around: Around) {
    this.#around = around;
    const { host, stage } = around;
    this.#asking = new Asking(host);
    this.#settling = new Asking(host);
    this.#player = new DyePlayer({
      moment: () => stage.moment,
      to: (t) => stage.moveTo(t),
      changed: () => host.requestUpdate(),
    });
  }

  /** Another site is to come. */
  clear(): void {
    this.#player.stop();
    this.#at = undefined;
    this.#given = undefined;
    this.inside.watch = undefined;
    this.#around.host.requestUpdate();
  }

  #pour(): void {
    this.#player.stop();
    this.#at = this.#around.stage.moment;
    this.#given = undefined;
    this.inside.watch = undefined;
    this.#ask(true);
    this.#around.host.requestUpdate();
  }

  #ask(play: boolean): void {
    const { session, engine, stage } = this.#around;
    const at = this.#at;
    if (at === undefined) return;
    this.#of = session.text;
    const { text, display } = session;
    void this.#asking.ask(engine, [{ want: 'dye', text, display, at }], (given) => {
      if (given.kind !== 'dye' || at !== this.#at) return;
      this.#given = given;
      const { watch } = given;
      this.inside.watch = watch.poured ? watch : undefined;
      if (!watch.poured || !play) return;
      const lasts = watch.t[watch.t.length - 1] - at;
      stage.choose([Math.max(0, at - BEFORE * lasts), at + lasts]);
      this.#play();
    });
  }

  #play(): void {
    const watch = this.inside.watch;
    if (!watch) return;
    if (this.#player.running) {
      this.#player.stop();
      return;
    }
    const end = watch.t[watch.t.length - 1];
    const now = this.#around.stage.moment;
    this.#player.play(now >= watch.at && now < end - 1 ? now : watch.at, end, playedAt(end - watch.at));
  }

  readonly #deeds: FilterDeeds = {
    pour: () => this.#pour(),
    play: () => this.#play(),
    clear: () => this.clear(),
    stand: (stands) => {
      this.inside.marks.stand(stands);
      this.#around.host.requestUpdate();
    },
    to: (t) => {
      this.#player.stop();
      this.#around.stage.moveTo(t);
    },
  };

  /** What has settled by the moment drawn; asked for only where anything settles at all. */
  #depositsAt({ answer, trial }: Shown): Readonly<Record<string, number>> {
    const { session, engine, stage } = this.#around;
    if (trial !== undefined || !Object.values(answer.deposits).some((held) => held > 0)) return {};
    if (session.isWhole && this.#settled?.of !== session.text) {
      const asked = { of: session.text, given: this.#settled?.given };
      this.#settled = asked;
      void this.#settling.ask(engine, [{ want: 'deposits', text: asked.of }], (given) => {
        if (given.kind === 'deposits') asked.given = given;
      });
    }
    const given = this.#settled?.given;
    return given ? columnsAt(given.layers, given.t, stage.moment) : {};
  }

  view({ scenario }: Answered, record: Shown): TemplateResult {
    const { session, stage } = this.#around;
    // The dye of a site that was edited is poured anew at its moment, once the hand rests.
    if (this.#at !== undefined && session.isWhole && this.#of !== session.text) this.#ask(false);
    const media = scenario.filter?.media;
    const deposits = this.#depositsAt(record);
    this.inside.deposits = deposits;
    const porosities = media ? porositiesOf(media, deposits) : undefined;
    const moment = momentAt(record.series, stage.moment);
    const dye =
      this.#at === undefined ? undefined : { at: this.#at, given: this.#given, playing: this.#player.running };
    return html`<tb-filter .seen=${{ scenario, moment, porosities }} .dye=${dye} .deeds=${this.#deeds} .trial=${record.trial ?? ''}
      .stands=${this.inside.marks.stands}></tb-filter>`;
  }
}
