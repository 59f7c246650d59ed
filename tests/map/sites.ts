import { readFileSync } from 'node:fs';
import type { OperatingMap, Plane } from '../../sim/map/answer.ts';
import { operatingMap } from '../../sim/map/map.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** A file's value as it is parsed: whatever a test wants to change in it. */
type Parsed = ReturnType<typeof JSON.parse>;

export function siteOf(name: string, change: (file: Parsed) => void = () => {}): Scenario {
  const file = JSON.parse(readFileSync(new URL(`../../scenarios/${name}.json`, import.meta.url), 'utf8'));
  change(file);
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

/** Felt so fine that the media float up at the greater flows, in a filter whose rim is low: every border lies in the map. */
export const felted = (file: Parsed): void => {
  file.filter.media.layers = [
    { name: 'felt', thickness: '60 mm', porosity: 0.9, grain: '0.05 mm' },
    { name: 'bags', thickness: '300 mm', porosity: 0.84, grain: '9 mm' },
  ];
  file.filter.media.gap = '4 mm';
  file.filter.rim.crest = [
    [0, '1.09 m'],
    ['3.4 m', '1.09 m'],
  ];
  file.limits = { channeling: 0.66, headroom: ['15 mm', '25 mm'] };
};

/** The map of a site that has one. */
export function mapOf(site: Scenario, plane: Plane = 'valves', n = 21): OperatingMap {
  const map = operatingMap(site, { plane, n });
  if (!map.ok) throw new Error(map.says);
  return map;
}
