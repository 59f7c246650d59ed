import { pumpHead } from './laws/pump.ts';
import { criticalDepth, reachOfSheet } from './laws/sheet.ts';
import { assemble } from './network/assemble.ts';
import { porositiesAtStart } from './network/clogging.ts';
import type { Network } from './network/network.ts';
import { levelsOf, pondInBalance, settingsOf } from './network/start.ts';
import type { BalanceAnswer } from './results/answer.ts';
import { RunFailure } from './results/failure.ts';
import type { Crest, Scenario, Stone } from './scenario/scenario.ts';
import { steadyVolumes } from './steady.ts';

/** The running balance as the network stands in it: volumes, with flows and levels readable off the network. */
export interface Balance {
  readonly network: Network;
  readonly volumes: Float64Array;
  readonly answer: BalanceAnswer;
}

/**
 * The running balance of a site at once: the pump at its speed, the pond held at its level.
 *
 * @throws RunFailure where the water course does not settle
 */
export function balance(s: Scenario): BalanceAnswer {
  return balancesOf(s)(s).answer;
}

/** The running balance of a site, or why it has none. */
export function balanceOrFailure(s: Scenario): Balance | RunFailure {
  try {
    return balancesOf(s)(s);
  } catch (error) {
    if (error instanceof RunFailure) return error;
    throw error;
  }
}

/**
 * Running balances of a site at other settings of its pump and valves: its network is assembled once, and put into each.
 *
 * @returns takes the site at a setting, and volumes of a balance with much the same settings, from which it is sought;
 * throws RunFailure where the water course does not settle
 */
export function balancesOf(site: Scenario): (at: Scenario, nearby?: Float64Array) => Balance {
  const network = assemble(site);
  const pond = pondInBalance(site);
  return (at, nearby) => findBalance(at, network, pond, nearby);
}

/**
 * The running balance at a pond level, m, by a network that is put into it.
 *
 * @param nearby volumes of a balance with much the same settings, from which it is sought
 */
export function findBalance(s: Scenario, network: Network, pondLevel: number, nearby?: Float64Array): Balance {
  const { speed } = s.pump;
  const volumes = steadyVolumes(s, network, settingsOf(s, network, speed), pondLevel, nearby);
  network.rates(0, volumes, new Float64Array(network.size), new Float64Array(network.quadratures));
  return { network, volumes, answer: answerIn(s, network, volumes, speed) };
}

/** Below this a flow counts as none in a share, m³/s. */
const NO_FLOW = 1e-9;

function answerIn(s: Scenario, network: Network, volumes: Float64Array, speed: number): BalanceAnswer {
  const { basins, flowNames, circuit } = network.parts;
  const level = levelsOf(network, volumes);
  const levels = Object.fromEntries(basins.map((b, i) => [b.name, level[i]]));
  const flows = Object.fromEntries(flowNames.map((name, i) => [name, network.flow[i]]));
  const main = flows.main;
  const up = flows['bottom feed'] ?? 0;
  const { feeds } = circuit;
  const media = feeds.hasMedia;
  return {
    title: s.title,
    levels,
    flows,
    split: main > NO_FLOW ? up / main : null,
    channeled: media && up > NO_FLOW ? flows.gap / up : null,
    stones: stonesOf(s, levels, flows),
    duty: dutyOf(network, flows, speed),
    contact: contactOf(s, levels.filter, flows.media),
    mediaHead: media ? network.mediaHead : null,
    lift: media ? network.mediaHead / feeds.liftHead : null,
  };
}

/** Whole width of a crest, m. */
export function crestWidth(crest: Crest['crest']): number {
  return crest[crest.length - 1][0] - crest[0][0];
}

function stonesOf(s: Scenario, levels: Record<string, number>, flows: Record<string, number>): BalanceAnswer['stones'] {
  const stones: BalanceAnswer['stones'] = {};
  for (const reach of s.watercourse) {
    if (reach.kind !== 'pool') continue;
    const whole = reach.stones.reduce((sum, stone) => sum + flows[stone.name], 0);
    for (const stone of reach.stones) stones[stone.name] = stoneIn(stone, levels[reach.name], flows[stone.name], whole);
  }
  return stones;
}

function stoneIn(stone: Stone, level: number, flow: number, whole: number): BalanceAnswer['stones'][string] {
  const width = crestWidth(stone.crest) * (1 - stone.blockage);
  const perWidth = width > 0 ? Math.max(0, flow) / width : 0;
  return {
    share: whole > NO_FLOW ? flow / whole : 0,
    head: Math.max(0, level - Math.min(...stone.crest.map(([, z]) => z))),
    criticalDepth: criticalDepth(perWidth),
    reach: reachOfSheet(perWidth, stone.fall),
  };
}

function dutyOf(network: Network, flows: Record<string, number>, speed: number): BalanceAnswer['duty'] {
  const { main, feeds } = network.parts.circuit;
  const out = new Float64Array(3);
  pumpHead(main.curve, Math.max(0, flows.main), speed, main.standing, out);
  const velocity = (name: string, area: number | undefined): number => (area ? (flows[name] ?? 0) / area : 0);
  return {
    flow: flows.main,
    head: out[0],
    power: main.power,
    velocity: {
      main: velocity('main', main.pipe.area),
      'bottom feed': velocity('bottom feed', feeds.bottomPipe?.area),
      'top feed': velocity('top feed', feeds.topPipe?.area),
    },
  };
}

/** Empty bed and pore contact time of the media under water, s: A L/Q and ε A L/Q of what goes through, ε what the deposit leaves. */
function contactOf({ filter }: Scenario, level: number, flow: number | undefined): BalanceAnswer['contact'] {
  const media = filter?.media;
  if (!media || flow === undefined || flow <= NO_FLOW) return null;
  const porosity = porositiesAtStart(filter);
  let [z, bed, pores] = [media.bottom, 0, 0];
  media.layers.forEach(({ thickness }, i) => {
    const wet = media.area * Math.min(thickness, Math.max(0, level - z));
    bed += wet;
    pores += wet * porosity[i];
    z += thickness;
  });
  return { emptyBed: bed / flow, pore: pores / flow };
}
