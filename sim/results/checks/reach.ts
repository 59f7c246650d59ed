import type { Balance } from '../../balance.ts';
import { pondInBalance } from '../../network/start.ts';
import { type Display, formatHead, formatPercent } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Check, Verdict } from '../answer.ts';
import { type CheckInput, judgeAtLeast, judged, worse } from './check.ts';
import { balanceOf, leastSteps, lowestOf } from './variants.ts';

/** A curve drawn through the box's two figures is good to this share of its head. */
const BOX_BAND = 0.12;
/** Valves are turned by this much to find a setting, − of their opening. */
const TURN = 0.05;

/** An open outlet of the pipework: what the pump must lift above the pond for water to come out of it, m. */
export interface Outlet {
  readonly name: 'bottom feed' | 'top feed';
  readonly needs: number;
}

/** Head of the pump without flow at its speed, m. */
export function shutOffHead({ pump: { curve, speed } }: Scenario): number {
  return speed ** 2 * (curve.kind === 'box' ? curve.head : curve.points[0][1]);
}

/** The outlets whose valves are open, with the heads they need above the pond of the balance. */
export function openOutlets(s: Scenario): Outlet[] {
  const { bottomFeed, topFeed, tee } = s.plumbing;
  const pond = pondInBalance(s);
  const outlets: Outlet[] = [];
  if (bottomFeed && bottomFeed.valve > 0)
    outlets.push({ name: 'bottom feed', needs: Math.max(tee, bottomFeed.inlet, standingAtBottom(s)) - pond });
  if (topFeed && topFeed.valve > 0) outlets.push({ name: 'top feed', needs: Math.max(tee, topFeed.outlet) - pond });
  return outlets;
}

/** Level up to which the basin of the bottom feed fills before it passes anything on, m. */
function standingAtBottom(s: Scenario): number {
  if (s.filter) return lowestOf(s.filter.lip.crest);
  const first = s.watercourse[0];
  if (!first) return pondInBalance(s);
  if (first.kind === 'stream') return first.foot + first.slope * first.length;
  return Math.min(...first.stones.map((stone) => lowestOf(stone.crest)));
}

/** Whether the pump lifts the water to the outlets, and whether water then comes out of each. */
export function reachCheck({ scenario, balance }: CheckInput): Check | undefined {
  const outlets = openOutlets(scenario);
  const { display } = scenario;
  const reaches = shutOffHead(scenario);
  const band = scenario.pump.curve.kind === 'box' ? BOX_BAND * reaches : 0;
  const places = outlets
    .map(({ name, needs }) => {
      const lifts = judgeAtLeast(reaches, band, { fail: needs, pass: needs, origin: 'our default' });
      const dry = lifts !== 'fail' && balance !== undefined && isDry(balance, name);
      const verdict: Verdict = dry ? 'tight' : lifts;
      return { name, needs, verdict, dry };
    })
    .sort((a, b) => (a.verdict === b.verdict ? b.needs - a.needs : worse(a.verdict, b.verdict) === a.verdict ? -1 : 1));
  const worst = places[0];
  if (!worst) return undefined;
  return judged({
    name: 'reach',
    verdict: worst.verdict,
    value: reaches,
    limit: worst.needs,
    margin: reaches - worst.needs,
    band,
    unit: 'm',
    origin: 'our default',
    says: placeSays(worst, reaches, display),
    mend: mendFor(scenario, worst, reaches),
    places: places.slice(1).map((p) => ({
      name: p.name,
      verdict: p.verdict,
      value: reaches,
      says: placeSays(p, reaches, display),
    })),
  });
}

function isDry({ answer }: Balance, name: Outlet['name']): boolean {
  return answer.flows.main > 1e-9 && answer.flows[name] <= 1e-9;
}

interface Place extends Outlet {
  readonly verdict: Verdict;
  readonly dry: boolean;
}

function placeSays({ name, needs, verdict, dry }: Place, reaches: number, display: Display): string {
  const heads = `reaches ${formatHead(reaches, display)} above the pond without flow, needs ${formatHead(needs, display)}`;
  if (verdict === 'fail') return `The pump does not lift to the outlet of the ${name}: it ${heads}.`;
  if (dry) return `The pump lifts to the outlet of the ${name} (it ${heads}), but with these valves it runs dry.`;
  const doubt = verdict === 'tight' ? ' A curve drawn from the box’s two figures is good to 12 % of that.' : '';
  return `The pump lifts to the outlet of the ${name}: it ${heads}.${doubt}`;
}

/** A head to ask of another pump, or the bottom valve's opening at which the top feed runs. */
function mendFor(s: Scenario, worst: Place, reaches: number): string {
  if (worst.verdict === 'pass') return '';
  if (!worst.dry) {
    const more = formatHead(worst.needs - (reaches - (worst.verdict === 'tight' ? BOX_BAND * reaches : 0)), s.display);
    const { speed } = s.pump;
    const atFull = reaches / speed ** 2;
    if (speed < 1 && atFull > worst.needs)
      return `Drive the pump faster than ${formatPercent(Math.sqrt(worst.needs / atFull))} of its full speed, and faster by what the pipe costs.`;
    return `A pump that lifts more than ${more} higher, besides what the pipe costs.`;
  }
  const { bottomFeed } = s.plumbing;
  if (worst.name !== 'top feed' || !bottomFeed) return '';
  const turned = (steps: number): Scenario => {
    const valve = Math.max(0, bottomFeed.valve - steps * TURN);
    return { ...s, plumbing: { ...s.plumbing, bottomFeed: { ...bottomFeed, valve } } };
  };
  const runs = (steps: number): boolean => (balanceOf(turned(steps))?.answer.flows['top feed'] ?? 0) > 1e-6;
  const steps = leastSteps(runs, Math.ceil(bottomFeed.valve / TURN) - 1);
  if (steps === undefined) return '';
  const opening = Math.max(0, bottomFeed.valve - steps * TURN);
  return `Turn the handle of the bottom valve to ${Math.round(90 * (1 - opening))}° closed: the top feed then runs.`;
}
