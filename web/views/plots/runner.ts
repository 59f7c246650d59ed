import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { passed, pixelsPerSecond, type Speed } from '../../plots/pass.ts';
import type { Axis } from '../../plots/time-axis.ts';
import { openedOf } from '../../plots/time-axis.ts';
import { awake } from '../../state/player.ts';

/** Where motion is unwelcome the states of a second are stepped through at once. */
const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;
const STEP = 1000;

export interface Running {
  readonly axis: Axis | undefined;
  readonly moment: number;
  readonly speed: Speed;
  readonly move: (t: number) => void;
}

/** Lets time run over the axis at constant speed over the screen, until it is stopped or the run is over. */
export class Runner implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #now: () => Running;
  #frame: number | undefined;
  #last = 0;

  constructor(host: ReactiveControllerHost, now: () => Running) {
    this.#host = host;
    this.#now = now;
    host.addController(this);
  }

  get running(): boolean {
    return this.#frame !== undefined;
  }

  /** From the moment on; from the opened minutes' beginning where the run is over. */
  start(): void {
    const { axis, moment, move } = this.#now();
    if (!axis || this.running) return;
    if (moment >= axis.span) move(axis.window[0]);
    this.#last = performance.now();
    this.#frame = requestAnimationFrame(this.#step);
    this.#host.requestUpdate();
  }

  stop(): void {
    if (this.#frame === undefined) return;
    cancelAnimationFrame(this.#frame);
    this.#frame = undefined;
    this.#host.requestUpdate();
  }

  hostDisconnected(): void {
    this.stop();
  }

  readonly #step = (at: number): void => {
    const { axis, moment, speed, move } = this.#now();
    if (!axis || moment >= axis.span) {
      this.stop();
      return;
    }
    this.#frame = requestAnimationFrame(this.#step);
    const elapsed = awake(this.#last, at);
    if (still() && elapsed < STEP) return;
    this.#last = at;
    const [left, right] = openedOf(axis);
    move(passed(axis, moment, (pixelsPerSecond(right - left, speed) * elapsed) / 1000));
  };
}
