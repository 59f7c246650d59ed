/** Lets time run over a stretch of a record on the screen's own clock. */

/** The hand of the page's clock; in tests another. */
export interface Clock {
  readonly now: () => number;
  readonly frame: (next: () => void) => number;
  readonly cancel: (frame: number) => void;
  /** Motion is unwelcome: states step instead. */
  readonly still: () => boolean;
}

const ofThePage: Clock = {
  now: () => performance.now(),
  frame: (next) => requestAnimationFrame(next),
  cancel: (frame) => cancelAnimationFrame(frame),
  still: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
};

/** Frames further apart than this, ms, had a page in the dark or a machine asleep between them: time stood. */
const ASLEEP = 2000;
const FRAME = 16;

/** How much of the screen's time went by from one frame to the next, ms. */
export const awake = (from: number, to: number): number => (to - from > ASLEEP ? FRAME : Math.max(0, to - from));

export class Player {
  readonly #show: (t: number, running: boolean) => void;
  readonly #clock: Clock;
  #frame: number | undefined;

  constructor(show: (t: number, running: boolean) => void, clock = ofThePage) {
    this.#show = show;
    this.#clock = clock;
  }

  get running(): boolean {
    return this.#frame !== undefined;
  }

  /** Runs from a moment to another within so many milliseconds; where motion is unwelcome it stands at one of its own. */
  play(from: number, to: number, lasting: number, standing = to): void {
    this.stop();
    if (this.#clock.still()) {
      this.#show(standing, false);
      return;
    }
    let last = this.#clock.now();
    let gone = 0;
    const step = (): void => {
      const now = this.#clock.now();
      gone += awake(last, now);
      last = now;
      const share = Math.min(1, gone / lasting);
      this.#frame = share < 1 ? this.#clock.frame(step) : undefined;
      // Slow at first: most of what comes home does so in the first minutes.
      this.#show(from + share * share * (to - from), share < 1);
    };
    this.#frame = this.#clock.frame(step);
    this.#show(from, true);
  }

  stop(): void {
    if (this.#frame !== undefined) this.#clock.cancel(this.#frame);
    this.#frame = undefined;
  }
}
