import { formatLength } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { RULER, whatWords } from './reading.ts';
import type { Does, Openings, Valves } from './valves.ts';

/** One turn of a handle and what a ruler must show after it. */
export interface Turn {
  readonly valve: 'bottom feed' | 'top feed';
  readonly does: 'open fully' | 'shut' | 'turn';
  /** Water over the filter's lip ('lip') and each stone after the turn, m; undefined where the turn is not one to be read by. */
  readonly heads: Readonly<Record<string, number>> | undefined;
  readonly says: string;
}

export interface Turning {
  readonly turns: readonly Turn[];
  /** Share that goes up the bottom feed when the ruler is off by ± 2 mm at either turn; undefined with one feed. */
  readonly share: readonly [low: number, high: number] | undefined;
}

type Order = 'bottom feed' | 'top feed';

/**
 * How a setting is found by a ruler, whatever the handles' table is worth: one valve is set while the other is shut, by the
 * water that this one alone brings over a stone, then the other is opened until the stone shows all of it. Of the two
 * orders it takes the one that leaves the split less in doubt.
 */
export function turningTo(s: Scenario, valves: Valves, to: Openings, over: string): Turning {
  const all = valves.at(to);
  const say = sayer(s, over);
  if (to.bottom === 0 || to.top === 0) return oneValve(s, to, all, say);
  const orders = (['bottom feed', 'top feed'] as const).map((first) => ({
    first,
    share: doubt(valves, to, all, over, first),
  }));
  const width = ({ share: [low, high] }: { share: readonly [number, number] }): number => high - low;
  const { first, share } = orders.reduce((best, each) => (width(each) < width(best) - 1e-9 ? each : best));
  return { turns: twoValves(valves, to, all, say, first), share };
}

type Say = (valve: Order, does: Turn['does'], heads?: Does['heads']) => Turn;

function sayer(s: Scenario, over: string): Say {
  return (valve, does, heads) => {
    const shows = heads && `${whatWords(`head ${over}`)} is ${formatLength(heads[over], s.display)}`;
    if (does === 'shut') return { valve, does, heads, says: `Shut the valve of the ${valve}.` };
    if (does === 'open fully') {
      const then = shows === undefined ? '' : `: ${shows} then`;
      return { valve, does, heads, says: `Open the valve of the ${valve} fully${then}.` };
    }
    return { valve, does, heads, says: `Turn the valve of the ${valve} until ${shows}; wait until it stands.` };
  };
}

function oneValve(s: Scenario, to: Openings, all: Does, say: Say): Turning {
  const [open, shut] = to.top === 0 ? (['bottom feed', 'top feed'] as const) : (['top feed', 'bottom feed'] as const);
  const hasOther = shut === 'top feed' ? s.plumbing.topFeed : s.plumbing.bottomFeed;
  const last = say(open, Math.max(to.bottom, to.top) === 1 ? 'open fully' : 'turn', all.heads);
  return { turns: hasOther ? [say(shut, 'shut'), last] : [last], share: undefined };
}

function alone(to: Openings, first: Order): Openings {
  return first === 'bottom feed' ? { bottom: to.bottom, top: 0 } : { bottom: 0, top: to.top };
}

function twoValves(valves: Valves, to: Openings, all: Does, say: Say, first: Order): Turn[] {
  const second = first === 'bottom feed' ? 'top feed' : 'bottom feed';
  const openOf = (valve: Order): number => (valve === 'bottom feed' ? to.bottom : to.top);
  const does = (valve: Order): Turn['does'] => (openOf(valve) === 1 ? 'open fully' : 'turn');
  return [
    say(second, 'shut'),
    say(first, does(first), valves.at(alone(to, first)).heads),
    say(second, does(second), all.heads),
  ];
}

/** Shares that a ruler off by ± 2 mm may leave, the valves being turned in this order. */
function doubt(valves: Valves, to: Openings, all: Does, over: string, first: Order): readonly [number, number] {
  const head = valves.at(alone(to, first)).heads[over];
  const shareOf = ({ bottom, main }: Does): number => bottom / main;
  // A stone that this valve alone leaves dry tells nothing of it.
  if (!(head > RULER)) return [0, 1];
  const opening = first === 'bottom feed' ? to.bottom : to.top;
  const shares = [-RULER, RULER].map((off) => {
    if (first === 'bottom feed') {
      const bottom = opening === 1 ? 1 : valves.openBottom(0, over, head + off);
      return shareOf(valves.at({ bottom, top: valves.openTop(bottom, over, all.heads[over] - off) }));
    }
    const top = opening === 1 ? 1 : valves.openTop(0, over, head + off);
    return shareOf(valves.at({ bottom: valves.openBottom(top, over, all.heads[over] - off), top }));
  });
  const own = shareOf(all);
  return [Math.min(own, ...shares), Math.max(own, ...shares)];
}
