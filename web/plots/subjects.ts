/** What of a run is drawn: each basin's level with its marks, and each flow that ever moved. */
import type { Series } from '../../sim/results/answer.ts';
import type { Crest, Scenario } from '../../sim/scenario/scenario.ts';
import type { Mark, Subject } from './strip.ts';

/** Flows under this never moved, m³/s: a drop in ten seconds. */
const still = 5e-9;

const lowest = (rim: Crest): number => Math.min(...rim.crest.map(([, elevation]) => elevation));

function edgeOf(name: string, { pond, filter, watercourse }: Scenario): number | undefined {
  if (name === 'pond') return lowest(pond.rim);
  if (name === 'filter') return filter && lowest(filter.rim);
  const part = watercourse.find((each) => each.name === name);
  return part?.kind === 'pool' ? lowest(part.rim) : undefined;
}

function marksOf(name: string, { pond, pump }: Scenario, edge: number | undefined): Mark[] {
  const marks: Mark[] = edge === undefined ? [] : [{ name: 'edge', value: edge, always: name === 'pond' }];
  if (name === 'pond' && pond.fillMark !== undefined)
    marks.push({ name: 'fill mark', value: pond.fillMark, always: true });
  if (name === 'vault') marks.push({ name: 'pump’s minimum', value: pump.minimum, always: false });
  return marks;
}

/** What is looked at first stands first: the pond; the pump's way through the filter. The rest keep the record's order. */
const firstOf = { levels: ['pond'], flows: ['main', 'bottom feed', 'top feed', 'media', 'gap', 'lip'] };

function inOrder(columns: Record<string, Float64Array>, first: readonly string[]): [string, Float64Array][] {
  const rank = (name: string): number => (first.includes(name) ? first.indexOf(name) : first.length);
  return Object.entries(columns).sort(([a], [b]) => rank(a) - rank(b));
}

export function levelSubjects({ t, levels }: Series, scenario: Scenario, call: (name: string) => string): Subject[] {
  return inOrder(levels, firstOf.levels).map(([name, values]) => {
    const edge = edgeOf(name, scenario);
    const marks = marksOf(name, scenario, edge);
    return { name: call(name), measure: 'level', times: t, values, edge, marks };
  });
}

/** The flows that moved, and the names of those that never did. */
export function flowSubjects(
  { t, flows }: Series,
  call: (name: string) => string,
): { moved: Subject[]; still: string[] } {
  const moved: Subject[] = [];
  const unmoved: string[] = [];
  for (const [name, values] of inOrder(flows, firstOf.flows)) {
    if (values.some((value) => Math.abs(value) > still)) {
      moved.push({ name: call(name), measure: 'flow', times: t, values, edge: undefined, marks: [] });
    } else unmoved.push(call(name));
  }
  return { moved, still: unmoved };
}
