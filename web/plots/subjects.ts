/** What of a run can be drawn: each basin's level with its edge, and each flow that ever moved. */
import type { Series } from '../../sim/results/answer.ts';
import type { Crest, Scenario } from '../../sim/scenario/scenario.ts';
import { INTO_POND, intoPond } from './back.ts';
import type { Measure } from './value-ticks.ts';

export interface Line {
  /** The column's name. */
  readonly key: string;
  /** What people call it. */
  readonly name: string;
  readonly measure: Measure;
  readonly times: Float64Array;
  /** Elevations, m, or flows, m³/s. */
  readonly values: Float64Array;
  /** The elevation its depth is told from, m; undefined: it has none. */
  readonly edge: number | undefined;
  /** Drawn without being asked for. */
  readonly usual: boolean;
}

/** A height of the pond that has a line of its own. */
export interface Limit {
  readonly name: string;
  /** m. */
  readonly elevation: number;
  readonly look: 'edge' | 'wanted' | 'mark';
}

/** Flows under this never moved, m³/s: a drop in ten seconds. */
const STILL = 5e-9;

const lowest = (rim: Crest): number => Math.min(...rim.crest.map(([, elevation]) => elevation));

/** The vault's water is the pond's: both are told from the pond's edge. */
function edgeOf(name: string, { pond, filter, watercourse }: Scenario): number | undefined {
  if (name === 'pond' || name === 'vault') return lowest(pond.rim);
  if (name === 'filter') return filter && lowest(filter.rim);
  const reach = watercourse.find((each) => each.name === name);
  if (reach?.kind === 'pool') return lowest(reach.rim);
  return reach?.edge && reach.foot + reach.edge.height;
}

/**
 * The pond's edge, the room wanted below it, its overflow and its fill mark.
 *
 * @param wanted least room below the edge, m; left out where none is known
 */
export function limitsOf({ pond }: Scenario, wanted: number | undefined): Limit[] {
  const edge = lowest(pond.rim);
  const limits: Limit[] = [{ name: 'edge', elevation: edge, look: 'edge' }];
  if (wanted !== undefined) limits.push({ name: 'room wanted', elevation: edge - wanted, look: 'wanted' });
  if (pond.overflow) limits.push({ name: 'overflow', elevation: pond.overflow.elevation, look: 'mark' });
  if (pond.fillMark !== undefined) limits.push({ name: 'fill mark', elevation: pond.fillMark, look: 'mark' });
  return limits;
}

/** What is looked at first stands first; the rest keep the record's order. */
const FIRST = { levels: ['pond'], flows: [INTO_POND, 'main', 'bottom feed', 'top feed', 'media', 'gap', 'lip'] };

function inOrder(columns: Record<string, Float64Array>, first: readonly string[]): [string, Float64Array][] {
  const rank = (name: string): number => (first.includes(name) ? first.indexOf(name) : first.length);
  return Object.entries(columns).sort(([a], [b]) => rank(a) - rank(b));
}

export function levelLines({ t, levels }: Series, scenario: Scenario, call: (name: string) => string): Line[] {
  const usual = new Set(['pond', 'filter', ...scenario.watercourse.filter(isPool).map(({ name }) => name)]);
  return inOrder(levels, FIRST.levels).map(([key, values]) => ({
    key,
    name: call(key),
    measure: 'level',
    times: t,
    values,
    edge: edgeOf(key, scenario),
    usual: usual.has(key),
  }));
}

const isPool = ({ kind }: Scenario['watercourse'][number]): boolean => kind === 'pool';

/** The flows that moved, and the names of those that never did. */
export function flowLines(
  series: Series,
  scenario: Scenario,
  call: (name: string) => string,
): { moved: Line[]; still: string[] } {
  const moved: Line[] = [];
  const still: string[] = [];
  const columns = { [INTO_POND]: intoPond(series, scenario), ...series.flows };
  for (const [key, values] of inOrder(columns, FIRST.flows)) {
    if (!values.some((value) => Math.abs(value) > STILL)) {
      still.push(call(key));
      continue;
    }
    const usual = key === INTO_POND || key === 'main';
    moved.push({ key, name: call(key), measure: 'flow', times: series.t, values, edge: undefined, usual });
  }
  return { moved, still };
}
