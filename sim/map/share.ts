import { LEAST } from '../readings/valves.ts';
import type { Found, Seeker } from './seeker.ts';

/** A share is met within this, −. */
const MET = 1e-6;
const MOST_TRIES = 40;
/** As far as a valve is closed, −: a ball valve all but shut; a cock passes nothing before, and is not asked further. */
const MOST_CLOSED = 1 - LEAST.ball;
/** Less than this counts as no flow in a share, m³/s. */
const NO_FLOW = 1e-9;

/** One valve open in full, the other as far as a share asks: u below 0 closes the top valve by −u, above the bottom one. */
const openings = (u: number): { bottom: number; top: number } => ({
  bottom: u > 0 ? 1 - u : 1,
  top: u < 0 ? 1 + u : 1,
});

/**
 * The most open setting of both valves with which a share of the main goes up the bottom feed at a speed; undefined
 * where none does. By regula falsi (Illinois) on log(bottom/top), which is nearly straight in an opening.
 */
export function settingFor(seeker: Seeker, share: number, speed: number, nearby: Found | undefined): Found | undefined {
  if (share <= 0) return seeker.at({ bottom: 0, top: 1, speed }, sameFeeds(nearby));
  if (share >= 1) return seeker.at({ bottom: 1, top: 0, speed }, sameFeeds(nearby));
  const wanted = Math.log(share / (1 - share));
  let last = sameFeeds(nearby);
  const at = (u: number): { u: number; off: number; found: Found | undefined } => {
    const found = seeker.at({ ...openings(u), speed }, last);
    last = found ?? last;
    return { u, off: found ? wanted - beyond(found) : Number.NaN, found };
  };
  const { bracket, hit } = bracketed(at, share, nearby);
  if (hit || !bracket) return hit;
  let [a, b] = bracket;
  for (let i = 0; i < MOST_TRIES; i++) {
    const c = at((a.u * b.off - b.u * a.off) / (b.off - a.off));
    if (isMet(c.found, share)) return c.found;
    if (!Number.isFinite(c.off)) return undefined;
    if (c.off < 0 === b.off < 0) a = { ...a, off: a.off / 2 };
    else a = b;
    b = c;
  }
  return undefined;
}

type Tried = { u: number; off: number; found: Found | undefined };

/** Two openings between which the share lies: next to the one nearby, else from all open to all but shut. */
function bracketed(
  at: (u: number) => Tried,
  share: number,
  nearby: Found | undefined,
): { bracket?: readonly [Tried, Tried]; hit?: Found | undefined } {
  const near = nearby && (nearby.bottom < 1 ? 1 - nearby.bottom : nearby.top - 1);
  const tries = near === undefined ? [] : [near, near - STEP, near + STEP];
  const tried: Tried[] = [];
  for (const u of [...tries, 0, MOST_CLOSED, -MOST_CLOSED]) {
    const one = at(Math.min(MOST_CLOSED, Math.max(-MOST_CLOSED, u)));
    if (isMet(one.found, share)) return { hit: one.found };
    const other = tried.find(({ off }) => off < 0 !== one.off < 0);
    if (Number.isFinite(one.off)) {
      if (other) return { bracket: [other, one] };
      tried.push(one);
    }
  }
  return {};
}

/** How far the opening moves at the most between neighbors, as a rule. */
const STEP = 0.02;

const isMet = (found: Found | undefined, share: number): boolean =>
  found !== undefined && Math.abs((found.balance.answer.split ?? Number.NaN) - share) < MET;

function beyond({ balance: { answer } }: Found): number {
  const { flows } = answer;
  return Math.log(Math.max(NO_FLOW, flows['bottom feed']) / Math.max(NO_FLOW, flows['top feed']));
}

/** Where a valve was shut its feed stood; nothing is sought from there. */
const sameFeeds = (nearby: Found | undefined): Found | undefined =>
  nearby && nearby.bottom > 0 && nearby.top > 0 ? nearby : undefined;
