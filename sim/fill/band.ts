import { assumptionWords } from '../results/checks/assumptionWords.ts';
import { type Band, bandsOf } from '../results/checks/bands.ts';
import type { Assumption, Scenario } from '../scenario/scenario.ts';
import { fillCourse } from './course.ts';
import { surfaceAt } from './marks.ts';
import type { FillOptions } from './plan.ts';

/**
 * A bucket test is good to a twentieth: a second of a half-minute and a finger's breadth in the bucket, and the mains
 * give more by night than by day. Our estimate.
 */
const BUCKET = 0.05;
/** What dry stone, gravel and folds of the liner take up, as a level of the pond, m. Our estimate. */
const MODEL = 0.005;

/** Parts whose values move a fill while the pump stays off. */
const PUMP_OFF = /^(sketch|hoses|pond|vault|intake|weather)\b/;

/**
 * How far the moment at which the pond is full may be off, s, either way, from the reading error of each hose's flow
 * and the assumed values; undefined where it is never full, or is already.
 *
 * @throws RunFailure where a march fails
 */
export function fillBand(s: Scenario, options: FillOptions = {}): Band | undefined {
  const { fillMark } = s.pond;
  if (fillMark === undefined || !s.hoses.some(({ flow }) => flow > 0)) return undefined;
  const full = (of: Scenario): number | undefined => fillCourse(of, of.pond.fillMark ?? fillMark, options).full;
  const course = fillCourse(s, fillMark, options);
  if (course.full === undefined || course.full === 0) return undefined;
  const assumed = [...s.assumed, ...flowErrors(s)].filter(
    ({ place }) => options.pumpAt !== undefined || PUMP_OFF.test(place),
  );
  const flow = course.schedule.flowAt(Math.max(0, course.full - 1));
  const model = flow > 0 ? (MODEL * surfaceAt(s, fillMark)) / flow : 0;
  return bandsOf({ ...s, assumed }, (changed) => [full(changed)], [model], 'on all')[0];
}

/** The flow of each hose as a value that is not known for sure. A sketch's own bucket has its band already. */
function flowErrors(s: Scenario): Assumption[] {
  if (s.assumed.some(({ place }) => place === 'sketch.bucket')) return [];
  return s.hoses.map(({ flow }, i) => ({
    place: `hoses[${i}].flow`,
    value: flow,
    band: notedBand(s, i) ?? [(1 - BUCKET) * flow, (1 + BUCKET) * flow],
    from: 'default',
  }));
}

/** The band of a flow that was reckoned from a pressure, noted by its place in the file. */
function notedBand({ assumed }: Scenario, hose: number): Assumption['band'] {
  const places = [`supply.hose[${hose}].flow`, ...(hose === 0 ? ['supply.hose.flow'] : [])];
  return assumed.find(({ place }) => places.includes(place))?.band;
}

/** What moves the moment most, as a person calls it: 'the bucket test of ‘north’'. */
export function fillBandWords(s: Scenario, { most }: Band): string | undefined {
  if (most === undefined) return undefined;
  const hose = /^hoses\[(\d+)\]/.exec(most.assumption.place);
  if (hose === null) return assumptionWords(s, most.assumption);
  const { name, by } = s.hoses[Number(hose[1])];
  const test = by === 'pressure' ? 'the pressure at the tap' : 'the bucket test';
  return s.hoses.length > 1 ? `${test} of ‘${name}’` : test;
}
