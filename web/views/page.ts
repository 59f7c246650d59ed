import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { Engine } from '../engine/client.ts';
import { openLine } from '../engine/line.ts';
import type { Answered } from '../engine/protocol.ts';
import '../section/section.ts';
import { FillController } from '../fill/controller.ts';
import { FilterController } from '../filter/controller.ts';
import { Keeper } from '../keep/keeper.ts';
import type { Screen } from '../keep/screen.ts';
import { LessonController } from '../lesson/controller.ts';
import { MineController } from '../mine/controller.ts';
import { ReadingsController } from '../readings/controller.ts';
import { chooseLook, type Look, openingLook } from '../state/look.ts';
import { momentAt } from '../state/moment.ts';
import { Session } from '../state/session.ts';
import type { Shown } from '../state/shown.ts';
import { answerView } from './answer-view.ts';
import { barView } from './bar.ts';
import { Beside } from './beside.ts';
import { cautions } from './cautions.ts';
import { type HeadDeeds, headView } from './head.ts';
import { headStyles } from './head-styles.ts';
import { InputsController } from './inputs/inputs.ts';
import { Late } from './late.ts';
import { pageStyles } from './page-styles.ts';
import './plots/plots.ts';
import { tieFor } from './inputs/tie.ts';
import { type Room, room } from './memory.ts';
import { restView } from './rest.ts';
import { Stage } from './stage.ts';
import { shared } from './styles.ts';
import { troubleWords } from './troubles.ts';
import { Width } from './width.ts';

/** The page: which site, which question, what came of it, and at which moment it is drawn. */
@customElement('tb-page')
export class Page extends LitElement {
  static override styles = [shared, headStyles, pageStyles];

  @state() private look: Look = openingLook();

