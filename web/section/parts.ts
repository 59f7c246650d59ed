import { type Display, formatFlow, formatLevel, formatPercent } from '../../sim/quantity/index.ts';
import { rightAt } from './cut.ts';
import { box, type Pixel, rounded } from './marks.ts';
import type { Running } from './running.ts';
import type { Scale } from './scale.ts';
import type { PipeRoute, Scene } from './scene.ts';
import { overflowAt } from './supply.ts';

/** A part of the site that can be pressed: its place in the file, where it is, and a point to tie words to. */
export interface PartArea {
  readonly place: string;
  readonly name: string;
  /** Outline of what answers to the press, px; a line with a wide pen where `line`. */
  readonly d: string;
  readonly line: boolean;
  /** How large it is, px²: of parts that lie on each other a press means the smallest. */
  readonly size: number;
  readonly anchor: Pixel;
}

/** Size that pipes and streams count as, px²: less than any basin, more than a stone. */
const LINE = 2500;

/** The parts in the order of the water's way: pond, intake, pump, pipes, filter, falls and stream, supply. */
export function partsOf(scene: Scene, scale: Scale): PartArea[] {
  const { pond, vault, pipes, filter, reaches, scenario, units } = scene;
  const area = (place: string, name: string, left: number, top: number, right: number, bottom: number): PartArea => {
    const [x, y] = scale.at([left, top]);
    const [w, h] = [scale.x(right) - x, scale.y(bottom) - y];
    const [gx, gy] = [Math.max(0, 24 - w) / 2, Math.max(0, 24 - h) / 2];
    return {
      place,
      name,
      d: box(x - gx, y - gy, w + 2 * gx, h + 2 * gy),
      line: false,
      size: w * h,
      anchor: [x + w / 2, y],
    };
  };
  const right = vault.cut.left + vault.cut.width;
  const parts = [area('pond', 'pond', pond.cut.left, pond.rim, rightAt(pond.cut, pond.rim), pond.cut.widths[0][0])];
  if (scenario.pond.overflow) {
    const x = overflowAt(scene);
    const { elevation } = scenario.pond.overflow;
    parts.push(
      area(
        'pond.overflow',
        'overflow pipe',
        x - 0.05 * units.u,
        elevation,
        x + 0.05 * units.u,
        elevation - 0.4 * units.v,
      ),
    );
  }
  parts.push(area('intake', 'intake', vault.cut.left - 0.28 * units.u, pond.rim, vault.cut.left, vault.lip));
  parts.push(area('vault', 'pump vault', vault.cut.left, vault.top, right, vault.cut.widths[0][0]));
  const { pump, checkValve } = pipes;
  const small = 0.14 * units.u;
  parts.push(area('pump', 'pump', pump.x - small, pump.top, pump.x + small, pump.suction));
  parts.push(
    area(
      'plumbing.main.checkValve',
      'check valve',
      checkValve[0] - small,
      checkValve[1] + 0.1 * units.v,
      checkValve[0] + small,
      checkValve[1] - 0.1 * units.v,
    ),
  );
  for (const route of [pipes.main, pipes.bottomFeed, pipes.topFeed]) if (route) parts.push(pipeArea(route, scale));
  if (filter) {
    const { cut, rim } = filter;
    parts.push(
      area('filter', 'filter', cut.left - filter.wall, rim, cut.left + cut.width + filter.wall, cut.widths[0][0]),
    );
  }
  const media = filter?.filter.media;
  if (filter && media) {
    const { cut } = filter;
    const top = media.bottom + media.layers.reduce((sum, l) => sum + l.thickness, 0);
    parts.push(area('filter.media', 'media', cut.left, top, cut.left + cut.width, media.bottom));
  }
  for (const reach of reaches) {
    if (reach.kind === 'stream') {
      const head = reach.reach.foot + reach.reach.slope * reach.reach.length;
      const d = rounded([scale.at([reach.left, head]), scale.at([reach.right, reach.reach.foot])], 0);
      const anchor = scale.at([(reach.left + reach.right) / 2, (head + reach.reach.foot) / 2]);
      parts.push({ place: reach.place, name: reach.reach.name, d, line: true, size: LINE, anchor });
      continue;
    }
    const { cut, rim } = reach;
    parts.push(area(reach.place, reach.reach.name, cut.left, rim, rightAt(cut, rim), cut.widths[0][0]));
    for (const s of reach.stones) {
      const stone = area(s.place, s.stone.name, s.left, s.crest, s.right, s.under);
      // Where the stone in the cut hides one beyond it, a press means the one that is seen.
      parts.push(s.cut ? { ...stone, size: 0.4 * stone.size } : stone);
    }
  }
  return parts;
}

