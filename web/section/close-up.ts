import { floorOf } from './cut.ts';
import { box, type Mark, path } from './marks.ts';
import type { Scale } from './scale.ts';
import type { Scene } from './scene.ts';

/** Height of a close-up, px. */
const TALL = 500;

/** A close-up narrower than this is a strip that is moved under a window, px. */
const LEAST = 760;

/** What a close-up shows and how large its sheet is: stations, elevations, m; margins, sheet and scale, px. */
interface Framed {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly low: number;
  readonly a: number;
  readonly width: number;
  readonly margin: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly strip: boolean;
  readonly hatched: boolean;
}

function framed({ from, to, top, low, a, width, margin, strip, hatched }: Framed): Scale {
  const across = width - margin.left - margin.right;
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
    strip,
    closeUp: true,
    hatched,
    x,
    y,
    at: ([station, z]) => [x(station), y(z)],
  };
}

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
  const [from, to] = [riser - 0.5 * rise, filter.brink.x + 0.4 * rise];
  const a = Math.min((width - margin.left - margin.right) / (to - from), TALL / (top - low));
  return framed({ from, to, top, low, a, width, margin, strip: width > room, hatched });
}

/** How much of a vessel's sheet lies round it, px. */
const ROUND_VESSEL = { left: 54, right: 6, top: 60, bottom: 40 };

function vesselFrame({ filter }: Scene): { from: number; to: number; top: number; low: number } | undefined {
  if (!filter) return undefined;
  const { cut, rim, wall, brink } = filter;
  const rise = rim - floorOf(cut);
  return {
    from: cut.left - wall - 0.06 * rise,
    to: brink.x + 0.12 * rise,
    top: rim + 0.02 * rise,
    low: floorOf(cut) - wall - 0.03 * rise,
  };
}

/** The largest scale at which a vessel fits a sheet, px per meter; undefined without a filter. */
export function vesselScale(scene: Scene, width: number, tall: number): number | undefined {
  const frame = vesselFrame(scene);
  if (!frame) return undefined;
  const { left, right, top, bottom } = ROUND_VESSEL;
  return Math.min((width - left - right) / (frame.to - frame.from), (tall - top - bottom) / (frame.top - frame.low));
}

/** The vessel of the filter alone, at a given scale, so that two of them compare. */
export function vesselOf(scene: Scene, width: number, a: number, hatched = false): Scale | undefined {
  const frame = vesselFrame(scene);
  return frame && framed({ ...frame, a, width, margin: ROUND_VESSEL, strip: true, hatched });
}

/** Bare paper round a close-up, over what goes on beyond it. */
export function coverMarks({ closeUp, left, right, bottom, width, height }: Scale): Mark[] {
  if (!closeUp) return [];
  const edges =
    box(0, 0, left, height) + box(right, 0, width - right, height) + box(0, bottom, width, height - bottom + 9);
  return [path(edges, 'cover')];
}
