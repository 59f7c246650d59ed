import type { BalanceAnswer, RunAnswer } from '../../sim/results/answer.ts';
import type { Media } from '../../sim/scenario/scenario.ts';
import type { Moment } from '../state/moment.ts';
import { standingMarks } from './basin-water.ts';
import { type Bed, bedAt } from './bed.ts';
import { basinStanding, pondStanding, waterClips } from './bodies.ts';
import { coverMarks } from './close-up.ts';
import { earthMarks } from './earth-marks.ts';
import { fillingMarks, veilMarks } from './gravel.ts';
import { jetMarks } from './jet.ts';
import { levelMarks } from './levels.ts';
import { type Clip, type Mark, path } from './marks.ts';
import { boreWidth, pipeWalls, pipeWater, ribbonMarks, ribbonsOf, riserClip } from './pipes.ts';
import { datumMarks, lengthMarks } from './rulers.ts';
import { fallingMarks, poolSheets, type Running, streamWater } from './running.ts';
import type { Scale } from './scale.ts';
import type { FilterScene, Scene } from './scene.ts';
import { settingsAt } from './settings.ts';
import { spillMarks } from './spill.ts';
import { stoneMarks } from './stone.ts';
import { bankBeyond, bedMarks } from './stream-bed.ts';
import { floatMarks, hoseMarks, overflowFlow, overflowMarks } from './supply.ts';
import { checkValveMarks, valveMarks } from './valve.ts';
import { pumpMarks, screenMarks, vaultMarks } from './vault.ts';
import { mediaMarks, passageMarks, rackMarks, vesselClip, vesselMarks } from './vessel.ts';
import { wallMarks } from './walls.ts';

/** What stays while water moves: drawn once for a site and a width. Layers from the back to the front. */
export interface Ground {
  readonly clips: readonly Clip[];
  /** Behind the water. */
  readonly behind: readonly Mark[];
  /** In the water: seen through it. */
  readonly sunk: readonly Mark[];
  /** Before the water: stones, vessels, pipes. */
  readonly before: readonly Mark[];
  readonly rulers: readonly Mark[];
}

/** What a moment draws, layer by layer. */
export interface Flowing {
  readonly clips: readonly Clip[];
  /** Water standing and running in the cut, behind stones and vessels. */
  readonly water: readonly Mark[];
  /** Media, as they lie or float. */
  readonly bed: readonly Mark[];
  /** Over what is sunk in it. */
  readonly veil: readonly Mark[];
  /** Sheets, falls, ribbons, handles, levels. */
  readonly over: readonly Mark[];
}

export function groundOf(scene: Scene, scale: Scale): Ground {
  const { filter, reaches, pond, pipes, walls, units } = scene;
  const clips = waterClips(scene, scale);
  if (filter) clips.push({ id: 'vessel', d: vesselClip(filter, scale) });
  const top = pond.rim + units.v;
  const sunk = fillingMarks('pond', pond.cut, scene.scenario.pond.displaced, top, scale, 'pond');
  const before: Mark[] = [];
  const beyond: Mark[] = [];
  reaches.forEach((reach, i) => {
    if (reach.kind === 'stream') {
      beyond.push(...bankBeyond(reach, scene, scale));
      before.push(...bedMarks(reach, scene, scale));
      return;
    }
    sunk.push(...fillingMarks(reach.reach.name, reach.cut, reach.reach.displaced, reach.rim, scale, `reach-${i}`));
    for (const stone of reach.stones) {
      const box = {
        left: scale.x(stone.left),
        right: scale.x(stone.right),
        top: scale.y(stone.crest),
        bottom: scale.y(stone.under),
      };
      if (stone.cut) before.push(...stoneMarks(stone.stone.name, box));
      else beyond.unshift(...stoneMarks(stone.stone.name, box, true));
    }
  });
  if (filter?.filter.media) sunk.push(...rackMarks(filter, filter.filter.media, scale));
  before.push(...walls.flatMap((wall) => wallMarks(wall, scale)));
  if (filter) before.push(...vesselMarks(filter, scale));
  before.push(...vaultMarks(scene, scale));
  return {
    clips,
    behind: [...earthMarks(scene, scale), ...beyond],
    sunk,
    before: [...before, ...pipeWalls(pipes, scale), ...overflowMarks(scene, scale)],
    rulers: [
      ...coverMarks(scale),
      ...datumMarks(scale, scene.scenario.display),
      ...lengthMarks(scale, scene.scenario.display),
    ],
  };
}

/** px per m³/s: 620, or what lets the main's greatest flow show and still fit its bore; in a close-up what fills it. */
export function flowScaleOf(
  scene: Scene,
  scale: Scale,
  answer: RunAnswer | undefined,
  balance: BalanceAnswer | null | undefined,
): number {
  const range = answer?.flows.main;
  const most = Math.max(balance?.flows.main ?? 0, range?.max.value ?? 0, -(range?.min.value ?? 0));
  const bore = boreWidth(scene.pipes.main.diameter, scale);
  if (!(most > 0)) return 620;
  if (scale.closeUp) return (0.8 * bore) / most;
  const room = bore - 1.6;
  return Math.max(Math.min(620, room / most), Math.min(room, 4.2) / most);
}

