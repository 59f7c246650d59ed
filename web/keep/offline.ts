/**
 * Serves the page from what was kept of it at the first visit, and reaches for the network only for what it does not
 * hold. A program of its own: it imports nothing, so that it is one file.
 *
 * Each version of the page is kept whole under a name of its own and serves only itself: a page never gets its parts
 * from two versions. A new one waits until every tab is closed, or until a person asks for it.
 */

interface Extendable extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
interface Self {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', heard: (event: Extendable) => void): void;
  addEventListener(type: 'message', heard: (event: Extendable & { readonly data: unknown }) => void): void;
  addEventListener(type: 'fetch', heard: (event: Fetching) => void): void;
}

/** Filled in by the build: the files of this version, and a name that changes with any of them. */
declare const KEPT_FILES: readonly string[];
declare const KEPT_VERSION: string;

const worker = self as unknown as Self;
const { scope } = worker.registration;
const START = `tumblebay ${scope} `;
const version = START + KEPT_VERSION;
const PAGE = 'index.html';

const at = (file: string): string => new URL(file, scope).href;

async function keepAll(): Promise<void> {
  const cache = await caches.open(version);
  // Names of assets change with what is in them; the others must not come from an older visit.
  const fresh = (file: string): Request =>
    new Request(at(file), { cache: file.startsWith('assets/') ? 'default' : 'reload' });
  await cache.addAll(KEPT_FILES.map(fresh));
}

/** The version before this one is kept a while: a tab that still shows it may want its parts. */
async function dropOld(): Promise<void> {
  const ours = (await caches.keys()).filter((each) => each.startsWith(START) && each !== version);
  await Promise.all(ours.slice(0, -1).map((each) => caches.delete(each)));
}

async function answer(request: Request, wanted: string): Promise<Response> {
  const cache = await caches.open(version);
  // A program of a worker is kept by one kind of request and asked for by another.
  const how = { ignoreVary: true };
  return (await cache.match(wanted, how)) ?? (await caches.match(wanted, how)) ?? fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));
worker.addEventListener('activate', (event) => event.waitUntil(dropOld().then(() => worker.clients.claim())));
worker.addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(worker.skipWaiting());
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = request.url.replace(/[?#].*$/, '');
  if (request.method !== 'GET' || !url.startsWith(scope)) return;
  event.respondWith(answer(request, url === scope ? at(PAGE) : url));
});
