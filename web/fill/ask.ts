import type { ReactiveControllerHost } from 'lit';
import type { Given, Request } from '../engine/protocol.ts';

/** What answers requests: the page's engine. */
export interface Giving {
  give(request: Request): Promise<Given | 'superseded'>;
}

/** Puts requests to the worker, the last one of a view alone being waited for; one that a question dropped is put again. */
export class Asking {
  busy = false;
  readonly #host: ReactiveControllerHost;
  #asked = 0;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
  }

  /** One after the other; each is handed on as it comes, until others are asked. */
  async ask(engine: Giving, requests: readonly Request[], take: (given: Given) => void): Promise<void> {
    const number = ++this.#asked;
    this.busy = true;
    this.#host.requestUpdate();
    for (const request of requests) {
      const given = await this.#put(engine, request, number);
      if (given === undefined) return;
      take(given);
      this.#host.requestUpdate();
    }
    this.busy = false;
    this.#host.requestUpdate();
  }

  async #put(engine: Giving, request: Request, number: number): Promise<Given | undefined> {
    for (;;) {
      const given = await engine.give(request);
      if (number !== this.#asked) return undefined;
      if (given !== 'superseded') return given;
    }
  }
}
