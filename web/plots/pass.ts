/** Letting time run: at constant speed over the screen, so slowly where the axis is pulled open. */
import type { Axis } from './time-axis.ts';

/** The moment that is reached from another after so many px. */
export const passed = (axis: Axis, from: number, pixels: number): number => axis.t(axis.x(from) + pixels);

/** How long the opened minutes take to pass, s. */
export const SPEEDS = { slowly: 60, evenly: 24, briskly: 10 } as const;

export type Speed = keyof typeof SPEEDS;

/** px a second at a speed, by which the opened window passes in its time. */
export function pixelsPerSecond(openedWidth: number, speed: Speed): number {
  return openedWidth / SPEEDS[speed];
}

/** What a speed comes to in the opened minutes, '1 min in 1.8 s'. */
export function speedWords(openedSeconds: number, speed: Speed): string {
  const [unit, name] = openedSeconds > 6 * 3600 ? [3600, '1 h'] : openedSeconds > 240 ? [60, '1 min'] : [10, '10 s'];
  const takes = (SPEEDS[speed] * unit) / openedSeconds;
  return `${name} in ${takes < 10 ? takes.toFixed(1) : Math.round(takes)} s`;
}

/** Where a key takes the playhead, s; undefined for a key that does not. Shift: a minute; with Ctrl, Alt or Meta: an hour. */
export function keyMoved(
  key: string,
  held: { readonly shiftKey: boolean; readonly ctrlKey: boolean; readonly altKey: boolean; readonly metaKey: boolean },
  t: number,
  span: number,
): number | undefined {
  const step = held.ctrlKey || held.altKey || held.metaKey ? 3600 : held.shiftKey ? 60 : 1;
  const to = {
    ArrowRight: t + step,
    ArrowUp: t + step,
    ArrowLeft: t - step,
    ArrowDown: t - step,
    PageUp: t + 60,
    PageDown: t - 60,
    Home: 0,
    End: span,
  }[key];
  return to === undefined ? undefined : Math.min(span, Math.max(0, to));
}
