import type { Line } from './line.ts';
import type { Outcome, Question } from './protocol.ts';

/** How often a question is put to a fresh worker before the page gives up on it. */
const attempts = 2;

/**
 * Puts questions to a worker. Only the latest question gets an answer: an earlier one still being computed is dropped
 * together with its worker, since a worker deep in a run hears nothing. A worker that dies is replaced, and the
 * question it was at is asked again.
 */
export class Engine {
  readonly #open: () => Promise<Line>;
  #line: Promise<Line> | undefined;
  #latest = 0;
  #computing = false;

  constructor(open: () => Promise<Line>) {
    this.#open = open;
  }

  /** Resolves to the answer, or to 'superseded' where a later question was asked meanwhile; never rejects. */
  async ask(question: Question): Promise<Outcome | 'superseded'> {
    const number = ++this.#latest;
    if (this.#computing) this.#drop();
    let cause: unknown;
    for (let attempt = 0; attempt < attempts; attempt++) {
      this.#computing = true;
      const outcome = await this.#put(question).catch((why: unknown) => {
        cause = why;
        return undefined;
      });
      if (number !== this.#latest) return 'superseded';
      this.#computing = false;
      if (outcome) return outcome;
      this.#drop();
    }
    const why = cause instanceof Error ? cause.message : String(cause);
    return { kind: 'fault', message: `The computing part of this page stopped ${attempts} times (${why}).` };
  }

  async #put(question: Question): Promise<Outcome> {
    const line = await this.#connect();
    return Promise.race([line.answering.ask(question), line.broken]);
  }

  #connect(): Promise<Line> {
    if (this.#line) return this.#line;
    const opening = this.#open();
    this.#line = opening;
    const forget = (): void => {
      if (this.#line === opening) this.#line = undefined;
    };
    opening.then((line) => line.broken.catch(forget), forget);
    return opening;
  }

  #drop(): void {
    this.#line?.then(
      (line) => line.hangUp(),
      () => {},
    );
    this.#line = undefined;
  }
}
