import { streamDepth } from './bodies.ts';
import { floorOf } from './cut.ts';
import { type Mark, path, px } from './marks.ts';
import type { Scale } from './scale.ts';
import { bedAt, type Scene } from './scene.ts';

/** Less than this over an edge is no more than a drop now and then, m³/s. */
const STILL = 1e-7;
/** Finest and widest line, px. */
const WIDTH = { least: 1.2, most: 4 } as const;
/** How far past the edge an arrow reaches on either side, and over it, px. */
const ASIDE = 12;
const OVER = 11;

/** By name, SI. */
type Figures = Readonly<Record<string, number>>;

/** A place where water goes over an edge: from where in the basin, over what, and by how much. */
interface Spill {
  readonly from: number;
  readonly to: number;
  readonly surface: number;
  readonly edge: number;
  readonly flow: number;
}

/** Where water leaves over the lowest stretch of an edge, px; the stretch itself lies before or beyond the cut. */
function spillsOf(scene: Scene, levels: Figures, flows: Figures, scale: Scale): Spill[] {
  const { filter, pond, vault, reaches } = scene;
  const spills: Spill[] = [];
  const flow = (name: string): number => flows[name] ?? 0;
  if (filter) {
    const [left, wall] = [scale.x(filter.cut.left), filter.wall * scale.a];
    const surface = scale.y(levels['filter']);
    spills.push({
      from: left + 3,
      to: left - wall - ASIDE,
      surface,
      edge: scale.y(filter.rim),
      flow: flow('filter rim'),
    });
  }
  for (const reach of reaches) {
    const { name } = reach.reach;
    const pool = reach.kind === 'pool';
    const [left, right] = pool ? [reach.cut.left, reach.cut.left + reach.cut.width] : [reach.left, reach.right];
    const middle = 0.4 * left + 0.6 * right;
    const level = pool
      ? Math.max(floorOf(reach.cut), levels[name])
      : bedAt(reach, middle) + streamDepth(reach, levels[name]);
    const from = scale.x(middle);
    const y = scale.y(level);
    spills.push({ from, to: from + 1.3 * ASIDE, surface: y, edge: y, flow: flow(`${name} ${pool ? 'rim' : 'edge'}`) });
  }
  const outer = scale.x(vault.cut.left + vault.cut.width + vault.wall);
  const surface = scale.y(levels['pond']);
  const lost = flow('rim') + flow('vault spill');
  return [...spills, { from: outer - 2, to: outer + 2 * ASIDE, surface, edge: scale.y(pond.rim), flow: lost }];
}

/** Arrows over the edges that water leaves by, as wide as what is lost there. */
export function spillMarks(scene: Scene, levels: Figures, flows: Figures, flowScale: number, scale: Scale): Mark[] {
  return spillsOf(scene, levels, flows, scale).flatMap(({ from, to, surface, edge, flow }) => {
    if (!(flow > STILL)) return [];
    const top = Math.min(surface, edge) - OVER;
    const way = Math.sign(to - from);
    const end = edge + 4;
    const d =
      `M${px(from)} ${px(surface)}C${px(from)} ${px(top)} ${px(to)} ${px(top)} ${px(to)} ${px(end)}` +
      `M${px(to - 3.5)} ${px(end - 4.5)}L${px(to + 0.2 * way)} ${px(end)}L${px(to + 3.5)} ${px(end - 4.5)}`;
    const stroke = Math.min(WIDTH.most, Math.max(WIDTH.least, flow * flowScale));
    return [path(d, 'spill', { stroke: Math.round(10 * stroke) / 10 })];
  });
}
