import { html, nothing, type TemplateResult } from 'lit';
import type { Answered } from '../engine/protocol.ts';
import { MapController } from '../map/controller.ts';
import { momentAt } from '../state/moment.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';
import { porositiesIn } from './deposit.ts';
import { DyePour } from './dye-pour.ts';
import './filter.ts';
import { FilterInside } from './inside.ts';
import { Settling } from './settling.ts';
import { SidesRoom } from './sides-room.ts';
import { WeeksFold } from './weeks-fold.ts';

/** The inside of the filter while its question is asked: what runs in the drawing, the words beside it, and the dye. */
export class FilterRoom {
  readonly inside = new FilterInside();
  readonly #around: Around;
  readonly #settling: Settling;
  readonly #dye: DyePour;
  readonly #sides: SidesRoom;
  readonly #map: MapController;
  readonly #weeks: WeeksFold;

  constructor(around: Around) {
    const { host, session, engine } = around;
    this.#around = around;
    this.#settling = new Settling(around);
    this.#dye = new DyePour(around);
    this.#sides = new SidesRoom(around);
    this.#map = new MapController(host, session, engine);
    this.#weeks = new WeeksFold(host, session, engine);
  }

  /** Another site is to come. */
  clear(): void {
    this.#dye.clear();
  }

  readonly #stand = (stands: boolean): void => {
    this.inside.marks.stand(stands);
    this.#around.host.requestUpdate();
  };

  /** What is seen at the moment drawn. */
  view(run: Answered, record: Shown): TemplateResult {
    const { stage } = this.#around;
    const { scenario } = run;
    const deposits = this.#settling.at(stage.moment, record, scenario);
    const kept = this.#sides.keptSide(run, record, this.#settling.given)?.seen;
    this.inside.deposits = deposits;
    this.#sides.beside.deposits = deposits;
    const porosities = porositiesIn(scenario, deposits);
    const moment = momentAt(record.series, stage.moment);
    return html`<tb-filter .seen=${{ scenario, moment, porosities }} .kept=${kept} .stand=${this.#stand}
      .stands=${this.inside.marks.stands}></tb-filter>`;
  }

  /** Below the drawing: the dye, and all settings of the valves. */
  below(run: Answered, record: Shown): TemplateResult {
    return html`${this.#dyeView(run, record)} ${this.#weeks.view(run)} ${this.#map.view(run)}`;
  }

  #dyeView(run: Answered, record: Shown): TemplateResult | typeof nothing {
    if (!run.scenario.filter) return nothing;
    this.#dye.follow(record, this.#around.kept());
    this.inside.watch = record.trial === undefined ? this.#dye.watch : undefined;
    return html`${this.#dye.view(record)}${this.#sides.view(run, record, this.#settling.given, this.#dye)}`;
  }

  /** Opens two cases side by side. */
  open(): void {
    this.#sides.open();
  }
}
