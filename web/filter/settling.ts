import type { DepositsGiven } from '../engine/filter-asked.ts';
import { Asking } from '../fill/ask.ts';
import { columnsAt } from '../state/moment.ts';
import type { Shown } from '../state/shown.ts';
import type { Around } from './around.ts';

/** What settles in the media over the run: asked for only where anything settles at all. */
export class Settling {
  readonly #around: Around;
  readonly #asking: Asking;
  /** Deposits over the run, and the text they are of. */
  #settled: { readonly of: string; given: DepositsGiven | undefined } | undefined;

  constructor(around: Around) {
    this.#around = around;
    this.#asking = new Asking(around.host);
  }

  /** Over the whole run, as far as it is known. */
  get given(): DepositsGiven | undefined {
    return this.#settled?.given;
  }

  /** Settled volume in each layer at a moment of a record, m³; nothing while it is not known. */
  at(t: number, { answer, trial }: Shown): Readonly<Record<string, number>> {
    const { session, engine } = this.#around;
    if (trial !== undefined || !Object.values(answer.deposits).some((held) => held > 0)) return {};
    if (session.isWhole && this.#settled?.of !== session.text) {
      const asked = { of: session.text, given: this.given };
      this.#settled = asked;
      void this.#asking.ask(engine, [{ want: 'deposits', text: asked.of }], (given) => {
        if (given.kind === 'deposits') asked.given = given;
      });
    }
    return settledAt(this.given, t);
  }
}

export const settledAt = (given: DepositsGiven | undefined, t: number): Readonly<Record<string, number>> =>
  given ? columnsAt(given.layers, given.t, t) : {};
