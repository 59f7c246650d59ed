import { type Cut, leftAt, leftBank, rightAt, rightBank, type Spot } from '../cut.ts';
import { trajectory } from '../falling.ts';
import { fallsAt, type Running } from '../running.ts';
import type { Scale } from '../scale.ts';
import type { PipeRoute, Scene } from '../scene.ts';
import { overflowAt } from '../supply.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Obstacle } from './request.ts';
import { cornersOf, type Point } from './shapes.ts';
import { bankTop } from './skyline.ts';

/** Width of a pipe of the drawing with its walls, px: wide enough for any of them. */
const PIPE = 9;

type Levels = Readonly<Record<string, number>>;
type At = (spot: Spot) => Point;

const boxOf = (at: At, left: number, right: number, top: number, bottom: number): Point[] => [
  at([left, top]),
  at([right, top]),
  at([right, bottom]),
  at([left, bottom]),
];

/** Water of a basin between its banks; none where it is dry. */
function waterOf(of: string, cut: Cut, level: number, at: At): Obstacle[] {
  if (!(level > cut.widths[0][0])) return [];
  const points = [...leftBank(cut, level), ...rightBank(cut, level)].map(at);
  return [{ kind: 'water', of, points, closed: true }];
}

const pipeOf = (route: PipeRoute | undefined, at: At): Obstacle[] =>
  route ? [{ kind: 'pipe', of: route.place, points: route.spots.map(at), width: PIPE }] : [];

/** Mouth, foot and end of the overflow's pipe. */
export function overflowSpots(scene: Scene, mouth: number): readonly [Spot, Spot, Spot] {
  const { pond, units } = scene;
  const x = overflowAt(scene);
  const out = pond.rim - 0.62 * (pond.rim - pond.cut.widths[0][0]);
  return [
    [x, mouth],
    [x, out],
    [leftAt(pond.cut, out) - 0.9 * units.u, out],
  ];
}

function filterObstacles({ filter }: Scene, levels: Levels, at: At): Obstacle[] {
  if (!filter) return [];
  const { cut, wall, rim, brink } = filter;
  const vessel = boxOf(at, cut.left - wall, cut.left + cut.width + wall, rim, cut.widths[0][0]);
  const spout = boxOf(at, cut.left + cut.width, brink.x, brink.z, brink.z - 0.05 * (rim - cut.widths[0][0]));
  return [
    { kind: 'line', of: 'filter', points: vessel, closed: true },
    { kind: 'stone', of: 'filter', points: spout, closed: true },
    ...waterOf('filter', cut, levels['filter'], at),
  ];
}

function courseObstacles({ reaches, walls }: Scene, levels: Levels, at: At): Obstacle[] {
  const obstacles = walls.map(
    ({ name, left, right, top, foot }): Obstacle => ({
      kind: 'stone',
      of: `wall ${name}`,
      points: boxOf(at, left, right, top, foot),
      closed: true,
    }),
  );
  for (const reach of reaches) {
    if (reach.kind === 'stream') {
      obstacles.push({ kind: 'line', of: reach.place, points: bankTop(reach).map(at) });
      continue;
    }
    obstacles.push(...waterOf(reach.place, reach.cut, levels[reach.reach.name], at));
    for (const { place, left, right, crest, under } of reach.stones) {
      obstacles.push({ kind: 'stone', of: place, points: boxOf(at, left, right, crest, under), closed: true });
    }
  }
  return obstacles;
}

/** The vault's walls, its lid, and the stone over the intake. */
function vaultObstacles({ vault, pond }: Scene, scale: Scale, at: At): Obstacle[] {
  const { cut, wall, top } = vault;
  const far = cut.left + cut.width;
  const [left, right, lid] = [scale.x(cut.left), scale.x(far), scale.y(top)];
  const box = (left: number, right: number, top: number, bottom: number): Point[] =>
    cornersOf({ left, right, top, bottom });
  return [
    { kind: 'line', of: 'vault', points: boxOf(at, cut.left - wall, far + wall, top, cut.widths[0][0]), closed: true },
    { kind: 'stone', of: 'vault', points: box(left - 4, right + 6, lid - 8, lid), closed: true },
    { kind: 'stone', points: box(scale.x(rightAt(pond.cut, pond.rim)), left - 1, lid - 3, lid + 10), closed: true },
  ];
}

/** The overflow's pipe down from its mouth and out through the bank, with the arrow at its end. */
function overflowObstacles(scene: Scene, at: At): Obstacle[] {
  const { overflow } = scene.scenario.pond;
  if (!overflow) return [];
  const [mouth, foot, end] = overflowSpots(scene, overflow.elevation).map(at);
  const arrow = { x: end.x - 15, y: end.y };
  return [{ kind: 'pipe', of: 'pond.overflow', points: [mouth, foot, end, arrow], width: PIPE }];
}

/** Falling water at a moment, as thick as it is drawn. */
function nappesOf(scene: Scene, running: Running, at: At): Obstacle[] {
  return fallsAt(scene, running).flatMap(({ fall }): Obstacle[] => {
    const points = trajectory(fall).map(at);
    return points.length > 1 ? [{ kind: 'nappe', points, width: 4 + fall.flow * running.flowScale }] : [];
  });
}

/**
 * What of a scene words keep off, with its water as it runs at a moment: ground and liner, vessels, stones, pipes,
 * water standing and falling.
 */
export function sceneObstacles(scene: Scene, scale: Scale, running: Running): Obstacle[] {
  const at: At = ([x, z]) => ({ x: scale.x(x), y: scale.y(z) });
  const { pond, pipes } = scene;
  const { levels } = running;
  return [
    { kind: 'line', points: scene.earth.map(at), width: 2 },
    ...filterObstacles(scene, levels, at),
    ...courseObstacles(scene, levels, at),
    ...waterOf('pond', pond.cut, levels['pond'], at),
    ...vaultObstacles(scene, scale, at),
    ...overflowObstacles(scene, at),
    ...[pipes.main, pipes.bottomFeed, pipes.topFeed].flatMap((route) => pipeOf(route, at)),
    ...nappesOf(scene, running, at),
  ];
}

/** The lines of the pond's marks: the edge's from the drawing's left end on, the others over the water to the vault. */
export function markObstacles(scene: Scene, scale: Scale, marks: readonly LevelMark[]): Obstacle[] {
  const { pond, vault, units } = scene;
  const right = vault.cut.left - vault.wall;
  return marks.map(({ id, elevation }) => {
    const y = scale.y(elevation);
    const edge = id === 'pond.rim';
    const from = edge ? scale.left : scale.x(leftAt(pond.cut, elevation));
    const to = scale.x(right) + (edge ? 0.6 * scale.a * units.u : 0);
    return {
      kind: 'line',
      of: id,
      points: [
        { x: from, y },
        { x: to, y },
      ],
    };
  });
}
