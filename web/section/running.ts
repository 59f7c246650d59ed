import { streamDepth, waterAt } from './bodies.ts';
import { floorOf } from './cut.ts';
import { brinkDepth, type Fall, fallMarks } from './falling.ts';
import { closed, type Mark, type Pixel, path, through } from './marks.ts';
import type { Scale } from './scale.ts';
import { bedAt, type PoolScene, type Scene, type StoneScene, type StreamScene } from './scene.ts';
import type { Settings } from './settings.ts';

/** What moves at a moment: levels m, flows m³/s, and how much of each crest is open. */
export interface Running {
  readonly levels: Readonly<Record<string, number>>;
  readonly flows: Readonly<Record<string, number>>;
  readonly settings: Settings;
  /** px per m³/s. */
  readonly flowScale: number;
}

/** Thickness of the sheet over a crest where it comes and at the brink, m; nothing over a dry stone. */
export function sheetOver(level: number, crest: number, flowPerWidth: number): { head: number; brink: number } {
  const head = Math.max(0, level - crest);
  return { head, brink: head > 0 ? brinkDepth(flowPerWidth, head) : 0 };
}

/** Water over a stone, its head at true scale, drawn down toward the brink. */
export function stoneSheet(stone: StoneScene, level: number, flow: number, open: number, scale: Scale): Mark[] {
  const width = stone.brink.width * open;
  const { head, brink } = sheetOver(level, stone.crest, width > 0 ? flow / width : 0);
  if (head <= 0) return [];
  const crest = scale.y(stone.crest);
  const from = scale.x(stone.left) - 1;
  const to = scale.x(stone.right);
  const top = drawdown(from, to, scale.y(level), scale.y(stone.crest + brink));
  const outline = closed([...top, [to, crest], [from, crest]]);
  return [path(outline, stone.cut ? 'w1' : 'w1 beyond'), path(through(top), 'surface')];
}

/** The surface on its way to a brink: level at first, falling faster and faster. */
function drawdown(from: number, to: number, high: number, low: number): Pixel[] {
  return [0, 0.35, 0.6, 0.8, 0.92, 1].map((s): Pixel => [from + s * (to - from), high + (low - high) * s ** 3]);
}

/** A stream's water along its bed, drawn down at its foot. */
export function streamWater(stream: StreamScene, level: number, flow: number, scale: Scale): Mark[] {
  const depth = streamDepth(stream, level);
  if (depth < 1e-5) return [];
  const { left, right } = stream;
  const brink = brinkDepth(flow / stream.reach.width, depth);
  const reach = Math.min(4 * depth, 0.3 * (right - left));
  const stations = [left, right - reach, right - 0.5 * reach, right - 0.15 * reach, right];
  const depths = [depth, depth, depth + 0.25 * (brink - depth), depth + 0.7 * (brink - depth), brink];
  const top = stations.map((x, i): Pixel => [scale.x(x), scale.y(bedAt(stream, x) + depths[i])]);
  const bed = [right, left].map((x): Pixel => [scale.x(x), scale.y(bedAt(stream, x))]);
  const marks: Mark[] = [path(closed([...top, ...bed]), 'w1'), path(through(top), 'surface')];
  const thick = depth * scale.k * scale.a;
  if (thick > 4 && flow > 0) {
    const middle = top.slice(0, 3).map(([x, y]): Pixel => [x, y + 0.5 * thick]);
    marks.push(path(through(middle), 'streamline'));
  }
  return marks;
}

/** All that falls: over the filter's lip, over every stone, off every stream's foot. */
export function fallsAt(scene: Scene, running: Running): { fall: Fall; into: number; beyond: boolean }[] {
  const { levels, flows, settings } = running;
  const falls: { fall: Fall; into: number; beyond: boolean }[] = [];
  const add = (
    x: number,
    crest: number,
    flow: number,
    width: number,
    before: number,
    into: number,
    beyond: boolean,
  ): void => {
    const to = waterAt(scene, into, x, levels);
    if (!(flow > 1e-8) || to >= crest || !(width > 0)) return;
    const depth = brinkDepth(flow / width, before);
    falls.push({ fall: { x, crest, to, flow, width, depth, limit: limitOf(scene, into) }, into, beyond });
  };
  const { filter } = scene;
  if (filter) {
    const { x, z, width } = filter.brink;
    add(x, z, flows.lip ?? 0, width, levels.filter - z, 0, false);
  }
  scene.reaches.forEach((reach, i) => {
    if (reach.kind === 'stream') {
      const { x, z, width } = reach.brink;
      add(x, z, flows[reach.reach.name] ?? 0, width, streamDepth(reach, levels[reach.reach.name]), i + 1, false);
      return;
    }
    for (const { brink, stone, cut } of reach.stones) {
      const open = 1 - (settings.blockage[stone.name] ?? 0);
      const head = levels[reach.reach.name] - brink.z;
      // What falls beyond the cut lands behind the main stone: it is seen down to the main stone's own crest.
      add(brink.x, brink.z, flows[stone.name] ?? 0, brink.width * open, head, i + 1, !cut);
    }
  });
  return falls;
}

function limitOf({ reaches, pond }: Scene, into: number): number {
  const reach = reaches[into];
  if (!reach) return pond.cut.left + pond.cut.width;
  return reach.kind === 'pool' ? reach.cut.left + reach.cut.width : reach.right;
}

/** Nappes that lie in the cut. */
export function fallingMarks(scene: Scene, running: Running, scale: Scale): Mark[] {
  return fallsAt(scene, running).flatMap(({ fall, into, beyond }) => {
    if (beyond) return [];
    const reach = scene.reaches[into];
    const floor = !reach ? floorOf(scene.pond.cut) : reach.kind === 'pool' ? floorOf(reach.cut) : fall.to;
    return fallMarks(fall, running.flowScale, floor, scale);
  });
}

/** Sheets over all stones of a pool, those beyond the cut first. */
export function poolSheets(pool: PoolScene, running: Running, scale: Scale, cut: boolean): Mark[] {
  return pool.stones
    .filter((stone) => stone.cut === cut)
    .flatMap((stone) => {
      const open = 1 - (running.settings.blockage[stone.stone.name] ?? 0);
      const flow = running.flows[stone.stone.name] ?? 0;
      return stoneSheet(stone, running.levels[pool.reach.name], flow, open, scale);
    });
}
