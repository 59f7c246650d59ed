/** What the worker does for the map of all settings. */
import { readScenario } from '../../sim/index.ts';
import { operatingMap, speedsBy } from '../../sim/map/map.ts';
import { mapSentences } from '../../sim/map/region-words.ts';
import type { MapRequest } from './map-asked.ts';
import type { Given } from './protocol.ts';

/** Every 5° of a handle, and closer where a valve is nearly shut and all figures bend. */
const OPENINGS = [90, 88, 86, 84, 82, 80, 77.5, 75, 70, 65, 60, 55, 50, 45, 40, 35, 30, 25, 20, 15, 10, 5, 0].map(
  (closed) => 1 - closed / 90,
);
/** Every twentieth of the share. */
const SHARES = 21;
/** Every fortieth of the speed, so that tenths are among them. */
const SPEED = 0.025;

export function mapGiven({ text, display, plane }: MapRequest): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const s = display ? { ...reading.scenario, display } : reading.scenario;
  const map = operatingMap(
    s,
    plane === 'valves' ? { x: OPENINGS, y: OPENINGS } : { plane, x: speedsBy(s, SPEED), n: SHARES },
  );
  return { kind: 'map', map, sentences: map.ok ? mapSentences(map, s.display) : [] };
}
