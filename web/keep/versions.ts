/** Keeps the page for use without a network, and offers a new version of it, which waits until it is asked for. */
import type { Keeper } from './keeper.ts';

/** What the waiting version is told. */
export const TAKE_OVER = 'take over';

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
      waiting.postMessage(TAKE_OVER);
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