export function flowingAt(
  scene: Scene,
  scale: Scale,
  moment: Moment,
  answer: RunAnswer | undefined,
  flowScale: number,
): Flowing {
  const { levels, flows } = moment;
  const { filter, reaches, pipes, pond, vault, scenario } = scene;
  const settings = settingsAt(scenario, answer?.events ?? [], moment.t);
  const running: Running = { levels, flows, settings, flowScale };
  const water = [
    ...standingMarks(pondStanding(scene, levels.pond), scale),
    ...standingMarks(basinStanding(vault.cut, levels.vault, 'vault'), scale),
  ];
  if (filter) water.push(...standingMarks(basinStanding(filter.cut, levels.filter, 'filter'), scale));
  const over: Mark[] = [];
  const veil = veilMarks(pond.cut, scenario.pond.displaced, levels.pond, scale, 'pond');
  reaches.forEach((reach, i) => {
    const level = levels[reach.reach.name];
    if (reach.kind === 'stream') {
      water.push(...streamWater(reach, level, flows[reach.reach.name] ?? 0, scale));
      return;
    }
    water.push(...standingMarks(basinStanding(reach.cut, level, `reach-${i}`), scale));
    veil.push(...veilMarks(reach.cut, reach.reach.displaced, level, scale, `reach-${i}`));
    water.push(...poolSheets(reach, running, scale, false));
    over.push(...poolSheets(reach, running, scale, true));
  });
  if (filter) over.push(...lipSheet(scene, running, scale));
  over.push(...fallingMarks(scene, running, scale));
  const media = filter?.filter.media;
  const bed: Mark[] = [];
  if (filter && media) {
    const stands = bedAt(filter, media, scenario, moment, scale);
    bed.push(...mediaDrawn(filter, media, stands, scale));
    over.push(...passageMarks(filter, media, flows.media ?? 0, flows.gap ?? 0, stands, scale));
  }
  const main = flows.main ?? 0;
  const pipeFlows = { main, bottom: flows['bottom feed'] ?? 0, top: flows['top feed'] ?? 0 };
  over.push(...pipeWater(pipes, scale), ...ribbonMarks(ribbonsOf(pipes, pipeFlows, flowScale, scale), pipes, scale));
  over.push(...jetMarks(scene, flows['top feed'] ?? 0, levels, flowScale, scale), ...pumpMarks(scene, scale));
  if (pipes.bottomFeed) over.push(...valveMarks(pipes.bottomFeed, settings.bottomValve, scale));
  if (pipes.topFeed) over.push(...valveMarks(pipes.topFeed, settings.topValve, scale));
  over.push(...checkValveMarks(pipes, settings.checkValve, main > 1e-7, scale));
  over.push(...screenMarks(vault, pond, settings.blockage.intake, scale), ...floatMarks(scene, levels, scale));
  over.push(...spillMarks(scene, levels, flows, flowScale, scale));
  over.push(...overflowFlow(scene, flows.overflow ?? 0, flowScale, scale));
  over.push(...hoseMarks(scene, settings.hoses, flowScale, levels.pond, scale), ...levelMarks(scene, answer, scale));
  return { clips: [{ id: 'riser', d: riserClip(levels.riser, scale) }], water, bed, veil, over };
}

/** All layers of a drawing, from the back to the front. */
export const layersOf = (ground: Ground, flowing: Flowing): (readonly Mark[])[] => [
  ground.behind,
  flowing.water,
  ground.sunk,
  flowing.bed,
  flowing.veil,
  ground.before,
  flowing.over,
  ground.rulers,
];

/** Media of one drawing as they stood last: strokes and grains are laid anew only when they have moved. */
const drawn = new WeakMap<Scale, { readonly of: string; readonly marks: Mark[] }>();

function mediaDrawn(filter: FilterScene, media: Media, bed: Bed, scale: Scale): Mark[] {
  const near = { gap: Math.round(2 * bed.gap) / 2, lifted: Math.round(bed.lifted * 500) / 500 };
  const of = `${near.gap} ${near.lifted} ${JSON.stringify(media.layers.map(({ deposit: _, ...layer }) => layer))}`;
  const known = drawn.get(scale);
  if (known?.of === of) return known.marks;
  const marks = mediaMarks(filter, media, near, scale);
  drawn.set(scale, { of, marks });
  return marks;
}

/** Water over the filter's lip along its spout. */
function lipSheet({ filter, units }: Scene, { levels, flows }: Running, scale: Scale): Mark[] {
  if (!filter) return [];
  const { brink, cut } = filter;
  const head = levels.filter - brink.z;
  if (head <= 0) return [];
  const from = scale.x(cut.left + cut.width) - 1;
  const to = scale.x(brink.x);
  const q = Math.max(0, flows.lip ?? 0) / brink.width;
  const end = scale.y(brink.z + Math.min(head, 0.715 * Math.cbrt((q * q) / 9.80665)));
  const high = scale.y(levels.filter);
  const shape = `M${from} ${scale.y(brink.z)}V${high}Q${(from + to) / 2} ${high} ${to} ${end}V${scale.y(brink.z)}Z`;
  return units.u > 0
    ? [path(shape, 'w1'), path(`M${from} ${high}Q${(from + to) / 2} ${high} ${to} ${end}`, 'surface')]
    : [];
}
