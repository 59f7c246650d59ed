import { awake } from '../state/player.ts';

/** Where motion is unwelcome the moment steps on, once so often, ms. */
const STEP = 2000;

/** The page's moment, as the player sees it. */
export interface Hand {
  readonly moment: () => number;
  readonly to: (t: number) => void;
  readonly changed: () => void;
}

/** Moves the page's moment at one speed; a hand that takes the moment elsewhere stops it. */
export class DyePlayer {
  readonly #hand: Hand;
  readonly #still = matchMedia('(prefers-reduced-motion: reduce)');
  #frame = 0;

  constructor(hand: Hand) {
    this.#hand = hand;
  }

  get running(): boolean {
    return this.#frame !== 0;
  }

  /** @param times as fast as in truth */
  play(from: number, to: number, times: number): void {
    this.stop();
    let last = performance.now();
    let [t, waited, shown] = [from, 0, from];
    const step = (now: number): void => {
      if (this.#hand.moment() !== shown) {
        this.stop();
        return;
      }
      waited += awake(last, now);
      last = now;
      if (!this.#still.matches || waited >= STEP) {
        t = Math.min(to, t + 0.001 * waited * times);
        waited = 0;
        shown = t;
        this.#hand.to(t);
      }
      if (t >= to) this.stop();
      else this.#frame = requestAnimationFrame(step);
    };
    this.#frame = requestAnimationFrame(step);
    this.#hand.to(from);
  }

  stop(): void {
    if (!this.running) return;
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    this.#hand.changed();
  }
}
