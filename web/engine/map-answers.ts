/** What the worker does for the map of all settings. */
import { readScenario } from '../../sim/index.ts';
import { operatingMap } from '../../sim/map/map.ts';
import { presentWords, regionWords } from '../../sim/map/words.ts';
import type { MapRequest } from './map-asked.ts';
import type { Given } from './protocol.ts';

/** Every 5° of a handle. */
const POINTS = 19;

export function mapGiven({ text, display, plane }: MapRequest): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const s = display ? { ...reading.scenario, display } : reading.scenario;
  const map = operatingMap(s, { plane, n: POINTS });
  return { kind: 'map', map, sentences: map.ok ? [presentWords(map, s.display), ...regionWords(map)] : [] };
}
