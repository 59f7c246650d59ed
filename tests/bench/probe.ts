/** Runs inside the page: when a pointer moved, and in which frames the drawing, the plots and the answer followed it. */

export const followers = ['drawing', 'plots', 'answer'] as const;
export type Follower = (typeof followers)[number];

/** ms from the move to the end of the last frame in which each still changed; undefined: it did not. */
export type Followed = Partial<Record<Follower, number>>;

export interface Probe {
  /** Resolves when nothing has changed for `quiet` ms after the last move, or `atMost` ms after it. */
  settled(quiet: number, atMost: number): Promise<Followed>;
  /** Forgets the last move. */
  arm(): void;
}

declare global {
  interface Window {
    probe: Probe;
  }
}

/** The compiler that runs the bench names functions by a helper of its own, which the page does not have. */
export const NAMER = 'globalThis.__name = (named) => named';

/** Installs `window.probe`. Only what is painted counts: path data of drawing and plots, and the headline's text. */
export function installProbe(): void {
  const shadow = (name: string): ShadowRoot =>
    document.querySelector('tb-page')!.shadowRoot!.querySelector(name)!.shadowRoot!;
  const paths = { subtree: true, childList: true, attributes: true, attributeFilter: ['d', 'transform'] };
  const watched: [Follower, Node, MutationObserverInit][] = [
    ['drawing', shadow('tb-section'), paths],
    ['plots', shadow('tb-plots').querySelector('svg')!, paths],
    [
      'answer',
      shadow('tb-answer').querySelector('.headline')!,
      { subtree: true, childList: true, characterData: true },
    ],
  ];
  let moved = Number.NaN;
  let last = 0;
  let followed: Followed = {};
  const changed = new Set<Follower>();
  for (const [follower, node, what] of watched) {
    new MutationObserver((records) => {
      // The marks that run with the water move at every frame, hand or no hand.
      if (records.every(({ target }) => target instanceof Element && target.closest('.hundred'))) return;
      changed.add(follower);
      last = performance.now();
    }).observe(node, what);
  }
  // What has changed before a frame is painted in it; a message posted from the frame arrives after its paint.
  const channel = new MessageChannel();
  channel.port1.onmessage = ({ data }: MessageEvent<Follower[]>) => {
    const now = performance.now();
    if (Number.isNaN(moved)) return;
    for (const follower of data) followed[follower] = now - moved;
    if (data.length > 0) performance.mark('bench painted');
  };
  const frame = (): void => {
    channel.port2.postMessage([...changed]);
    changed.clear();
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  addEventListener(
    'pointermove',
    ({ timeStamp }) => {
      moved = timeStamp;
      last = timeStamp;
      followed = {};
      changed.clear();
      performance.mark('bench moved', { startTime: timeStamp });
    },
    { capture: true, passive: true },
  );
  window.probe = {
    arm() {
      moved = Number.NaN;
    },
    settled: (quiet, atMost) =>
      new Promise((resolve) => {
        const look = (): void => {
          const now = performance.now();
          const whole = Object.keys(followed).length === watched.length && now - last > quiet;
          if (whole || now - moved > atMost) resolve(followed);
          else setTimeout(look, 4);
        };
        look();
      }),
  };
}
