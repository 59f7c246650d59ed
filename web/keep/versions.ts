/** Keeps the page for use without a network, and offers a new version of it, which waits until it is asked for. */
import type { Keeper } from './keeper.ts';

/** What the waiting version is told, and how often until it has taken over, ms. */
const TAKE_OVER = 'take over';
const AGAIN = 1000;

/** Does nothing where the browser has no such keeping (an insecure address, a private window). */
export function watchVersions(keeper: Keeper): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const register = (): void => {
    navigator.serviceWorker.register(new URL('offline.js', document.baseURI)).then(
      (registration) => watch(registration, keeper),
      () => {},
    );
  };
  // Beside the first answer there is enough to fetch and compute.
  if (document.readyState === 'complete') setTimeout(register, 500);
  else addEventListener('load', () => setTimeout(register, 500), { once: true });
}

function watch(registration: ServiceWorkerRegistration | undefined, keeper: Keeper): void {
  if (!registration) return;
  const offer = (): void => {
    const { waiting } = registration;
    // The first version ever kept takes over by itself.
    if (!waiting || !navigator.serviceWorker.controller) return;
    const version = (): void => {
      keeper.keep();
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      const ask = (): void => waiting.postMessage(TAKE_OVER);
      ask();
      // A browser takes it over when the version before is at nothing; asked once, it may not look again for minutes.
      setInterval(ask, AGAIN);
    };
    keeper.tell({ version });
  };
  offer();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', offer);
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => {});
  });
}