function pipeArea(route: PipeRoute, scale: Scale): PartArea {
  const points = route.spots.map(scale.at);
  const names = { main: 'main line', 'bottom feed': 'bottom feed', 'top feed': 'top feed' } as const;
  const anchor = route.valve ? scale.at(route.valve) : points[Math.min(4, points.length - 1)];
  return { place: route.place, name: names[route.name], d: rounded(points, 9), line: true, size: LINE, anchor };
}

/** What a part says: its name, its level and its flow, in the display's units. */
export function saysOf(part: PartArea, scene: Scene, running: Running): string {
  const { display } = scene.scenario;
  return [part.name, ...figuresOf(part, scene, running, display)].join(', ');
}

function figuresOf(
  { place }: PartArea,
  scene: Scene,
  { levels, flows, settings }: Running,
  display: Display,
): string[] {
  const level = (z: number | undefined): string[] => (z === undefined ? [] : [`water at ${formatLevel(z, display)}`]);
  const flow = (q: number | undefined): string[] => (q === undefined ? [] : [flowWords(q, display)]);
  const opening = (share: number): string => `valve open ${formatPercent(share)}`;
  switch (place) {
    case 'pond':
      return [...level(levels.pond), ...(flows.rim > 1e-9 ? [`${flowWords(flows.rim, display)} over its edge`] : [])];
    case 'pond.overflow':
      return flow(flows.overflow);
    case 'intake':
      return [...flow(flows.intake), ...blocked(settings.blockage.intake)];
    case 'vault':
      return level(levels.vault);
    case 'pump':
      return [settings.pumpOn ? 'running' : 'stopped', ...flow(flows.main)];
    case 'plumbing.main.checkValve':
      return [settings.checkValve];
    case 'plumbing.main':
      return [...level(levels.riser), ...flow(flows.main)];
    case 'plumbing.bottomFeed':
      return [opening(settings.bottomValve), ...flow(flows['bottom feed'])];
    case 'plumbing.topFeed':
      return [opening(settings.topValve), ...flow(flows['top feed'])];
    case 'filter':
      return [...level(levels.filter), ...flow(flows.lip)];
    case 'filter.media':
      return [...flow(flows.media), `${flowWords(flows.gap ?? 0, display)} round the mats`];
    default:
      return courseFigures(place, scene, levels, flows, settings.blockage, display);
  }
}

function courseFigures(
  place: string,
  scene: Scene,
  levels: Running['levels'],
  flows: Running['flows'],
  blockage: Readonly<Record<string, number>>,
  display: Display,
): string[] {
  for (const reach of scene.reaches) {
    if (reach.place === place) {
      const { name } = reach.reach;
      const level = levels[name];
      if (reach.kind === 'pool') return [`water at ${formatLevel(level, display)}`];
      return [
        `${formatLevel(level - reach.reach.foot, display)} deep`,
        flowWords(flows[name] ?? 0, display),
        ...blocked(blockage[name]),
      ];
    }
    const stone = reach.kind === 'pool' ? reach.stones.find((s) => s.place === place) : undefined;
    if (stone) {
      const head = Math.max(0, levels[reach.reach.name] - stone.crest);
      const { name } = stone.stone;
      return [
        `crest at ${formatLevel(stone.crest, display)}`,
        `${formatLevel(head, display)} over it`,
        flowWords(flows[name] ?? 0, display),
        ...blocked(blockage[name]),
      ];
    }
  }
  return [];
}

const blocked = (share: number | undefined): string[] => (share ? [`${formatPercent(share)} blocked`] : []);

const flowWords = (q: number, display: Display): string =>
  q < -1e-9 ? `${formatFlow(-q, display)} running back` : formatFlow(q, display);
