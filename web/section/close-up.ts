import { floorOf } from './cut.ts';
import { box, type Mark, path } from './marks.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** Height of a close-up, px. */
const TALL = 500;

/** A close-up narrower than this is a strip that is moved under a window, px. */
const LEAST = 760;

/** The filter close to, one scale for lengths and heights: from the riser to where the water leaves over the lip. */
export function closeUpOf(scene: Scene, room: number, hatched = false): Scale | undefined {
  const width = Math.max(LEAST, room);
  const { filter, riser, pipes } = scene;
  if (!filter) return undefined;
  const margin = { left: 54, right: 6, top: 52, bottom: 44 };
  const floor = floorOf(filter.cut);
  const rise = Math.max(filter.rim, pipes.topFeed ? pipes.top : filter.rim) - floor;
  const top = floor + 1.06 * rise;
  const low = floor - 0.16 * rise;
  const across = width - margin.left - margin.right;
  const [from, to] = [riser - 0.5 * rise, filter.brink.x + 0.4 * rise];
  const a = Math.min(across / (to - from), TALL / (top - low));
  const spare = across / a - (to - from);
  const start = from - 0.8 * spare;
  const x = (station: number): number => margin.left + a * (station - start);
  const y = (z: number): number => margin.top + a * (top - z);
  return {
    a,
    k: 1,
    width,
    height: y(low) + margin.bottom,
    from: start,
    to: to + 0.2 * spare,
    left: margin.left,
    right: width - margin.right,
    top: margin.top,
    bottom: y(low),
    strip: width > room,
    closeUp: true,
    hatched,
    x,
    y,
    at: ([station, z]) => [x(station), y(z)],
  };
}

/** Bare paper round a close-up, over what goes on beyond it. */
export function coverMarks({ closeUp, left, right, bottom, width, height }: Scale): Mark[] {
  if (!closeUp) return [];
  const edges =
    box(0, 0, left, height) + box(right, 0, width - right, height) + box(0, bottom, width, height - bottom + 9);
  return [path(edges, 'cover')];
}
