import type { Scenario } from '../../sim/scenario/scenario.ts';
import { layCourse } from './course.ts';
import { type Cut, floorOf, greatestWidth, leftAt, makeCut, rightAt } from './cut.ts';
import { earthLine } from './earth-line.ts';
import { layPipes } from './pipe-routes.ts';
import {
  bedAt,
  type Fall,
  lowest,
  type PondScene,
  type Scene,
  type StreamScene,
  type Units,
  type VaultScene,
  type WallScene,
} from './scene.ts';

/** Lays out the cut of a site. */
export function sceneOf(scenario: Scenario): Scene {
  const units = unitsOf(scenario);
  const { u, v } = units;
  const course = layCourse(scenario, units);
  const pond: PondScene = {
    cut: makeCut(scenario.pond.profile, course.end, 0.6),
    rim: lowest(scenario.pond.rim.crest),
  };
  const vault = layVault(scenario, pond, units);
  const base = { scenario, units, ...course, pond, vault };
  const walls = course.falls.flatMap((fall) => {
    const below = course.reaches[fall.into];
    return wallUnder(fall, below === undefined ? pond.cut : below.kind === 'pool' ? below.cut : below, units);
  });
  const pipes = layPipes(base);
  const line = earthLine(base, vault.cut.left + vault.cut.width + vault.wall + 0.95 * u);
  const tops = [pipes.top, pond.rim, ...course.reaches.map((r) => r.brink.z), vault.top].concat(
    course.filter ? [course.filter.rim] : [],
    course.reaches.map((r) => (r.kind === 'pool' ? r.rim : r.brink.z + r.reach.slope * r.reach.length)),
    line.earth.map(([, z]) => z),
  );
  return {
    ...base,
    walls,
    pipes,
    ...line,
    left: 0,
    right: line.earth[line.earth.length - 1][0],
    top: Math.max(...tops) + 0.12 * v,
    bottom: pipes.low - 0.12 * v,
  };
}

function unitsOf(s: Scenario): Units {
  const widths = [s.pond, s.vault, ...(s.filter ? [s.filter] : [])].map(({ profile }) => greatestWidth(profile));
  const reaches = s.watercourse.map((r) => (r.kind === 'pool' ? greatestWidth(r.profile) : r.length));
  const length = [...widths, ...reaches].reduce((sum, w) => sum + w, 0);
  const basins = [s.pond, s.vault, ...(s.filter ? [s.filter] : []), ...s.watercourse.filter((r) => r.kind === 'pool')];
  const low = Math.min(...basins.map(({ profile }) => profile[0][0]));
  const rims = [s.pond.rim, ...(s.filter ? [s.filter.rim] : [])].map(({ crest }) => lowest(crest));
  const heads = s.watercourse.map((r) => (r.kind === 'pool' ? lowest(r.rim.crest) : r.foot + r.slope * r.length));
  const high = Math.max(...rims, ...heads, s.plumbing.topFeed?.outlet ?? s.plumbing.tee);
  return { u: length / (12 - Math.min(4, 0.4 * s.watercourse.length)), v: Math.max((high - low) / 5, 1e-3) };
}

function layVault(s: Scenario, pond: PondScene, { u, v }: Units): VaultScene {
  const wall = 0.05 * u;
  const left = rightAt(pond.cut, pond.rim) + 0.3 * u + wall;
  const cut = makeCut(s.vault.profile, left, 0.5);
  return { cut, wall, top: pond.rim + 0.06 * v, lip: Math.max(s.intake.elevation, floorOf(pond.cut)) };
}

/** The wall of stones a fall drops past, standing where the bank carries it. */
function wallUnder({ name, into, brink, under }: Fall, below: Cut | StreamScene, { u, v }: Units): WallScene[] {
  const right = brink.x - 0.05 * u;
  const middle = (below.left + right) / 2;
  const foot = 'kind' in below ? bedAt(below, middle) : standOn(below, middle, under, v);
  return under - foot > 0.08 * v ? [{ name, into, left: below.left + 0.015 * u, right, top: under, foot }] : [];
}

/** Elevation at which a bank passes a station: where a wall there comes to stand; not far below the crest of the bank. */
function standOn(cut: Cut, x: number, top: number, v: number): number {
  const steps = 40;
  const floor = floorOf(cut);
  const low = Math.max(floor, Math.min(top, cut.widths[cut.widths.length - 1][0]) - 1.1 * v);
  for (let i = 1; i <= steps; i++) {
    const z = top + (low - top) * (i / steps);
    if (leftAt(cut, z) > x) return z;
  }
  return low;
}
