import { box, circle, type Mark, path, px, segment, words } from './marks.ts';
import { boreWidth } from './pipes.ts';
import type { Scale } from './scale.ts';
import type { PipeRoute, PipeScene } from './scene.ts';
import type { Settings } from './settings.ts';

/**
 * A ball valve seen from above: its handle at its true angle, along the pipe when open, across it when shut.
 *
 * @param opening 0 shut .. 1 open: 1 − angle / 90°
 */
export function valveMarks(route: PipeRoute, opening: number, scale: Scale): Mark[] {
  if (!route.valve) return [];
  const [x, y] = scale.at(route.valve);
  const r = Math.max(4.6, 0.5 * boreWidth(route.diameter, scale) + 2);
  const along = route.valveUpright ? -Math.PI / 2 : 0;
  const angle = along + handleAngle(opening);
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const reach = scale.closeUp ? 1.7 * r : r + 2.2;
  return [
    ...(scale.closeUp ? [path(protractor(x, y, 2.1 * r, along), 'thin')] : []),
    path(circle(x, y, r), 'fitting'),
    path(segment(x - 2.2 * dx, y - 2.2 * dy, x + reach * dx, y + reach * dy), scale.closeUp ? 'handle bold' : 'handle'),
  ];
}

/** A quarter circle from the pipe's line on, with a tick every 15°. */
function protractor(x: number, y: number, r: number, along: number): string {
  const at = (degrees: number, radius: number): string => {
    const angle = along + (degrees * Math.PI) / 180;
    return `${px(x + radius * Math.cos(angle))} ${px(y + radius * Math.sin(angle))}`;
  };
  let d = `M${at(0, r)}A${px(r)} ${px(r)} 0 0 1 ${at(90, r)}`;
  for (let degrees = 0; degrees <= 90; degrees += 15)
    d += `M${at(degrees, r)}L${at(degrees, r + (degrees % 45 === 0 ? 6 : 3.5))}`;
  return d;
}

/** Turn of a handle from the pipe's own line, radians. */
export const handleAngle = (opening: number): number => (1 - Math.min(1, Math.max(0, opening))) * (Math.PI / 2);

/** The check valve on the pump's discharge: sound, leaking, failed, of unknown state, or none. */
export function checkValveMarks(
  pipes: PipeScene,
  state: Settings['checkValve'],
  forward: boolean,
  scale: Scale,
): Mark[] {
  const [x, y] = scale.at(pipes.checkValve);
  const half = 0.5 * boreWidth(pipes.main.diameter, scale) + 2.8;
  if (state === 'none') return [];
  const frame = path(box(x - half, y - half, 2 * half, 2 * half), state === 'unknown' ? 'fitting doubtful' : 'fitting');
  const hinge = [x - half + 1.6, y + half - 2] as const;
  const flap = (dx: number, dy: number): Mark =>
    path(segment(hinge[0], hinge[1], hinge[0] + dx, hinge[1] + dy), 'handle thin');
  const reach = 2 * half - 3.4;
  if (state === 'unknown') return [frame, words(x, y + 4.2, '?', 'sign', 'middle')];
  if (state === 'failed') {
    const s = half - 2.2;
    return [frame, path(segment(x - s, y - s, x + s, y + s) + segment(x - s, y + s, x + s, y - s), 'cross')];
  }
  // Water lifts the flap against the side; at rest it lies across the pipe, a leaking one a little off its seat.
  if (forward) return [frame, flap(0.35 * reach, -0.92 * reach)];
  return [frame, flap(reach, state === 'leaking' ? -0.45 * reach : 0)];
}
