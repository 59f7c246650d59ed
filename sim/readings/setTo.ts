import { formatLength, formatNumber, formatPercent, formatVolume } from '../quantity/index.ts';
import { RunFailure } from '../results/failure.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Edit } from './edits.ts';
import { whatWords } from './reading.ts';
import { tellHead } from './tell.ts';
import { type Turning, turningTo } from './turning.ts';
import { type Does, type Openings, Valves, withValves } from './valves.ts';

/** What is wanted of the water: how much of it goes up the bottom feed, and how deep it stands over a stone. */
export interface Wish {
  /** Share of the pump's flow that goes up the bottom feed (through the filter), 0..1; undefined: as it is now. */
  readonly share?: number | undefined;
  /** A stone's name, or 'lip'; undefined: the main stone, or the last crest there is. */
  readonly over?: string | undefined;
  /** Water over its lowest point, m; undefined: as much as the share allows. */
  readonly head?: number | undefined;
}

/** A valve's setting; `angle` of the handle from the pipe, degrees: 0 open, 90 shut. */
export interface Handle {
  readonly opening: number;
  readonly angle: number;
}

export interface ValveSetting extends Does, Pick<Turning, 'turns'> {
  readonly ok: true;
  /** Whether the wish is met; else this is the nearest to it. */
  readonly reached: boolean;
  readonly says: string;
  readonly over: string;
  readonly valves: { readonly bottom: Handle | undefined; readonly top: Handle | undefined };
  readonly share: number;
  /** Shares that the ruler leaves possible when the valves are turned by it. */
  readonly shareBand: readonly [low: number, high: number] | undefined;
  /** How fast the top feed fills a bucket at this setting; undefined where it does not run. What tells the split best. */
  readonly bucket: { readonly volume: number; readonly seconds: number; readonly says: string } | undefined;
  readonly scenario: Scenario;
  readonly edits: readonly Edit[];
}

export type SetTo = ValveSetting | { readonly ok: false; readonly says: string };

/** A wish is met within these: share of the flow, and m. */
const MET_SHARE = 1e-3;
const MET_HEAD = 5e-5;

/**
 * The two valves that bring about a wish, and how they are found by a ruler.
 *
 * The openings rest on a table that valves keep to a factor 2 of loss: what the ruler must show does not.
 */
export function setTo(s: Scenario, wish: Wish): SetTo {
  const over = wish.over ?? mainCrest(s);
  const fault = faultIn(s, wish, over);
  if (fault !== undefined || over === undefined) return { ok: false, says: fault ?? NOTHING_TO_READ };
  try {
    return found(s, wish, over);
  } catch (error) {
    if (!(error instanceof RunFailure)) throw error;
    return { ok: false, says: `The site finds no running balance: ${error.words}.` };
  }
}

const NOTHING_TO_READ = 'The site has neither a stone nor a filter’s lip to hold a ruler on.';

function mainCrest(s: Scenario): string | undefined {
  const stones = s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  const main = stones.find((stone) => stone.main) ?? stones.at(-1);
  return main?.name ?? (s.filter ? 'lip' : undefined);
}

function faultIn(s: Scenario, { share, head }: Wish, over: string | undefined): string | undefined {
  if (over === undefined) return NOTHING_TO_READ;
  if (share !== undefined && !(share >= 0 && share <= 1))
    return 'The share through the bottom feed is between none and all of the water: give it as 50 %.';
  if (head === undefined) return tellHead(s, over, 0);
  if (!(Number.isFinite(head) && head > 0))
    return `How deep the water is to stand over a stone is more than nothing: give it as ${formatLength(0.025, s.display)}.`;
  return tellHead(s, over, head);
}

function found(s: Scenario, wish: Wish, over: string): ValveSetting {
  const valves = new Valves(s);
  const { bottomFeed, topFeed } = s.plumbing;
  const share = shareOf(s, wish, valves);
  const openings = wish.head === undefined ? valves.widest(share) : valves.settingFor(share, over, wish.head);
  const does = valves.at(openings);
  const { turns, share: shareBand } = turningTo(s, valves, openings, over);
  const got = does.main > 0 ? does.bottom / does.main : 0;
  const misses = missesOf(s, wish, over, does, got);
  return {
    ok: true,
    ...does,
    reached: misses.length === 0,
    says: misses.join(' ') || (bottomFeed && topFeed ? 'Both valves can be set so.' : 'The valve can be set so.'),
    over,
    valves: { bottom: bottomFeed && handle(openings.bottom), top: topFeed && handle(openings.top) },
    share: got,
    shareBand,
    turns,
    bucket: bucketOf(s, openings, does),
    scenario: withValves(s, openings),
    edits: editsOf(s, openings),
  };
}

/** The share to aim at: the wished one, that of now, or what a single feed leaves no choice of. */
function shareOf({ plumbing: { bottomFeed, topFeed } }: Scenario, { share }: Wish, valves: Valves): number {
  if (!bottomFeed) return 0;
  if (!topFeed) return 1;
  if (share !== undefined) return share;
  const now = valves.at({ bottom: bottomFeed.valve, top: topFeed.valve });
  return now.main > 0 ? now.bottom / now.main : 1;
}

const handle = (opening: number): Handle => ({ opening, angle: 90 * (1 - opening) });

function missesOf(s: Scenario, { share, head }: Wish, over: string, does: Does, got: number): string[] {
  const misses: string[] = [];
  const { bottomFeed, topFeed } = s.plumbing;
  if (share !== undefined && Math.abs(share - got) > MET_SHARE) {
    const only = !bottomFeed ? ' There is no bottom feed.' : !topFeed ? ' There is no top feed.' : '';
    misses.push(
      `${formatPercent(share)} by the bottom feed can’t be had: the nearest is ${formatPercent(got)}.${only}`,
    );
  }
  if (head !== undefined && Math.abs(head - does.heads[over]) > MET_HEAD) {
    const length = (m: number): string => formatLength(m, s.display);
    const nearest = does.heads[over];
    const why =
      nearest < head ? 'the pump gives no more with that share' : 'with the valves all but shut it is still so much';
    misses.push(
      `${length(head)} as ${whatWords(`head ${over}`)} can’t be had: the nearest is ${length(nearest)}, ${why}.`,
    );
  }
  return misses;
}

/** A bucket that is neither full at once nor takes long to fill. */
const BUCKETS = { metric: 0.01, us: 5 * 0.003785411784 };

function bucketOf({ display }: Scenario, { bottom, top }: Openings, does: Does): ValveSetting['bucket'] {
  if (top === 0 || !(does.top > 0)) return undefined;
  const volume = BUCKETS[display];
  const seconds = volume / does.top;
  const shows = `The top feed then fills a bucket of ${formatVolume(volume, display)} in ${formatNumber(seconds, 1)} s`;
  const mend =
    'Where it is faster, close the top valve a little and open the bottom one until the stone shows the same again.';
  return { volume, seconds, says: bottom > 0 ? `${shows}. ${mend}` : `${shows}.` };
}

function editsOf({ plumbing: { bottomFeed, topFeed } }: Scenario, { bottom, top }: Openings): Edit[] {
  return [
    ...(bottomFeed ? [{ place: 'plumbing.bottomFeed.valve', value: bottom }] : []),
    ...(topFeed ? [{ place: 'plumbing.topFeed.valve', value: top }] : []),
  ];
}

/** A handle's angle in words: '36° from along the pipe'. */
export function angleWords({ angle }: Handle): string {
  if (angle < 0.5) return 'along the pipe (open)';
  return angle > 89.5 ? 'across the pipe (shut)' : `${formatNumber(angle)}° from along the pipe`;
}
