/** What the map tells of the place under a hand, before the site's own balance does. Pure. */
import type { MapPoint, OperatingMap } from '../../sim/map/answer.ts';
import { FIGURES, figureAt } from '../../sim/map/between.ts';
import { presentWords } from '../../sim/map/words.ts';
import type { Display } from '../engine/protocol.ts';
import type { PlaceSet } from './setting.ts';

/** Read between the map's points; undefined where that tells nothing. */
export function underHand(map: OperatingMap, { place, setting }: PlaceSet, display: Display): string | undefined {
  const [x, y] = place;
  const figures = Object.fromEntries(FIGURES.map((figure) => [figure, figureAt(map, figure, x, y)]));
  const now = { ...map.now, ...figures, ...setting, x, y, found: true };
  if (now.flow === null || now.margin === null) return undefined;
  const fails = now.margin < 0 ? nearestFailing(map, x, y) : null;
  return presentWords({ now: { ...now, fails }, over: map.over }, display, 'Under the hand');
}

function nearestFailing({ x: xs, y: ys, points }: OperatingMap, x: number, y: number): MapPoint['fails'] {
  const [wide, high] = [xs, ys].map((values) => values[values.length - 1] - values[0]);
  const far = (point: MapPoint): number => Math.hypot((point.x - x) / wide, (point.y - y) / high);
  const failing = points.filter(({ fails }) => fails !== null).sort((a, b) => far(a) - far(b));
  return failing[0]?.fails ?? null;
}
