import { box, type Mark, type Pixel, path, rounded, through } from './marks.ts';
import type { Scale } from './scale.ts';
import type { PipeRoute, PipeScene } from './scene.ts';

/** px of pipe per meter of bore: a bore of 78 mm is drawn 7 px wide. */
const PER_BORE = 7 / 0.078;
const CORNER = 9;
const cornerOf = ({ closeUp }: Scale): number => (closeUp ? 26 : CORNER);

/** Width of a pipe on the sheet, px: the same on every sheet, and true in a close-up. */
export const boreWidth = (diameter: number, { closeUp, a }: Pick<Scale, 'closeUp' | 'a'>): number =>
  closeUp ? Math.max(6, diameter * a) : Math.min(9, Math.max(3.6, diameter * PER_BORE));

/** Both walls of a pipe, px. */
export const wallsOf = ({ hatched }: Pick<Scale, 'hatched'>): number => (hatched ? 3 : 1.8);

const routes = ({ main, bottomFeed, topFeed }: PipeScene): PipeRoute[] =>
  [main, bottomFeed, topFeed].filter((route) => route !== undefined);

const lineOf = (route: PipeRoute, scale: Scale): string => rounded(route.spots.map(scale.at), cornerOf(scale));

/** Walls of all pipes, then all bores, so that they run into each other at the tee. */
export function pipeWalls(pipes: PipeScene, scale: Scale): Mark[] {
  const walls = routes(pipes).map((r) =>
    path(lineOf(r, scale), 'pipe-wall', { stroke: boreWidth(r.diameter, scale) + wallsOf(scale) }),
  );
  const bores = routes(pipes).map((r) => path(lineOf(r, scale), 'pipe-bore', { stroke: boreWidth(r.diameter, scale) }));
  return [...walls, ...bores];
}

/** Water standing in the pipes: up to the riser's level, everything below it. */
export function pipeWater(pipes: PipeScene, scale: Scale): Mark[] {
  return routes(pipes).map((r) =>
    path(lineOf(r, scale), 'pipe-water', { clip: 'riser', stroke: boreWidth(r.diameter, scale) - 0.8 }),
  );
}

/** Outline below the riser's level, the clip of the water in the pipes. */
export function riserClip(level: number, scale: Scale): string {
  const y = Math.min(scale.height, Math.max(0, scale.y(level)));
  return box(0, y, scale.width, Math.max(0, scale.height - y));
}

/** Flows in the pipes, m³/s; negative where it runs back. */
export interface PipeFlows {
  readonly main: number;
  readonly bottom: number;
  readonly top: number;
}

/** Ribbon of a flow: its line on the sheet and its width, px. */
export interface Ribbon {
  readonly name: PipeRoute['name'];
  readonly points: readonly Pixel[];
  readonly width: number;
  readonly back: boolean;
}

/**
 * Ribbons as wide as their flow. Up the riser to the tee the feeds' ribbons lie side by side and together are as wide
 * as the main's: it divides there without a step.
 *
 * @param flowScale px per m³/s
 */
export function ribbonsOf(pipes: PipeScene, flows: PipeFlows, flowScale: number, scale: Scale): Ribbon[] {
  const width = (flow: number): number => Math.abs(flow) * flowScale;
  const { main, bottomFeed, topFeed } = pipes;
  const ribbons: Ribbon[] = [];
  const add = (route: PipeRoute | undefined, flow: number, shift: number): void => {
    if (!route || width(flow) < 0.05) return;
    const points = route.spots.map(scale.at).map(([x, y], i): Pixel => (i < 2 ? [x + shift, y] : [x, y]));
    ribbons.push({ name: route.name, points, width: width(flow), back: flow < 0 });
  };
  add(main, flows.main, 0);
  // Seen from below, the bottom feed leaves to the right: its part of the main lies on the right.
  const whole = width(flows.bottom) + width(flows.top);
  add(bottomFeed, flows.bottom, 0);
  add(topFeed, flows.top, bottomFeed ? (width(flows.top) - whole) / 2 : 0);
  return ribbons;
}

/** Ribbons and the dashes in them, spaced by speed and run by the page. */
export function ribbonMarks(ribbons: readonly Ribbon[], pipes: PipeScene, scale: Scale): Mark[] {
  const corner = cornerOf(scale);
  const solid = ribbons.map((r) =>
    path(rounded(r.points, corner), 'ribbon', { stroke: Math.max(0.5, Math.round(10 * r.width) / 10) }),
  );
  const dashed = ribbons
    .filter(({ width }) => width > 1.2)
    .map((r) => {
      const route = routes(pipes).find(({ name }) => name === r.name)!;
      const d = r.back ? through([...r.points].reverse()) : rounded(r.points, corner);
      return path(d, `dashes ${dashesFor(r.width / boreWidth(route.diameter, scale))}`);
    });
  return [...solid, ...dashed];
}

/** Faster water has its dashes further apart. */
const dashesFor = (share: number): string => (share > 0.6 ? 'fast' : share > 0.3 ? 'steady' : 'slow');
