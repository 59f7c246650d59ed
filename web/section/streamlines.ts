import type { Media } from '../../sim/scenario/scenario.ts';
import type { Bed } from './bed.ts';
import { closed, type Mark, type Pixel, path, px, segment } from './marks.ts';
import { boreWidth } from './pipes.ts';
import type { Scale } from './scale.ts';
import type { FilterScene, PipeRoute } from './scene.ts';

/** Lines through the media; one goes up the gap on either side. */
const THROUGH = 12;
/** Width of a line through the media, px; those of the gap are wider or finer by what flows along them. */
const WIDTH = 0.8;
const WIDEST = 4;
/** Under this nothing flows, m³/s. */
const STILL = 1e-7;

/** One way of the water: where it passes the rack, and how wide its line is. */
interface Way {
  readonly x: number;
  readonly width: number;
}

interface Curve {
  readonly points: readonly [Pixel, Pixel, Pixel, Pixel];
  readonly width: number;
}

function waysOf(left: number, right: number, gap: number, through: number, round: number): Way[] {
  const inner = right - left - 2 * gap;
  const wide = through > STILL ? Math.min(WIDEST, (0.5 * WIDTH * THROUGH * round) / through) : WIDEST;
  const ways = Array.from({ length: THROUGH }, (_, i) => ({
    x: left + gap + (inner * (i + 0.5)) / THROUGH,
    width: WIDTH,
  }));
  const beside = [left + gap / 2, right - gap / 2].map((x) => ({ x, width: wide }));
  const all = round > STILL ? [beside[0], ...(through > STILL ? ways : []), beside[1]] : ways;
  return all.filter(({ width }) => width > 0.2);
}

/** From the mouth of the feed out under the rack: what turns up first leaves from the top. */
function underRack(ways: readonly Way[], mouth: Pixel, bore: number, rack: number): Curve[] {
  const [x0, y0] = mouth;
  return ways.map(({ x, width }, i) => {
    const y = y0 + 0.7 * bore * ((i + 0.5) / ways.length - 0.5);
    const out = x0 + Math.max(0.35 * (rack < y ? y - rack : 20), 0.62 * (x - x0));
    return {
      width,
      points: [
        [x0, y],
        [out, y],
        [x, y - 0.3 * (y - rack)],
        [x, rack],
      ],
    };
  });
}

/** From the top of the media to the lip: what comes from furthest lies uppermost there. */
function toLip(ways: readonly Way[], top: number, lip: { x: number; high: number; low: number }): Curve[] {
  return ways.map(({ x, width }, i) => {
    const y = lip.high + ((lip.low - lip.high) * (i + 0.5)) / ways.length;
    return {
      width,
      points: [
        [x, top],
        [x, top + 0.62 * (y - top)],
        [x + 0.4 * (lip.x - x), y],
        [lip.x, y],
      ],
    };
  });
}

const curveText = ({ points: [a, b, c, d] }: Curve): string => `M${[a].map(pair)}C${[b, c, d].map(pair).join(' ')}`;

const pair = ([x, y]: Pixel): string => `${px(x)} ${px(y)}`;

/** A dart at a share of a curve, along it. */
function dartOn({ points: [a, b, c, d], width }: Curve, s: number, back: boolean): string {
  const r = 1 - s;
  const at = (k: 0 | 1): number => r ** 3 * a[k] + 3 * r * r * s * b[k] + 3 * r * s * s * c[k] + s ** 3 * d[k];
  const along = (k: 0 | 1): number => 3 * r * r * (b[k] - a[k]) + 6 * r * s * (c[k] - b[k]) + 3 * s * s * (d[k] - c[k]);
  const length = (Math.hypot(along(0), along(1)) || 1) * (back ? -1 : 1);
  const [ux, uy] = [along(0) / length, along(1) / length];
  const half = 1.5 + 0.5 * width;
  const [x, y] = [at(0), at(1)];
  return closed([
    [x + 5 * ux, y + 5 * uy],
    [x - 3 * ux - half * uy, y - 3 * uy + half * ux],
    [x - 3 * ux + half * uy, y - 3 * uy - half * ux],
  ]);
}

/** Curves of one width in one path, and their darts. */
function marksOf(curves: readonly Curve[], look: string, back: boolean): Mark[] {
  const lines = new Map<number, string>();
  for (const curve of curves) {
    const width = Math.round(10 * curve.width) / 10;
    lines.set(width, (lines.get(width) ?? '') + curveText(curve));
  }
  const darts = curves.map((curve, i) => dartOn(curve, 0.42 + 0.16 * (i % 3), back)).join('');
  return [
    ...[...lines].map(([stroke, d]) => path(d, `way ${look}`, { stroke })),
    ...(darts ? [path(darts, `way-dart ${look}`)] : []),
  ];
}

/**
 * The ways of the water in a close-up: from the mouth of the bottom feed under the rack, up through media and gap, and on
 * to the lip. Each line is as wide as its part of the flow.
 *
 * @param through flow through the media, m³/s; negative where it runs back
 * @param round flow up the gap, m³/s
 * @param lip flow over the lip, m³/s
 */
export function wayMarks(
  { cut, brink }: FilterScene,
  media: Media,
  feed: PipeRoute | undefined,
  flows: { readonly through: number; readonly round: number; readonly lip: number },
  level: number,
  bed: Bed,
  scale: Scale,
): Mark[] {
  const [through, round] = [Math.abs(flows.through), Math.abs(flows.round)];
  if (!scale.closeUp || through + round < STILL) return [];
  const [left, right] = [scale.x(cut.left), scale.x(cut.left + cut.width)];
  const back = flows.through + flows.round < 0;
  const ways = waysOf(left, right, bed.gap, through, round);
  const rack = scale.y(media.bottom) + 3;
  const top = scale.y(media.bottom + bed.lifted + media.layers.reduce((sum, { thickness }) => sum + thickness, 0));
  const marks: Mark[] = [];
  if (feed) {
    const mouth = scale.at(feed.spots[feed.spots.length - 1]);
    marks.push(...marksOf(underRack(ways, mouth, boreWidth(feed.diameter, scale), rack), 'deep', back));
  }
  const inMedia = ways.filter(({ width }) => width === WIDTH);
  if (through > STILL)
    marks.push(path(inMedia.map(({ x }) => segment(x, rack - 3, x, top)).join(''), 'way faint', { stroke: WIDTH }));
  const surface = scale.y(level);
  if (flows.lip > STILL && level > brink.z && surface < top) {
    const lip = { x: right, high: surface, low: scale.y(brink.z) };
    marks.push(...marksOf(toLip(ways, top, lip), 'pale', back));
  }
  return marks;
}
