import { type Cut, leftAt, leftBank, rightAt, rightBank, type Spot } from '../cut.ts';

import type { Scale } from '../scale.ts';
import type { PipeRoute, Scene } from '../scene.ts';
import type { LevelMark } from './levelMarks.ts';
import type { Obstacle } from './request.ts';
import type { Point } from './shapes.ts';

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
    if (reach.kind === 'stream') continue;
    obstacles.push(...waterOf(reach.place, reach.cut, levels[reach.reach.name], at));
    for (const { place, left, right, crest, under } of reach.stones) {
      obstacles.push({ kind: 'stone', of: place, points: boxOf(at, left, right, crest, under), closed: true });
    }
  }
  return obstacles;
}

/**
 * What of a scene words keep off, with its water at given levels: ground and liner, vessels, stones, pipes, water.
 * Falling water is not among it: its way depends on the flow, and is told beside.
 */
export function sceneObstacles(scene: Scene, scale: Scale, levels: Levels): Obstacle[] {
  const at: At = ([x, z]) => ({ x: scale.x(x), y: scale.y(z) });
  const { pond, vault, pipes } = scene;
  const far = vault.cut.left + vault.cut.width + vault.wall;
  return [
    { kind: 'line', points: scene.earth.map(at), width: 2 },
    ...filterObstacles(scene, levels, at),
    ...courseObstacles(scene, levels, at),
    ...waterOf('pond', pond.cut, levels['pond'], at),
    {
      kind: 'line',
      of: 'vault',
      points: boxOf(at, vault.cut.left - vault.wall, far, vault.top, vault.cut.widths[0][0]),
      closed: true,
    },
    ...[pipes.main, pipes.bottomFeed, pipes.topFeed].flatMap((route) => pipeOf(route, at)),
  ];
}

/** The lines of the pond's marks, from bank to bank. */
export const markObstacles = ({ pond }: Scene, scale: Scale, marks: readonly LevelMark[]): Obstacle[] =>
  marks.map(({ id, elevation }) => {
    const y = scale.y(elevation);
    const ends = [leftAt(pond.cut, elevation), rightAt(pond.cut, elevation)];
    return { kind: 'line', of: id, points: ends.map((x) => ({ x: scale.x(x), y })) };
  });
