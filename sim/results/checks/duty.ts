import { formatFlow, formatHead, formatNumber } from '../../quantity/index.ts';
import type { Pump, Scenario } from '../../scenario/scenario.ts';
import type { Check } from '../answer.ts';
import { drivenWords } from '../asSet.ts';
import { type CheckInput, judged } from './check.ts';
import { balanceOf, leastSteps } from './variants.ts';

/** Step and number of steps in which a throttle on the main is looked for, − on its velocity head. */
const THROTTLE = 0.25;
const MOST_THROTTLED = 400;

/** Flow of the last point a pump's curve is drawn through, m³/s, at its speed: the most its box promises. */
export function lastPoint({ curve, speed }: Pump): number {
  return speed * (curve.kind === 'box' ? curve.flow : curve.points[curve.points.length - 1][0]);
}

/** Flow and head of the pump against the points its curve is drawn through. */
export function dutyCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance) return undefined;
  const { flow, head, power } = balance.answer.duty;
  const { display, pump } = scenario;
  const last = lastPoint(pump);
  const beyond = flow > last;
  const driven = drivenWords(scenario);
  const slowed = driven && ` at ${driven}`;
  const points = `${pump.curve.kind === 'box' ? 'the most its box promises' : 'the last point of its curve'}${slowed}`;
  const watts = pump.power === undefined ? '' : `, drawing ${formatNumber(power)} W`;
  const drawn =
    pump.curve.kind === 'box' ? ' A curve drawn from the box’s two figures is good to 12 % of the head.' : '';
  return judged({
    name: 'duty',
    verdict: beyond ? 'fail' : 'pass',
    value: flow,
    limit: last,
    margin: last - flow,
    unit: 'm3/s',
    origin: 'our default',
    says:
      `The pump gives ${formatFlow(flow, display)} at ${formatHead(head, display)} of head${watts}; ` +
      `${formatFlow(last, display)} is ${points}.${beyond ? ' Beyond it the curve is only guessed.' : drawn}`,
    mend: beyond ? mendFor(scenario, last) : '',
  });
}

/** A throttle on the main that brings the flow back to the last point. */
function mendFor(s: Scenario, last: number): string {
  const throttled = (steps: number): Scenario => {
    const { main } = s.plumbing;
    return { ...s, plumbing: { ...s.plumbing, main: { ...main, k: main.k + steps * THROTTLE } } };
  };
  const flowAt = (steps: number): number | undefined => balanceOf(throttled(steps))?.answer.duty.flow;
  const steps = leastSteps((n) => (flowAt(n) ?? Number.POSITIVE_INFINITY) <= last, MOST_THROTTLED);
  const flow = steps === undefined ? undefined : flowAt(steps);
  if (steps === undefined || flow === undefined) return 'Ask the maker for the curve beyond its last point.';
  return (
    `Ask the maker for the curve beyond its last point, or throttle the main line (K ${formatNumber(steps * THROTTLE, 1)} ` +
    `more): it then runs at ${formatFlow(flow, s.display)}.`
  );
}
