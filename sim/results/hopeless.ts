import type { Balance } from '../balance.ts';
import { holeFlow } from '../laws/orifice.ts';
import { pondInBalance } from '../network/start.ts';
import { formatHead, formatLevel, formatPercent } from '../quantity/index.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { RunAnswer } from './answer.ts';
import { lossesOf } from './checks/loss.ts';
import { openOutlets, shutOffHead } from './checks/reach.ts';

/** Less water than this is none, m³. */
const LITER = 1e-3;
/** From this share of the pumped water on a site loses 'nearly all' of it. */
const NEARLY_ALL = 0.9;

type Ran = Pick<RunAnswer, 'levels' | 'ledger'>;

/** Why a valid site can't work, in one sentence; undefined where it can. */
export function hopelessness(s: Scenario, balance: Balance | undefined, run: Ran): string | undefined {
  return noWater(run) ?? shut(s) ?? tooHigh(s) ?? underIntake(s) ?? lostOnTheWay(s, balance) ?? runsDry(s, run);
}

function noWater({ ledger }: Ran): string | undefined {
  const came = Object.values(ledger.in).reduce((sum, v) => sum + v, 0);
  if (ledger.stored.start + came >= LITER) return undefined;
  return 'There is no water on this site, and none comes in: fill the pond, or turn the hose on.';
}

function shut(s: Scenario): string | undefined {
  if (openOutlets(s).length > 0) return undefined;
  const { bottomFeed, topFeed } = s.plumbing;
  const valves = bottomFeed && topFeed ? 'Both valves are shut' : 'The only valve is shut';
  return `${valves}, so the pump moves no water.`;
}

function tooHigh(s: Scenario): string | undefined {
  const needs = Math.min(...openOutlets(s).map((outlet) => outlet.needs));
  const reaches = shutOffHead(s);
  if (reaches > needs) return undefined;
  return (
    `The pump can’t lift the water to any outlet: it reaches ${formatHead(reaches, s.display)} above the pond without ` +
    `flow, and the lowest needs ${formatHead(needs, s.display)}.`
  );
}

function underIntake(s: Scenario): string | undefined {
  const pond = pondInBalance(s);
  if (pond > s.intake.elevation) return undefined;
  return (
    `The pond at ${formatLevel(pond, s.display)} stands under its intake’s lip at ` +
    `${formatLevel(s.intake.elevation, s.display)}: no water reaches the pump.`
  );
}

function lostOnTheWay(s: Scenario, balance: Balance | undefined): string | undefined {
  if (!balance) return undefined;
  const { flows, levels } = balance.answer;
  const { splash, leak, edges } = lossesOf(s, balance, 0);
  const { leak: hole } = s.pond;
  const out = new Float64Array(2);
  if (hole) holeFlow(hole.area, levels.pond - hole.elevation, out);
  const over = Math.max(0, edges - flows.rim - flows.overflow);
  const through = Math.max(0, leak - out[0]);
  const lost = splash + over + through;
  if (flows.main <= 1e-9 || lost < NEARLY_ALL * flows.main) return undefined;
  const how = through >= over ? 'through leaks' : 'over edges';
  return `${formatPercent(Math.min(1, lost / flows.main))} of the water the pump lifts is lost on its way, most of it ${how}.`;
}

/** A pond that loses its water within the run itself. */
function runsDry(s: Scenario, { levels, ledger }: Ran): string | undefined {
  const { pond } = levels;
  const lip = s.intake.elevation;
  if (pond.start <= lip || pond.min.value > lip) return undefined;
  const ways = Object.entries(ledger.out).sort((a, b) => b[1] - a[1]);
  const [way, volume] = ways[0];
  if (way === 'pumpedOut') return undefined;
  const lost = volume > ledger.stored.start / 4 ? `, most of its water lost by ${WAYS[way] ?? way}` : '';
  return `Within the run the pond falls under its intake’s lip${lost}: the pump runs dry.`;
}

const WAYS: Readonly<Record<string, string>> = {
  leak: 'leaks',
  edges: 'edges of pools and streams',
  rim: 'its own edge',
  filterRim: 'the filter’s edge',
  overflow: 'the overflow pipe',
};
