import type { Scenario } from '../../sim/scenario/scenario.ts';
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

  /** Settled volume in each layer at a moment of a record, m³; while more is not known, what the site starts with. */
  at(t: number, { answer, trial }: Shown, scenario: Scenario): Deposits {
    const { session, engine } = this.#around;
    const start = startOf(scenario);
    if (trial !== undefined || !Object.values(answer.deposits).some((held) => held > 0)) return start;
    if (session.isWhole && this.#settled?.of !== session.text) {
      const asked = { of: session.text, given: this.given };
      this.#settled = asked;
      void this.#asking.ask(engine, [{ want: 'deposits', text: asked.of }], (given) => {
        if (given.kind === 'deposits') asked.given = given;
      });
    }
    return sinceStart(start, this.given, t);
  }
}

type Deposits = Readonly<Record<string, number>>;

/** Settled volume in each layer at t = 0 by the file, m³. */
export const startOf = ({ filter }: Scenario): Deposits =>
  Object.fromEntries((filter?.media?.layers ?? []).map(({ name, deposit }) => [name, deposit]));

/** What a site starts with and what has come to it: while a hand changes the start, the rest is still that of before. */
export function sinceStart(start: Deposits, given: DepositsGiven | undefined, t: number): Deposits {
  if (!given) return start;
  const now = columnsAt(given.layers, given.t, t);
  const heldOf = (name: string, start: number): number => {
    const [first, held] = [given.layers[name]?.[0] ?? 0, now[name] ?? 0];
    // Once a cleaning has taken the start out, what is held came later.
    return held < first ? held : start + held - first;
  };
  return Object.fromEntries(Object.entries(start).map(([name, held]) => [name, heldOf(name, held)]));
}