  readonly #engine = new Engine(openLine);
  readonly #session = new Session(this.#engine, () => this.#changed());
  readonly #stage = new Stage(this, this.#session, this.#engine);
  readonly #beside = new Beside(() => this.requestUpdate(), this.#session, this.#engine);
  readonly #late = new Late(() => this.requestUpdate(), this.#session);
  readonly #keeper = new Keeper(this, this.#session);
  @state() private room: Room | undefined;
  readonly #inputs = new InputsController(this, this.#session, this.#engine);
  readonly #mine = new MineController(this, this.#session, this.#keeper);
  readonly #readings = new ReadingsController(this, this.#session, this.#engine);
  readonly #lesson = new LessonController(this, this.#session, this.#keeper, this.#engine);
  readonly #fill = new FillController(this, this.#session, this.#engine, this.#stage);
  readonly #filter = new FilterController({
    host: this,
    session: this.#session,
    engine: this.#engine,
    stage: this.#stage,
    kept: () => this.#beside.kept,
  });
  /** On a desk all presses of the moment stand in one row; on a phone the pump is stopped above the drawing. */
  readonly #desk = matchMedia('(min-width: 1000px)');
  #arrived: string | undefined;
  #seen: Answered | undefined;
  readonly #width = new Width(this, '.drawing');

  override connectedCallback(): void {
    super.connectedCallback();
    void room(this.#keeper).then((there) => {
      this.room = there;
    });
    document.addEventListener('keydown', this.#keys);
    this.#desk.addEventListener('change', this.#relaid);
    this.addEventListener('dragover', (event) => event.preventDefault());
    this.addEventListener('drop', (event) => {
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) void this.room?.openFile(this.#keeper, file);
    });
  }

  screen(): Screen | undefined {
    const { doc, about, display } = this.#session;
    const record = this.#stage.record();
    if (!record || !doc) return undefined;
    const { moment, window } = this.#stage;
    return { about, ...(display && { display }), moment, window, ...(record.trial && { trial: record.trial }) };
  }

  clear(): void {
    this.#arrived = undefined;
    this.#stage.clear();
    this.#beside.clear();
    this.#filter.clear();
    this.#inputs.close();
    this.#lesson.leave();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('keydown', this.#keys);
    this.#desk.removeEventListener('change', this.#relaid);
  }

  readonly #relaid = (): void => this.requestUpdate();

  /** A field's own undo is left to the field. */
  readonly #keys = (event: KeyboardEvent): void => {
    const typing = event.composedPath()[0] instanceof HTMLInputElement;
    if (typing || event.key.toLowerCase() !== 'z' || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    if (event.shiftKey) this.#session.redo();
    else this.#session.undo();
  };

  #changed(): void {
    this.requestUpdate();
    this.#late.look();
    const { shown, name } = this.#session;
    if (!shown || shown === this.#seen) return;
    this.#seen = shown;
    if (this.#arrived === name) this.#stage.answered();
    else if (this.#keeper.resuming) void this.#stage.resume(this.#keeper.resuming);
    else void this.#stage.arrive();
    this.#arrived = name;
    void this.#beside.answered();
    this.#inputs.answered();
  }

  readonly #deeds: HeadDeeds = {
    ask: (about) => {
      this.#session.askAbout(about);
      void this.#stage.show(about);
      this.#inputs.answered();
    },
    showIn: (display) => this.#session.showIn(display),
    lookIn: (look) => {
      this.look = look;
      chooseLook(look);
    },
    makeMine: () => this.#mine.press(),
    printOut: () => void this.#printOut(),
    undo: () => this.#session.undo(),
    redo: () => this.#session.redo(),
    share: () => void this.room?.share(this.#keeper),
  };

  protected override updated(): void {
    tieFor(this.renderRoot as ShadowRoot, this.#inputs.part?.place);
  }

  readonly #drawing = (): string => this.renderRoot.querySelector('tb-section')?.svgText() ?? '';

  #drawn(run: Answered, record: Shown): TemplateResult {
    const { scenario, balance } = run;
    const { moment, window } = this.#stage;
    const now = momentAt(record.series, moment);
    const bar = barView(
      { record, moment: now, scenario, late: this.#late.late },
      { stop: () => void this.#stage.stopPump(), back: () => this.#stage.backToRun() },
    );
    return html`<div class="before">
      <tb-section class="drawing" .scenario=${scenario} .answer=${record.answer} .balance=${balance} .moment=${now}
        .width=${this.#width.px} .chosen=${this.#inputs.part?.place ?? ''}
        .view=${this.#session.about === 'filter' ? 'filter' : 'whole'} .inside=${this.#filter.inside}
        .about=${this.#session.about === 'filter' ? 'filter' : 'pond'}></tb-section>
      ${this.#desk.matches ? nothing : bar}
      ${this.#filter.below(run, record)}
      <tb-plots .scenario=${scenario} .answer=${record.answer} .series=${record.series}
        .trial=${record.trial ?? ''} .drawing=${this.#drawing} .engine=${this.#engine} .other=${this.#beside.other(record)} .window=${window} .moment=${moment}
        @window-chosen=${(event: CustomEvent<[number, number]>) => this.#stage.choose(event.detail)}
        @moment-moved=${(event: CustomEvent<number>) => this.#stage.moveTo(event.detail)}>${this.#desk.matches ? bar : nothing}${this.#beside.view(record, this.#filter.sidesPress(run))}</tb-plots>
    </div>`;
  }

  #run(run: Answered, record: Shown): TemplateResult {
    return html`<div class="run"
        @moment-chosen=${(event: CustomEvent<number>) => {
          this.#stage.backToRun();
          this.#stage.lookAt(event.detail);
        }}
        @trial-chosen=${async ({ detail }: CustomEvent<{ check: string; t: number }>) => {
          await this.#stage.openTrial(detail.check);
          this.#stage.lookAt(detail.t);
        }}>
      <div class="beside">${this.#about(run)}</div>
      ${this.#drawn(run, record)} ${restView(this.#session, run)}
    </div>`;
  }

  async #printOut(): Promise<void> {
    const { full, doc } = this.#session;
    if (!full) return;
    const [{ openSheet }, fill] = await Promise.all([import('../sheet/open.ts'), this.#fill.planned()]);
    openSheet({ ...full, file: doc?.now.file, fill });
  }

  /** The answer to what is asked, and what decides it. */
  #about(run: Answered): TemplateResult {
    const fills = this.#session.about === 'filling';
    const answer = fills ? this.#fill.view(run) : answerView(this.#session, run);
    if (this.#mine.isOpen) return html`${answer} ${this.#mine.view(run)}`;
    return html`${answer} ${this.#lesson.view(run)} ${this.#inputs.view(run, !fills)} ${this.#filter.view(run, this.#stage.record())} ${this.#readings.view(run)}`;
  }

  override render(): TemplateResult {
    const { shown, doc, about, trouble, display } = this.#session;
    const record = this.#stage.record();
    const head = {
      title: shown?.scenario.title ?? this.#keeper.title,
      isWhole: this.#session.isWhole,
      sheet: this.room?.sheetView(this.#keeper) ?? fetching,
      doc,
      about,
      display: display ?? shown?.scenario.display ?? 'metric',
      look: this.look,
    };
    return html`${headView(head, this.#deeds)}
      <main>
        ${this.room?.newsView(this.#keeper) ?? nothing}
        ${shown && record ? this.#run(shown, record) : trouble ? troubleWords(trouble) : waiting}
      </main>
      <footer>${cautions}</footer>`;
  }
}

/** The place of the drawing is measured before there is one, so that it is laid out once. */
const waiting = html`<div class="run">
  <div class="beside"><p class="note">Computing …</p></div>
  <div class="before"><div class="drawing"></div></div>
</div>`;

const fetching = html`<p class="note">One moment …</p>`;
