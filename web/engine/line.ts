import { wrap } from 'comlink';
import type { Answering } from './protocol.ts';
import program from './worker.ts?worker&url';

/** A connection to one worker. `broken` rejects when the worker dies or is hung up on; it never resolves. */
export interface Line {
  answering: Answering;
  broken: Promise<never>;
  hangUp(): void;
}

/** Longest wait for a new worker's first word, ms: a phone may have to fetch and compile it. */
const patience = 15_000;

/** Rejects when the worker ends: the lock it holds falls to us. Only where the browser has locks (a secure page). */
function watch(lock: string, signal: AbortSignal, died: (why: Error) => void): void {
  navigator.locks.request(lock, { signal }, () => died(new Error('the worker ended'))).catch(() => {});
}

/** Starts a worker and waits for its first word. Rejects where the worker cannot be started. */
export async function openLine(): Promise<Line> {
  const worker = new Worker(program, { type: 'module' });
  const answering = wrap<Answering>(worker) as unknown as Answering;
  const watching = new AbortController();
  const { promise: broken, reject } = withReject();
  const hangUp = (why = new Error('hung up')): void => {
    watching.abort();
    worker.terminate();
    reject(why);
  };
  worker.addEventListener('error', (event) => hangUp(new Error(event.message || 'the worker could not be loaded')));
  worker.addEventListener('messageerror', () => hangUp(new Error('a message of the worker could not be read')));

  const lock = 'locks' in navigator ? `tumblebay worker ${crypto.randomUUID()}` : undefined;
  const late = setTimeout(() => hangUp(new Error('the worker did not answer')), patience);
  await Promise.race([answering.hello(lock), broken]).finally(() => clearTimeout(late));
  if (lock !== undefined) watch(lock, watching.signal, hangUp);
  return { answering, broken, hangUp: () => hangUp() };
}

/** A promise that is only ever rejected, and is no unhandled one where nobody waits for it. */
function withReject(): { promise: Promise<never>; reject: (why: Error) => void } {
  let reject!: (why: Error) => void;
  const promise = new Promise<never>((_, refuse) => {
    reject = refuse;
  });
  promise.catch(() => {});
  return { promise, reject };
}
