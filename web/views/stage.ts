import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Engine } from '../engine/client.ts';
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

  /** A site opens one minute before its pump stops; one whose own run never stops shows its trial. */
  async arrive(): Promise<void> {
    this.#trial = undefined;
    this.moment = 0;
    this.window = [0, this.record()?.answer.span ?? 1];
    await this.stopPump();
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
    if (this.#trial) void this.openTrial(this.#trial.check);
  }

  async openTrial(check: string): Promise<void> {
    const given = await this.#engine.give({ want: 'trial', text: this.#session.text, check });
    if (given === 'superseded' || given.kind !== 'trial') return;
    this.#trial = given;
    this.#host.requestUpdate();
  }

  /** What a question is about is brought on: the stop, the filling pond, the filter at work. */
  async show(about: Subject): Promise<void> {
    const { full } = this.#session;
    const fills = (full?.answer.checks.find(({ name }) => name === 'filling')?.t ?? 0) > 0;
    if (about === 'stop') this.#trial = undefined;
    if (about === 'stop') await this.stopPump();
    else if (about === 'filter') this.backToRun();
    else if (fills) {
      await this.openTrial('filling');
      const span = this.record()?.answer.span ?? 1;
      this.window = [0, span];
      this.#player.play(0, span, PLAYED);
    } else this.#standAtStart();
  }

  /** Nothing is to come: the site as it stands when the run starts. */
  #standAtStart(): void {
    this.#trial = undefined;
    this.moveTo(0);
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
