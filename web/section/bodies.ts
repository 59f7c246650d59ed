import type { Standing } from './basin-water.ts';
import { type Cut, floorOf, leftAt, leftBank, rightAt, rightBank, type Spot } from './cut.ts';
import { box, type Clip, closed } from './marks.ts';
import type { Scale } from './scale.ts';
import { bedAt, type Scene, type StreamScene } from './scene.ts';

/** Outlines inside which the water of each basin stands: the liner's or the vessel's own line. */
export function waterClips(scene: Scene, scale: Scale): Clip[] {
  const { vault, filter, reaches, units } = scene;
  const clips: Clip[] = [{ id: 'pond', d: closed(pondOutline(scene).map(scale.at)) }];
  const vaultFloor = floorOf(vault.cut);
  clips.push({ id: 'vault', d: boxOf(vault.cut, vaultFloor, vault.top + units.v, scale) });
  if (filter)
    clips.push({ id: 'filter', d: boxOf(filter.cut, floorOf(filter.cut), filter.rim + 0.2 * units.v, scale) });
  reaches.forEach((reach, i) => {
    if (reach.kind === 'pool') {
      const top = reach.rim + 0.1 * units.v;
      clips.push({
        id: `reach-${i}`,
        d: closed([...leftBank(reach.cut, top), ...rightBank(reach.cut, top)].map(scale.at)),
      });
    }
  });
  return clips;
}

function boxOf(cut: Cut, floor: number, top: number, scale: Scale): string {
  return box(scale.x(cut.left), scale.y(top), scale.a * cut.width, scale.y(floor) - scale.y(top));
}

/** The pond's own banks, and above the intake's lip the throat to the vault. */
function pondOutline({ pond, vault, units }: Scene): Spot[] {
  const top = pond.rim + 0.1 * units.v;
  const outer = vault.cut.left - vault.wall;
  return [...leftBank(pond.cut, top), ...rightBank(pond.cut, vault.lip), [outer, vault.lip], [outer, top]];
}

/** The pond's water at a level: it stands into the throat wherever it is above the intake's lip. */
export function pondStanding({ pond, vault }: Scene, level: number): Standing {
  const right = level > vault.lip ? vault.cut.left - vault.wall : rightAt(pond.cut, level);
  return {
    level,
    floor: floorOf(pond.cut),
    left: pond.cut.left,
    right: vault.cut.left - vault.wall,
    surface: [leftAt(pond.cut, level), right],
    clip: 'pond',
  };
}

export function basinStanding(cut: Cut, level: number, clip: string): Standing {
  return {
    level,
    floor: floorOf(cut),
    left: cut.left,
    right: cut.left + cut.width,
    surface: [leftAt(cut, level), rightAt(cut, level)],
    clip,
  };
}

/** Depth of a stream at a level as the record has it: over its foot, all along. */
export const streamDepth = (stream: StreamScene, level: number): number => Math.max(0, level - stream.reach.foot);

/** Elevation of the water that something falls into at a station, m. */
export function waterAt(scene: Scene, into: number, x: number, levels: Readonly<Record<string, number>>): number {
  const reach = scene.reaches[into];
  if (!reach) return Math.max(levels.pond, floorOf(scene.pond.cut));
  const level = levels[reach.reach.name];
  if (reach.kind === 'pool') return Math.max(level, floorOf(reach.cut));
  return bedAt(reach, Math.min(x, reach.right)) + streamDepth(reach, level);
}
