import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import type { Engine } from '../engine/client.ts';
import type { DepositsGiven, DyeGiven } from '../engine/filter-asked.ts';
import type { Answered } from '../engine/protocol.ts';
import { Asking } from '../fill/ask.ts';
import { MapController } from '../map/controller.ts';
import type { Case } from '../state/case.ts';
import { columnsAt, momentAt } from '../state/moment.ts';
import type { Session } from '../state/session.ts';
import type { Shown } from '../state/shown.ts';
import type { Stage } from '../views/stage.ts';
import { porositiesOf } from './deposit.ts';
import { DyePlayer } from './dye-player.ts';
import { playedAt } from './dye-words.ts';
import './dye.ts';
import type { DyeDeeds } from './dye.ts';
import './filter.ts';
import { FilterInside } from './inside.ts';
import type { Side } from './sides.ts';
import { WeeksFold } from './weeks-fold.ts';

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
  readonly #map: MapController;
  readonly #weeks: WeeksFold;
  #at: number | undefined;
  #given: DyeGiven | undefined;
  #of = '';
  #trouble = '';
  /** Deposits over the run, and the text they are of. */
  #settled: { readonly of: string; given: DepositsGiven | undefined } | undefined;

  /** Drawn beside the case kept: each drawing moves marks of its own. */
  readonly #beside = new FilterInside();
  #kept: { of: Case; settled: DepositsGiven | undefined; inside: FilterInside } | undefined;
  #open = false;
  readonly #comparing: Asking;
  /** Which of the two cases keeps the pond cleaner, and of which two that is told. */
  #cleaner: { readonly kept: Scenario; readonly now: Scenario; says: string } | undefined;

  constructor(around: Around) {
    this.#around = around;
    const { host, stage } = around;
    this.#asking = new Asking(host);
    this.#settling = new Asking(host);
    this.#comparing = new Asking(host);
    this.#map = new MapController(host, around.session, around.engine);
    this.#weeks = new WeeksFold(host, around.session, around.engine);
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
    const watch = this.#given?.watch;
    if (!watch?.poured) return;
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

  readonly #stand = (stands: boolean): void => {
    this.inside.marks.stand(stands);
    this.#around.host.requestUpdate();
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

  /** What is seen at the moment drawn. */
  view({ scenario }: Answered, record: Shown): TemplateResult {
    const { stage } = this.#around;
    const deposits = this.#depositsAt(record);
    this.inside.deposits = deposits;
    this.#beside.deposits = deposits;
    const porosities = leftIn(scenario, deposits);
    const moment = momentAt(record.series, stage.moment);
    return html`<tb-filter .seen=${{ scenario, moment, porosities }} .stand=${this.#stand}
      .stands=${this.inside.marks.stands}></tb-filter>`;
  }

  /** Below the drawing: the dye, and all settings of the valves. */
  below(run: Answered, record: Shown, kept: Case | undefined): TemplateResult {
    return html`${this.#dyeView(run, record, kept)} ${this.#map.view(run)} ${this.#weeks.view(run)}`;
  }

  #dyeView(run: Answered, record: Shown, kept: Case | undefined): TemplateResult | typeof nothing {
    if (!run.scenario.filter) return nothing;
    const { trial } = record;
    const { session, stage } = this.#around;
    // The dye of a site that was edited is poured anew at its moment, once the hand rests.
    if (this.#at !== undefined && session.isWhole && this.#of !== keyOf(session)) this.#ask(false);
    const watch = this.#given?.watch;
    this.inside.watch = trial === undefined && watch?.poured ? watch : undefined;
    const poured =
      this.#at === undefined ? undefined : { at: this.#at, given: this.#given, playing: this.#player.running };
    return html`<tb-dye .poured=${poured} .deeds=${this.#deeds} .moment=${stage.moment} .trial=${trial !== undefined}
      .trouble=${this.#trouble}></tb-dye>${this.#sidesView(run, record, kept)}`;
  }

  /** Opens two cases side by side. */
  open(): void {
    void import('./sides.ts');
    this.#open = true;
    this.#around.host.requestUpdate();
  }

  readonly #shut = (): void => {
    this.#open = false;
    this.#around.host.requestUpdate();
  };

  #compare(kept: Scenario, now: Scenario): void {
    const { session, engine } = this.#around;
    if (!session.isWhole || now === this.#cleaner?.now) return;
    const asked = { kept, now, says: '' };
    this.#cleaner = asked;
    void this.#comparing.ask(engine, [{ want: 'cleaner', sites: [kept, now] }], (given) => {
      if (given.kind === 'cleaner') asked.says = given.says;
    });
  }

  #sidesView(run: Answered, record: Shown, kept: Case | undefined): TemplateResult | typeof nothing {
    if (kept !== this.#kept?.of)
      this.#kept = kept && { of: kept, settled: this.#settled?.given, inside: new FilterInside() };
    const other = this.#kept;
    if (!this.#open || !other) return nothing;
    const t = this.#around.stage.moment;
    const stop = record.stopping?.at;
    const there = stop !== undefined && other.of.stop !== undefined ? t - stop + other.of.stop : t;
    const settled = other.settled ? columnsAt(other.settled.layers, other.settled.t, there) : {};
    other.inside.deposits = settled;
    const side = (scenario: Scenario, { series, answer }: Case | Shown, at: number, inside: FilterInside): Side => ({
      seen: { scenario, moment: momentAt(series, at), porosities: leftIn(scenario, inside.deposits) },
      answer,
      inside,
    });
    const { display } = run.scenario;
    this.#compare({ ...other.of.scenario, display }, run.scenario);
    return html`<tb-sides .cleaner=${this.#cleaner?.says ?? ''} .kept=${side({ ...other.of.scenario, display }, other.of, there, other.inside)}
      .now=${side(run.scenario, record, t, this.#beside)} .close=${this.#shut}></tb-sides>`;
  }
}

function leftIn({ filter }: Scenario, deposits: Readonly<Record<string, number>>): number[] | undefined {
  return filter?.media && porositiesOf(filter.media, deposits);
}

/** What a dye depends on: the site, and the units it is told in. */
const keyOf = ({ text, display }: Session): string => `${display} ${text}`;
