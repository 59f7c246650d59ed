import { headrooms } from '../results/checks/headroom.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { MapPoint } from './answer.ts';
import { marginsOf } from './margins.ts';
import { type Found, siteAt } from './seeker.ts';

/** The stone whose flow is mapped: the main one, else the last there is. */
export function mainStone({ watercourse }: Scenario): string | null {
  const stones = watercourse.flatMap((reach) => (reach.kind === 'pool' ? reach.stones : []));
  return (stones.find((stone) => stone.main) ?? stones.at(-1))?.name ?? null;
}

/** A balance as a point of the map. */
export function pointOf(s: Scenario, over: string | null, x: number, y: number, found: Found): MapPoint {
  const { balance, bottom, top, speed } = found;
  const { answer } = balance;
  const site = siteAt(s, found);
  const margins = marginsOf(site, balance);
  const rooms = headrooms(site, balance).map(({ room }) => room);
  return {
    x,
    y,
    bottom,
    top,
    speed,
    found: true,
    flow: answer.flows.main,
    split: answer.split,
    channeled: answer.channeled,
    lift: answer.lift,
    emptyBed: answer.contact?.emptyBed ?? null,
    pore: answer.contact?.pore ?? null,
    headroom: rooms.length > 0 ? Math.min(...rooms) : null,
    stone: over === null ? null : answer.flows[over],
    margin: Math.min(...margins.map(({ margin }) => margin)),
    fails: margins.find(({ margin }) => margin < 0)?.check ?? null,
  };
}

/** A point where the site has no balance, or no setting does what is asked. */
export const blank = (x: number, y: number, speed: number): MapPoint => ({
  x,
  y,
  bottom: null,
  top: null,
  speed,
  found: false,
  flow: null,
  split: null,
  channeled: null,
  lift: null,
  emptyBed: null,
  pore: null,
  headroom: null,
  stone: null,
  margin: null,
  fails: null,
});
