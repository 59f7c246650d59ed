import type { Balance } from '../../balance.ts';
import { type Pipe, pipeLoss } from '../../laws/pipe.ts';
import { type Display, formatHead, formatSpeed } from '../../quantity/index.ts';
import { boreOf, PIPE_SIZES } from '../../scenario/pipe-sizes.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Check, Verdict } from '../answer.ts';
import { type CheckInput, judgeAtMost, judged, type Marks, originWords } from './check.ts';
import { balanceOf } from './variants.ts';

/** Swimming-pool practice for return lines: 8 ft/s, rounded, m/s. */
export const FASTEST = 2.4;

type Run = 'main' | 'bottom feed' | 'top feed';
const KEYS = { main: 'main', 'bottom feed': 'bottomFeed', 'top feed': 'topFeed' } as const;
const NAMES = { main: 'main line', 'bottom feed': 'bottom feed', 'top feed': 'top feed' } as const;

interface Place {
  readonly run: Run;
  readonly velocity: number;
  readonly loss: number;
  readonly verdict: Verdict;
}

/** How fast the water runs in main line and feeds, and the head it costs. */
export function velocityCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance) return undefined;
  const given = scenario.limits.velocity;
  const limit = given ?? FASTEST;
  const marks: Marks = { fail: limit, pass: limit, origin: given === undefined ? 'common practice' : 'file' };
  const places = placesOf(balance, marks).sort((a, b) => b.velocity - a.velocity);
  const [worst, ...others] = places;
  const { display } = scenario;
  return judged({
    name: 'velocity',
    verdict: worst.verdict,
    value: worst.velocity,
    limit,
    margin: limit - worst.velocity,
    unit: 'm/s',
    origin: marks.origin,
    says: `${placeSays(worst, display)} ${limitSays(marks, display)}`,
    mend: worst.verdict === 'fail' ? mendFor(scenario, worst.run, limit) : '',
    places: others.map((p) => ({
      name: NAMES[p.run],
      verdict: p.verdict,
      value: p.velocity,
      says: placeSays(p, display),
    })),
  });
}

function placesOf({ answer, network }: Balance, marks: Marks): Place[] {
  const { main, feeds } = network.parts.circuit;
  const pipes: [Run, Pipe | undefined][] = [
    ['main', main.pipe],
    ['bottom feed', feeds.bottomPipe],
    ['top feed', feeds.topPipe],
  ];
  const loss = new Float64Array(2);
  return pipes.flatMap(([run, pipe]): Place[] => {
    if (pipe === undefined) return [];
    const velocity = Math.abs(answer.duty.velocity[run]);
    if (velocity > 0) pipeLoss(pipe, velocity * pipe.area, 0, loss);
    return [{ run, velocity, loss: velocity > 0 ? loss[0] : 0, verdict: judgeAtMost(velocity, 0, marks) }];
  });
}

function placeSays({ run, velocity, loss }: Place, display: Display): string {
  return `Water runs at ${formatSpeed(velocity, display)} in the ${NAMES[run]}, which costs ${formatHead(loss, display)} of head.`;
}

function limitSays({ fail, origin }: Marks, display: Display): string {
  if (origin === 'file') return `At most ${formatSpeed(fail, display)} (${originWords(origin)}).`;
  const [most, quiet] = display === 'us' ? ['8 ft/s', '5 to 6.5 ft/s'] : ['2.4 m/s', '1.5 to 2 m/s'];
  return `At most ${most} (swimming-pool practice for return lines); ${quiet} is quieter.`;
}

/** The least nominal size that keeps the limit, with the velocity the balance gives it. */
function mendFor(s: Scenario, run: Run, limit: number): string {
  const key = KEYS[run];
  const present = s.plumbing[key];
  if (!present) return '';
  const unit = s.display === 'us' ? 'in' : 'mm';
  for (const size of PIPE_SIZES.filter((name) => name.endsWith(unit))) {
    const diameter = boreOf(size) ?? 0;
    if (diameter <= present.diameter) continue;
    const wider: Scenario = { ...s, plumbing: { ...s.plumbing, [key]: { ...present, diameter } } };
    const velocity = balanceOf(wider)?.answer.duty.velocity[run];
    if (velocity === undefined || Math.abs(velocity) > limit) continue;
    return `Lay the ${NAMES[run]} as ${size} pipe: its water then runs at ${formatSpeed(Math.abs(velocity), s.display)}.`;
  }
  return '';
}
