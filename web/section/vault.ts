import { randomStream } from '../../sim/random.ts';
import { floorOf } from './cut.ts';
import { box, type Mark, path, segment } from './marks.ts';
import type { Scale } from './scale.ts';
import type { PondScene, Scene, VaultScene } from './scene.ts';
import { stoneMarks } from './stone.ts';

/** The vault's walls and floor, its lid, the intake's lip and the stone over it. */
export function vaultMarks({ pond, vault, units }: Scene, scale: Scale): Mark[] {
  const left = scale.x(vault.cut.left);
  const right = scale.x(vault.cut.left + vault.cut.width);
  const floor = scale.y(floorOf(vault.cut));
  const top = scale.y(vault.top);
  const lip = scale.y(vault.lip);
  const walls = `M${left.toFixed(1)} ${lip.toFixed(1)}V${floor.toFixed(1)}H${right.toFixed(1)}V${top.toFixed(1)}`;
  const bank = scale.x(pond.cut.left + pond.cut.width);
  const cap = {
    left: bank - 0.02 * units.u * scale.a,
    right: left - 1.5,
    top: top - 2,
    bottom: Math.min(top + 10, scale.y(pond.rim) + 9),
  };
  const lid = box(left - 3, top - 6, right - left + 8, 5);
  return [path(walls, 'vault-wall'), ...stoneMarks('intake cap', cap), path(lid, 'stone')];
}

/** Bars of the intake's screen, and leaves on the blocked share of it. */
export function screenMarks(vault: VaultScene, pond: PondScene, blockage: number, scale: Scale): Mark[] {
  const x = scale.x(vault.cut.left) - 1.2;
  const top = scale.y(pond.rim) + 9;
  const bottom = scale.y(vault.lip);
  if (bottom - top < 2) return [];
  let bars = '';
  for (let y = top; y <= bottom; y += 3.2) bars += segment(x - 1.4, y, x + 1.4, y);
  const marks: Mark[] = [path(bars, 'screen'), path(box(x - 1.6, top, 3.2, bottom - top), 'screen-frame')];
  return blockage > 0 ? [...marks, path(leaves(x, bottom, blockage * (bottom - top)), 'leaf')] : marks;
}

function leaves(x: number, bottom: number, tall: number): string {
  const random = randomStream('leaves');
  let d = '';
  for (let up = 1.2; up < tall; up += 2.4) {
    const turn = random() * 2.4 - 1.2;
    const [dx, dy] = [3.2 * Math.cos(turn), 3.2 * Math.sin(turn)];
    const [cx, cy] = [x - 3.4 - 1.4 * random(), bottom - up];
    d += `M${(cx - dx).toFixed(1)} ${(cy - dy).toFixed(1)}Q${(cx - dy * 0.7).toFixed(1)} ${(cy + dx * 0.7).toFixed(1)} ${(cx + dx).toFixed(1)} ${(cy + dy).toFixed(1)}Q${(cx + dy * 0.7).toFixed(1)} ${(cy - dx * 0.7).toFixed(1)} ${(cx - dx).toFixed(1)} ${(cy - dy).toFixed(1)}Z`;
  }
  return d;
}

/** The pump: a slotted strainer down to its suction, a body, a neck into the discharge. */
export function pumpMarks({ pipes }: Scene, scale: Scale): Mark[] {
  const { x, suction, top } = pipes.pump;
  const cx = scale.x(x);
  const bottom = scale.y(suction);
  const up = scale.y(top);
  const tall = Math.max(6, bottom - up);
  const half = Math.min(8.5, 0.42 * tall);
  const shoulder = bottom - 0.62 * tall;
  const body = `M${(cx - half).toFixed(1)} ${bottom.toFixed(1)}V${shoulder.toFixed(1)}Q${(cx - half).toFixed(1)} ${(shoulder - 0.18 * tall).toFixed(1)} ${(cx - 0.45 * half).toFixed(1)} ${(shoulder - 0.18 * tall).toFixed(1)}V${up.toFixed(1)}H${(cx + 0.45 * half).toFixed(1)}V${(shoulder - 0.18 * tall).toFixed(1)}Q${(cx + half).toFixed(1)} ${(shoulder - 0.18 * tall).toFixed(1)} ${(cx + half).toFixed(1)} ${shoulder.toFixed(1)}V${bottom.toFixed(1)}Z`;
  let slots = '';
  for (let i = -2; i <= 2; i++)
    slots += segment(cx + (i * half) / 2.8, bottom - 0.3 * tall, cx + (i * half) / 2.8, bottom - 1.5);
  return [
    path(body, 'pump'),
    path(slots, 'hatch'),
    path(segment(cx - half, bottom - 0.34 * tall, cx + half, bottom - 0.34 * tall), 'thin'),
  ];
}
