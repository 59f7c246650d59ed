import { floorOf, leftBank, rightAt, rightBank, type Spot } from './cut.ts';
import type { FilterScene, Laid, PoolScene, StreamScene, Units } from './scene.ts';

/** The surface of the earth from left to right, and the runs of it that are liner. */
export interface EarthLine {
  readonly earth: readonly Spot[];
  readonly liner: readonly (readonly Spot[])[];
}

/** Draws the line under everything: ground, vessels and liners. */
export function earthLine(laid: Laid, right: number): EarthLine {
  const { filter, reaches, pond, vault, units } = laid;
  const ground = filter ? besideFilter(filter, units) : leftGround(laid);
  const liner: Spot[] = [];
  // Where water falls in from above, the liner goes on up to the stone it falls from.
  let from = filter || reaches.length === 0 ? undefined : lip(laid);
  reaches.forEach((reach) => {
    liner.push(
      ...(reach.kind === 'pool' ? underPool(reach, from, filter !== undefined, units) : underStream(reach, units)),
    );
    from = reach.under;
  });
  const edge = reaches.length === 0 ? pond.rim + 0.03 * units.v : pond.rim;
  liner.push(...upTo(leftBank(pond.cut, Math.max(pond.rim, floorOf(pond.cut))), Math.max(from ?? edge, edge)));
  liner.push(...rightBank(pond.cut, vault.lip));
  const outer = vault.cut.left - vault.wall;
  liner.push([outer, vault.lip]);
  const under = floorOf(vault.cut) - 0.06 * units.v;
  const far = vault.cut.left + vault.cut.width + vault.wall;
  const end: Spot[] = [
    [outer, under],
    [far, under],
    [far, pond.rim + 0.02 * units.v],
    [right, pond.rim - 0.02 * units.v],
  ];
  return { earth: [...ground, ...liner, ...end], liner: [liner] };
}

function lip({ reaches, units }: Laid): number {
  const first = reaches[0];
  return first.kind === 'pool' ? first.rim + 0.03 * units.v : first.reach.foot + first.reach.slope * first.reach.length;
}

/** The ground in which a filter's vessel stands, down its left side, under it and up to what comes next. */
function besideFilter({ cut, wall, brink }: FilterScene, { u, v }: Units): Spot[] {
  const floor = floorOf(cut);
  const side = floor + 0.72 * (brink.z - floor);
  const left = cut.left - wall;
  const right = cut.left + cut.width + wall;
  const under = floor - 0.07 * v;
  return [
    [0, side - 0.42 * (side - floor)],
    [0.35 * u, side - 0.32 * (side - floor)],
    [0.8 * u, side - 0.12 * (side - floor)],
    [left, side],
    [left, under],
    [right, under],
  ];
}

function leftGround({ reaches, pond, units }: Laid): Spot[] {
  const first = reaches[0];
  const z = first === undefined ? pond.rim : first.kind === 'pool' ? first.rim : headOf(first);
  const x = first === undefined ? pond.cut.left : first.kind === 'pool' ? first.cut.left : first.left;
  return [
    [0, z - 0.3 * units.v],
    [0.45 * x, z - 0.12 * units.v],
    [x - 0.02 * units.u, z],
  ];
}

const headOf = ({ reach }: StreamScene): number => reach.foot + reach.slope * reach.length;

function underPool(pool: PoolScene, from: number | undefined, afterFilter: boolean, { u }: Units): Spot[] {
  const top = from === undefined ? pool.rim : afterFilter ? Math.max(from, pool.under) : Math.max(from, pool.rim);
  const floor = floorOf(pool.cut);
  const bank = upTo(leftBank(pool.cut, Math.max(pool.rim, floor)), top);
  const under = Math.max(pool.under, floor);
  return [
    ...bank,
    ...rightBank(pool.cut, under),
    [Math.max(pool.brink.x - 0.36 * u, rightAt(pool.cut, under)), pool.under],
  ];
}

function underStream(stream: StreamScene, { u }: Units): Spot[] {
  const toe = stream.right - 0.42 * u;
  return [
    [stream.left, headOf(stream)],
    [toe, stream.reach.foot + stream.reach.slope * (stream.right - toe)],
    [toe + 0.03 * u, stream.under],
    [stream.right - 0.36 * u, stream.under],
  ];
}

/** A bank with its upper end taken to an elevation. */
function upTo(bank: readonly Spot[], top: number): Spot[] {
  return top > bank[0][1] ? [[bank[0][0], top], ...bank] : [...bank];
}
