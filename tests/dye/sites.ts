import fc from 'fast-check';
import { readScenario } from '../../sim/scenario/read.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { siteFile } from '../network/randomSite.ts';

// biome-ignore lint/suspicious/noExplicitAny: a file's value as it is parsed, parts of which are replaced
type File = any;

/** Random sites whose filter gets water at some time of most runs: random as any, but for a pump that reaches it. */
export const fedSite: fc.Arbitrary<Scenario> = fc
  .tuple(siteFile, fc.double({ min: 0.2, max: 1, noNaN: true }), fc.constantFrom(1, 8, 30), fc.constantFrom(0, 300))
  .filter(([file]) => 'filter' in file && (file as File).pond.level !== 'empty')
  .map(([file, valve, tanks, holdDown]) => read(withPump(file, valve, tanks, holdDown)));

function withPump(file: File, valve: number, tanks: number, holdDown: number): File {
  const { pump, plumbing, filter, intake } = file;
  return {
    ...file,
    start: 'standing',
    intake: { ...intake, blockage: 0 },
    pump: { ...pump, curve: { flow: '8 L/s', head: 20 }, running: true, cutOut: undefined },
    plumbing: { ...plumbing, bottomFeed: { ...plumbing.bottomFeed, valve } },
    filter: { ...filter, media: { ...filter.media, tanks, holdDown } },
  };
}

export function read(file: File): Scenario {
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.scenario;
}
