import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Engine } from '../engine/client.ts';
import type { FillDay } from '../engine/fill-asked.ts';
import type { Subject, TrialShown } from '../engine/protocol.ts';
import { withinRun } from '../plots/time-axis.ts';
import { Player } from '../state/player.ts';
import type { Remembered } from '../state/remembered.ts';
import type { Session } from '../state/session.ts';
import { type Shown, shownRecord } from '../state/shown.ts';
import { windowOf } from '../state/stopping.ts';
import { windowRound } from './moment.ts';

/** What is played of a stop lasts this long on the screen, ms. */
const PLAYED = 8000;

/** What is drawn: the run or a trial in its place, at which moment, and over which minutes the plots are opened. */
export class Stage implements ReactiveController {
  moment = 0;
  window: readonly [number, number] = [0, 1];

  readonly #host: ReactiveControllerHost;
  readonly #session: Session;
  readonly #engine: Engine;
  readonly #player = new Player((t) => {
    this.moment = t;
    this.#host.requestUpdate();
  });
  #trial: TrialShown | undefined;
  /** The day of the fill on the screen; undefined where the trial is another, or that of the check. */
  #fill: FillDay | undefined;
  #seeking: number | undefined;
  #shown: Shown | undefined;

  constructor(host: ReactiveControllerHost, session: Session, engine: Engine) {
    this.#host = host;
    this.#session = session;
    this.#engine = engine;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#player.stop();
  }

  /** The record on the screen; made once for each answer and trial. */
  record(): Shown | undefined {
    const { shown } = this.#session;
    if (!shown) return undefined;
    const series = this.#trial?.series ?? shown.series;
    if (this.#shown?.series !== series) this.#shown = shownRecord(shown, this.#trial);
    return this.#shown;
  }

  /** Another site is to come. */
  clear(): void {
    this.#player.stop();
    this.#trial = undefined;
  }

  /**
   * A site opens where the question asked looks: one minute before its pump stops, and one whose own run never stops
   * shows its trial; at the first opening of its hose; or with the filter at work.
   */
  async arrive(): Promise<void> {
    this.#trial = undefined;
    this.moment = 0;
    this.window = [0, this.record()?.answer.span ?? 1];
    await this.show(this.#session.about);
  }

  /** A site opens as it stood before the page was loaded anew. */
  async resume({ moment, window, trial }: Pick<Remembered, 'moment' | 'window' | 'trial'>): Promise<void> {
    this.clear();
    if (trial !== undefined) await this.openTrial(trial);
    this.window = withinRun(window, this.record()?.answer.span ?? 1);
    this.moveTo(Math.min(moment, this.record()?.answer.span ?? 0));
  }

  /** The site was answered anew: a trial on the screen is run again. */
  answered(): void {
    if (this.#trial) void this.openTrial(this.#trial.check, this.#fill);
  }

  async openTrial(check: string, fill?: FillDay): Promise<void> {
    const given = await this.#engine.give({ want: 'trial', text: this.#session.text, check, fill });
    // A pond that is full already has nothing to show.
    if (given === 'superseded' || given.kind !== 'trial' || !(given.span > 0)) return;
    this.#trial = given;
    this.#fill = fill;
    this.#host.requestUpdate();
  }

  /** What a question is about is brought on: the stop, the filling pond, the filter at work. */
  async show(about: Subject): Promise<void> {
    if (about === 'stop') this.#trial = undefined;
    if (about === 'stop') await this.stopPump();
    else if (about === 'filter') this.#atWork();
    else {
      await this.playFill(this.#fill ?? {});
      if (this.fillMoment === undefined) this.#standAtStart();
    }
  }

  /** The filter at work: the run half way to where its pump first stops. */
  #atWork(): void {
    this.#trial = undefined;
    this.lookAt(0.5 * (this.record()?.stopping?.from ?? 0));
  }

  /** Nothing is to come: the site as it stands when the run starts. */
  #standAtStart(): void {
    this.#trial = undefined;
    this.moveTo(0);
  }

  /** Moment of the fill on the screen; undefined while another record is. */
  get fillMoment(): number | undefined {
    return this.#trial?.check === 'filling' && this.#fill !== undefined ? this.moment : undefined;
  }

  /** Plays the filling of the site on a day. */
  async playFill(day: FillDay): Promise<void> {
    await this.openTrial('filling', day);
    if (this.fillMoment === undefined) return;
    const span = this.record()?.answer.span ?? 1;
    this.window = [0, span];
    this.#player.play(0, span, PLAYED);
  }

  /** Draws a moment of the filling on a day; while its record is sought, the last moment asked for waits for it. */
  async fillAt(t: number, day: FillDay): Promise<void> {
    if (this.fillMoment !== undefined && isSameDay(day, this.#fill)) return this.moveTo(t);
    const waits = this.#seeking !== undefined;
    this.#seeking = t;
    if (waits) return;
    await this.openTrial('filling', day);
    const sought = this.#seeking;
    this.#seeking = undefined;
    if (this.fillMoment === undefined) return;
    this.window = [0, this.record()?.answer.span ?? 1];
    this.moveTo(sought);
  }

  /** Plays the pump's stop: that of the run, or of a trial where the run has none. */
  async stopPump(): Promise<void> {
    const { shown } = this.#session;
    if (!this.record()?.stopping && shown?.stops) await this.openTrial('drain-back');
    const record = this.record();
    if (!record?.stopping) return;
    const { from, to, highest } = record.stopping;
    this.window = windowOf(record.stopping, record.answer.span);
    this.#player.play(from, to, PLAYED, highest);
  }

  backToRun(): void {
    this.#trial = undefined;
    this.lookAt(this.record()?.stopping?.from ?? 0);
  }

  /** Opens the minutes round a moment of the run. */
  lookAt(t: number): void {
    const record = this.record();
    if (!record) return;
    this.window = windowRound(t, record.answer.span);
    this.moveTo(t);
  }

  moveTo(t: number): void {
    this.#player.stop();
    this.moment = t;
    this.#host.requestUpdate();
  }

  choose(window: readonly [number, number]): void {
    this.window = window;
    this.#host.requestUpdate();
  }
}

const isSameDay = (a: FillDay, b: FillDay | undefined): boolean => JSON.stringify(a) === JSON.stringify(b);
