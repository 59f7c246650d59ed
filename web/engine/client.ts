import type { Line } from './line.ts';
import type { Answering, Fault, Given, Outcome, Question, Request } from './protocol.ts';

/** How often a question is put to a fresh worker before the page gives up on it. */
const attempts = 2;
/** A worker at a question for longer than this is given up when another question waits, ms. */
const longest = 500;

interface Job {
  readonly put: (answering: Answering) => Promise<Outcome | Given>;
  readonly settle: (outcome: Outcome | Given | 'superseded') => void;
}

/**
 * Puts questions to a worker, one at a time. The one being computed is let finish, unless that takes long; of those
 * asked meanwhile only the last is put. Requests wait until no question does, and a new question drops them. A worker
 * that dies is replaced, and what it was at is asked again.
 */
export class Engine {
  readonly #open: () => Promise<Line>;
  readonly #longest: number;
  #line: Promise<Line> | undefined;
  #question: Job | undefined;
  #requests: Job[] = [];
  #busy: { readonly job: Job; readonly since: number } | undefined;
  #impatience: ReturnType<typeof setTimeout> | undefined;

  constructor(open: () => Promise<Line>, mostBusy = longest) {
    this.#open = open;
    this.#longest = mostBusy;
  }

  /** Resolves to the answer, or to 'superseded' where a later question took its place; never rejects. */
  ask(question: Question): Promise<Outcome | 'superseded'> {
    this.#question?.settle('superseded');
    for (const request of this.#requests.splice(0)) request.settle('superseded');
    return new Promise((resolve) => {
      this.#question = {
        put: (answering) => answering.ask(question),
        settle: resolve as Job['settle'],
      };
      this.#hurry();
      this.#next();
    });
  }

  /** Resolves when no question is left, or to 'superseded' where one was asked meanwhile; never rejects. */
  give(request: Request): Promise<Given | 'superseded'> {
    return new Promise((resolve) => {
      this.#requests.push({ put: (answering) => answering.give(request), settle: resolve as Job['settle'] });
      this.#next();
    });
  }

  /** A question waits: the worker has what is left of its time for the one before. */
  #hurry(): void {
    if (!this.#busy) return;
    clearTimeout(this.#impatience);
    const left = this.#busy.since + this.#longest - performance.now();
    this.#impatience = setTimeout(() => this.#giveUp(), Math.max(0, left));
  }

  #giveUp(): void {
    if (!this.#busy || !this.#question) return;
    this.#busy.job.settle('superseded');
    this.#busy = undefined;
    this.#drop();
    this.#next();
  }

  #next(): void {
    if (this.#busy) return;
    const job = this.#question ?? this.#requests.shift();
    if (!job) return;
    if (job === this.#question) this.#question = undefined;
    const busy = { job, since: performance.now() };
    this.#busy = busy;
    void this.#see(job, () => this.#busy === busy).then((outcome) => {
      if (this.#busy !== busy) return;
      clearTimeout(this.#impatience);
      this.#busy = undefined;
      job.settle(outcome);
      this.#next();
    });
  }

  async #see(job: Job, stillWanted: () => boolean): Promise<Outcome | Given> {
    let cause: unknown;
    for (let attempt = 0; attempt < attempts && stillWanted(); attempt++) {
      try {
        const line = await this.#connect();
        return await Promise.race([job.put(line.answering), line.broken]);
      } catch (why) {
        cause = why;
        if (stillWanted()) this.#drop();
      }
    }
    const why = cause instanceof Error ? cause.message : String(cause);
    return { kind: 'fault', message: `The computing part of this page stopped ${attempts} times (${why}).` } as Fault;
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
