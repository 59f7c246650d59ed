import { readSite } from '../../sim/scenario/read.ts';
import type { Problem, Scenario } from '../../sim/scenario/scenario.ts';

/** Three numbers of the pond and the pump: the least there is. */
export const least = (): Record<string, unknown> => ({
  length: '16 ft',
  width: '11 ft',
  depth: '30 in',
  pump: { flow: '3600 gph', head: '18 ft' },
});

export function siteOf(file: unknown): Scenario {
  const reading = readSite(file);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.scenario;
}

export function problemsOf(file: unknown): readonly Problem[] {
  const reading = readSite(file);
  return reading.ok ? [] : reading.problems;
}

export const placesAssumed = ({ assumed }: Scenario): string[] => assumed.map(({ place }) => place);
