import type { Scenario } from '../../sim/scenario/scenario.ts';
import { type Cut, floorOf, leftAt, type Spot, widthAt } from './cut.ts';
import type { Laid, PipeRoute, PipeScene } from './scene.ts';

/** Lays the main line out of the vault, under everything and up to the tee, and the feeds from there. */
export function layPipes(laid: Laid): PipeScene {
  const { scenario: s, units, pond, vault, riser } = laid;
  const { u, v } = units;
  const vaultFloor = floorOf(vault.cut);
  const depth = pond.rim - vaultFloor;
  const pumpX = vault.cut.left + 0.42 * vault.cut.width;
  const pumpTop = Math.min(s.pump.suction + 0.3 * depth, pond.rim - 0.5 * depth);
  const out = pond.rim - 0.22 * depth;
  const tee: Spot = [riser, s.plumbing.tee];
  const floors = laid.reaches.map((r) => (r.kind === 'pool' ? floorOf(r.cut) : r.under));
  const low = Math.min(vaultFloor, floorOf(pond.cut), s.plumbing.tee - 0.1 * v, ...floors) - 0.24 * v;
  const right = vault.cut.left + vault.cut.width + vault.wall + 0.3 * u;
  const main: Spot[] = [[pumpX, pumpTop], [pumpX, out], [right, out], [right, low], [riser, low], tee];
  const bottomFeed = s.plumbing.bottomFeed && layBottom(laid, s.plumbing.bottomFeed, tee);
  const topFeed = s.plumbing.topFeed && layTop(laid, s.plumbing.topFeed, tee);
  const spots = [...(bottomFeed?.spots ?? []), ...(topFeed?.spots ?? []), tee];
  return {
    main: {
      name: 'main',
      place: 'plumbing.main',
      spots: main,
      diameter: s.plumbing.main.diameter,
      valve: undefined,
      valveUpright: false,
    },
    bottomFeed,
    topFeed,
    tee,
    pump: { x: pumpX, suction: s.pump.suction, top: pumpTop },
    checkValve: [pumpX, pumpTop + 0.55 * (out - pumpTop)],
    bottomTo: bottomBasin(s),
    topTo: topBasin(s),
    low,
    top: Math.max(...spots.map(([, z]) => z)),
  };
}

/** The basin under whose water the bottom feed ends: the filter, else the first pool, else the pond. */
export function bottomBasin(s: Scenario): string {
  if (s.filter) return 'filter';
  return s.watercourse.find((r) => r.kind === 'pool')?.name ?? 'pond';
}

export function topBasin(s: Scenario): string {
  const to = s.plumbing.topFeed?.to ?? 'filter';
  return to === 'filter' && !s.filter ? bottomBasin(s) : to;
}

/** Where a basin stands in the order of the way, and its cut; a stream has a bed instead. */
function basinCut(laid: Laid, name: string): { order: number; cut: Cut | undefined; left: number; rim: number } {
  const { filter, reaches, pond } = laid;
  if (name === 'filter' && filter) return { order: -1, cut: filter.cut, left: filter.cut.left, rim: filter.rim };
  const order = reaches.findIndex(({ reach }) => reach.name === name);
  const found = reaches[order];
  if (!found) return { order: reaches.length, cut: pond.cut, left: pond.cut.left, rim: pond.rim };
  if (found.kind === 'pool') return { order, cut: found.cut, left: found.cut.left, rim: found.rim };
  return { order, cut: undefined, left: found.left, rim: found.reach.foot + found.reach.slope * found.reach.length };
}

function layBottom(laid: Laid, feed: NonNullable<Scenario['plumbing']['bottomFeed']>, tee: Spot): PipeRoute {
  const { u, v } = laid.units;
  const { cut, left } = basinCut(laid, bottomBasin(laid.scenario));
  const end = (cut ? leftAt(cut, feed.inlet) : left) + 0.1 * u;
  const jog = tee[0] + 0.22 * u;
  const straight = Math.abs(feed.inlet - tee[1]) < 1e-6 * v;
  const spots: Spot[] = straight
    ? [tee, [end, feed.inlet]]
    : [tee, [jog, tee[1]], [jog, feed.inlet], [end, feed.inlet]];
  return {
    name: 'bottom feed',
    place: 'plumbing.bottomFeed',
    spots,
    diameter: feed.diameter,
    valve: [tee[0] + 0.44 * u, feed.inlet],
    valveUpright: false,
  };
}

function layTop(laid: Laid, feed: NonNullable<Scenario['plumbing']['topFeed']>, tee: Spot): PipeRoute {
  const { u, v } = laid.units;
  const { order, cut, left } = basinCut(laid, topBasin(laid.scenario));
  const passed = laid.reaches.slice(0, Math.max(0, order)).map((r) => (r.kind === 'pool' ? r.rim : r.brink.z));
  const over = [...passed, basinCut(laid, topBasin(laid.scenario)).rim, order >= 0 ? (laid.filter?.rim ?? -1e9) : -1e9];
  const up = Math.max(feed.outlet + 0.14 * v, tee[1] + 0.3 * v, Math.max(...over) + 0.1 * v);
  const width = cut ? widthAt(cut, feed.outlet) : 0;
  const first = cut ? leftAt(cut, feed.outlet) + Math.min(0.3 * width, 0.6 * u) : left + 0.45 * u;
  // Clear of the wall of stones under the brink above.
  const end = order >= 1 || (order === 0 && laid.filter) ? Math.max(first, left + 0.55 * u) : first;
  return {
    name: 'top feed',
    place: 'plumbing.topFeed',
    spots: [tee, [tee[0], up], [end, up], [end, feed.outlet]],
    diameter: feed.diameter,
    valve: [tee[0], tee[1] + 0.55 * (up - tee[1])],
    valveUpright: true,
  };
}
