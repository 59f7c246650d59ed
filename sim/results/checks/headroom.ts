import type { Balance } from '../../balance.ts';
import { formatFlow, formatLength } from '../../quantity/index.ts';
import type { Pool, Scenario, Stream } from '../../scenario/scenario.ts';
import type { Check, Verdict } from '../answer.ts';
import {
  type CheckInput,
  called,
  judgeAtLeast,
  judged,
  type Marks,
  originWords,
  waysSentence,
  worse,
} from './check.ts';
import { balanceOf, flowThat, lowestOf, raise, rulerStep } from './variants.ts';

/** Our default marks, m. */
const FAIL = 0.01;
const PASS = 0.025;
/** A lip half blocked by leaves needs 2^⅔ of its head, 0.587 more. */
const HALF_BLOCKED = 0.6;
/** A pump brought down to less than this share of its flow makes no waterfall. */
const LEAST_FLOW = 0.1;
/** Up to here an edge is raised to learn how high the water would stand, m. */
const OUT_OF_REACH = 1;

export interface Headroom {
  readonly name: string;
  /** Lowest point of the edge less the level, m. */
  readonly room: number;
  readonly marks: Marks;
  readonly verdict: Verdict;
}

/** Room between the water and the edges of filter, pools and streams with the pump running. */
export function headroomCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance) return undefined;
  const places = headrooms(scenario, balance).sort(byWorst);
  const worst = places[0];
  if (!worst) return undefined;
  return judged({
    name: 'headroom',
    verdict: worst.verdict,
    value: worst.room,
    limit: worst.marks.fail,
    margin: worst.room - worst.marks.fail,
    unit: 'm',
    origin: worst.marks.origin,
    says: `${placeSays(worst, scenario)} ${limitSays(worst.marks, scenario)}`,
    mend: worst.verdict === 'pass' ? '' : mendFor(scenario, worst),
    places: places
      .slice(1)
      .map((p) => ({ name: p.name, verdict: p.verdict, value: p.room, says: placeSays(p, scenario) })),
  });
}

function byWorst(a: Headroom, b: Headroom): number {
  if (a.verdict !== b.verdict) return worse(a.verdict, b.verdict) === a.verdict ? -1 : 1;
  return a.room - a.marks.pass - (b.room - b.marks.pass);
}

/** Room below every edge of a balance. */
export function headrooms(s: Scenario, { answer }: Balance): Headroom[] {
  const place = (name: string, edge: number, lowestWay: number): Headroom => {
    const level = answer.levels[name];
    const room = edge - level;
    const marks = marksFor(s, Math.max(0, level - lowestWay));
    return { name, room, marks, verdict: judgeAtLeast(room, 0, marks) };
  };
  const filter = s.filter ? [place('filter', lowestOf(s.filter.rim.crest), lowestOf(s.filter.lip.crest))] : [];
  const reaches = s.watercourse.flatMap((reach) => {
    if (reach.kind === 'pool') {
      const lowestStone = Math.min(...reach.stones.map((stone) => lowestOf(stone.crest)));
      return [place(reach.name, lowestOf(reach.rim.crest), lowestStone)];
    }
    return reach.edge ? [place(reach.name, reach.foot + reach.edge.height, reach.foot)] : [];
  });
  return [...filter, ...reaches];
}

function marksFor(s: Scenario, head: number): Marks {
  const given = s.limits.headroom;
  if (given) return { fail: given[0], pass: given[1], origin: 'file' };
  return { fail: FAIL, pass: Math.max(PASS, HALF_BLOCKED * head), origin: 'our default' };
}

function placeSays({ name, room }: Headroom, { display }: Scenario): string {
  const what = called(name);
  return room < 0
    ? `${what.charAt(0).toUpperCase()}${what.slice(1)} runs over: its water stands ${formatLength(-room, display)} above its edge.`
    : `The water of ${what} stands ${formatLength(room, display)} below its edge.`;
}

function limitSays({ fail, pass, origin }: Marks, { display }: Scenario): string {
  const why = origin === 'our default' && pass > PASS ? ', so that it holds with half its way out blocked' : '';
  return (
    `Wanted: ${formatLength(fail, display)} at the least, ${formatLength(pass, display)} better${why} ` +
    `(${originWords(origin)}).`
  );
}

function mendFor(s: Scenario, { name }: Headroom): string {
  const { display } = s;
  const ways: string[] = [];
  const high = balanceOf(withEdgeRaised(s, name, OUT_OF_REACH));
  const free = high && headrooms(withEdgeRaised(s, name, OUT_OF_REACH), high).find((p) => p.name === name);
  if (free) {
    const step = rulerStep(display);
    const by = Math.ceil((free.marks.pass - (free.room - OUT_OF_REACH)) / step - 1e-9) * step;
    ways.push(`raise the edge of ${called(name)} by ${formatLength(by, display)}`);
  }
  const flow = flowThat(s, (changed, balance) =>
    headrooms(changed, balance).some((p) => p.name === name && p.room >= p.marks.pass),
  );
  const now = balanceOf(s)?.answer.duty.flow;
  if (flow !== undefined && now !== undefined && flow > LEAST_FLOW * now)
    ways.push(`bring the pump down from ${formatFlow(now, display)} to ${formatFlow(flow, display, now)}`);
  return waysSentence(ways);
}

function withEdgeRaised(s: Scenario, name: string, by: number): Scenario {
  if (name === 'filter' && s.filter) return { ...s, filter: { ...s.filter, rim: raise(s.filter.rim, by) } };
  return { ...s, watercourse: s.watercourse.map((reach) => (reach.name === name ? raised(reach, by) : reach)) };
}

function raised(reach: Pool | Stream, by: number): Pool | Stream {
  if (reach.kind === 'pool') return { ...reach, rim: raise(reach.rim, by) };
  return { ...reach, edge: reach.edge && { ...reach.edge, height: reach.edge.height + by } };
}
