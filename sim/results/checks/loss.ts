import type { Balance } from '../../balance.ts';
import { areaAt } from '../../laws/storage.ts';
import { monthAt } from '../../network/clock.ts';
import { NONE } from '../../network/link.ts';
import { type Display, formatLength, formatVolume } from '../../quantity/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Check } from '../answer.ts';
import { type CheckInput, told } from './check.ts';

const DAY = 86400;
const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** What leaves the running site for good, m³/s. */
export interface Losses {
  readonly evaporation: number;
  readonly splash: number;
  readonly leak: number;
  /** Over rims and edges and down the overflow, in the balance itself. */
  readonly edges: number;
}

/** Losses of the running balance at a depth rate of evaporation, m/s. */
export function lossesOf(s: Scenario, { network, answer }: Balance, evaporation: number): Losses {
  const { surfaces, basins } = network.parts;
  const { flows, levels } = answer;
  const open = surfaces.reduce((sum, { link, cover, floor }) => {
    const { name, storage } = basins[link.from];
    return levels[name] > floor ? sum + (1 - cover) * areaAt(storage, levels[name]) : sum;
  }, 0);
  const stones = s.watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  const over = network.parts.crests.filter(({ link }) => link.to === NONE).map(({ name }) => flows[name]);
  return {
    evaporation: evaporation * open,
    splash: stones.reduce((sum, stone) => sum + stone.splash * Math.max(0, flows[stone.name]), 0),
    leak: flows.leak,
    edges: over.reduce((sum, flow) => sum + Math.max(0, flow), flows.overflow),
  };
}

/** Evaporation in the month of the start, m/s, and the greatest month's where it goes by months. */
function evaporationOf({ weather, starts }: Scenario): { now: number; most?: number; month?: string } {
  const { evaporation } = weather;
  if (typeof evaporation === 'number') return { now: evaporation };
  const most = Math.max(...evaporation);
  return { now: evaporation[monthAt(starts, 0)], most, month: MONTHS[evaporation.indexOf(most)] };
}

/** Normal loss of the running site: evaporation, splash and leaks a day, and what it is worth in level in a week. */
export function lossCheck({ scenario, balance }: CheckInput): Check | undefined {
  if (!balance) return undefined;
  const { display } = scenario;
  const rate = evaporationOf(scenario);
  const losses = lossesOf(scenario, balance, rate.now);
  const week = (7 * DAY * total(losses)) / waterTable(balance);
  const most = rate.most === undefined ? undefined : lossesOf(scenario, balance, rate.most);
  const worst =
    most === undefined
      ? ''
      : ` In ${rate.month} it would fall by ${formatLength((7 * DAY * total(most)) / waterTable(balance), display)}.`;
  return told({
    name: 'loss',
    value: week,
    unit: 'm',
    says: `${daySays(losses, display)}${week > 0 ? ` The pond falls by ${formatLength(week, display)} each week.` : ''}${worst} ${ruleSays(display)}`,
  });
}

function total({ evaporation, splash, leak, edges }: Losses): number {
  return evaporation + splash + leak + edges;
}

/** Open area of pond and vault, which fall together, m². */
function waterTable({ network, answer }: Balance): number {
  const { basins, pond, circuit } = network.parts;
  return [pond, circuit.vault].reduce((sum, i) => sum + areaAt(basins[i].storage, answer.levels[basins[i].name]), 0);
}

function daySays(losses: Losses, display: Display): string {
  const parts = [
    [losses.evaporation, 'to evaporation'],
    [losses.splash, 'to splash'],
    [losses.leak, 'through leaks'],
    [losses.edges, 'over edges'],
  ] as const;
  const named = parts.filter(([flow]) => flow > 0).map(([flow, how]) => `${formatVolume(flow * DAY, display)} ${how}`);
  if (named.length === 0) return 'Nothing is lost: the file gives no evaporation, splash or leak.';
  return `With the pump running the site loses ${named.join(', ')} a day.`;
}

function ruleSays(display: Display): string {
  const band = display === 'us' ? '1/2 to 1 1/2 in' : '13 to 38 mm';
  return (
    `Common practice takes ${band} a week as normal; a loss that comes only while the pump runs is lost upstairs, not in ` +
    'the pond.'
  );
}
