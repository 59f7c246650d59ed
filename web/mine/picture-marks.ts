/** What the small pictures beside the numbers are drawn with. */
import { randomStream } from '../../sim/random.ts';
import { circle, type Mark, type Pixel, path, segment, through } from '../section/marks.ts';

/** Of a picture, px. */
export const WIDTH = 72;
export const HEIGHT = 56;

/** Half the length of an oblique tick across and along, px. */
const TICK = 2.6;

/** The measured line: inked, with the oblique ticks of a dimension at its ends. */
export function measured(x1: number, y1: number, x2: number, y2: number): Mark[] {
  const tick = (x: number, y: number): string => segment(x - TICK, y + TICK, x + TICK, y - TICK);
  return [path(segment(x1, y1, x2, y2), 'measured'), path(`${tick(x1, y1)}${tick(x2, y2)}`, 'measured tick')];
}

export const thin = (x1: number, y1: number, x2: number, y2: number): Mark => path(segment(x1, y1, x2, y2), 'thin');

/** Dots of earth below a line, dense at it and thinning downward. */
export function earth(name: string, line: readonly Pixel[]): Mark {
  const random = randomStream(name, 'margin');
  const dots: string[] = [];
  for (let x = 1.5; x < WIDTH; x += 2.7) {
    const ground = heightAt(line, x);
    let y = ground + 1.6 + random();
    for (let step = 2.3; y < Math.min(HEIGHT, ground + 15); step *= 1.3) {
      dots.push(`M${(x + random() * 1.6).toFixed(1)} ${y.toFixed(1)}h.01`);
      y += step + random();
    }
  }
  return path(dots.join(''), 'stipple');
}

function heightAt(line: readonly Pixel[], x: number): number {
  for (let i = 1; i < line.length; i++) {
    const [[x0, y0], [x1, y1]] = [line[i - 1] as Pixel, line[i] as Pixel];
    if (x >= x0 && x < x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return HEIGHT;
}

/** A cut through ground: its dots and the liner on it. */
export const cut = (name: string, line: readonly Pixel[]): Mark[] => [earth(name, line), path(through(line), 'liner')];

/** A pipe through points, walls first. */
export const pipe = (points: readonly Pixel[], full = false): Mark[] => [
  { ...path(through(points), 'pipe-wall'), stroke: 7 },
  { ...path(through(points), full ? 'pipe-full' : 'pipe-bore'), stroke: 4.6 },
];

export const pebbles = (spots: readonly Pixel[]): Mark =>
  path(spots.map(([x, y]) => circle(x, y, 2)).join(''), 'pebbles');
