/** Everything that was assumed, what moves the answer most first. */
import type { Display } from '../../sim/quantity/index.ts';
import type { Check } from '../../sim/results/answer.ts';
import type { Assumption } from '../../sim/scenario/scenario.ts';
import { otherBand, otherName, otherValue } from './other-names.ts';
import { ROWS, rowAt } from './rows.ts';
import { bandWords, type Sketching, valueWords } from './standing.ts';

export interface Assumed {
  readonly place: string;
  readonly name: string;
  readonly value: string;
  readonly band: string;
  readonly origin: string;
  /** Names of the checks whose figures it moves most, in the order in which they are told. */
  readonly moves: readonly string[];
}

/**
 * The list: first what moves the answers most, in the order of the answers; then what has a band; then the rest, each
 * in the order of the water's way.
 *
 * @param checks of the last answer in full, the one to the question asked first
 */
export function assumedList(site: Sketching, checks: readonly Check[]): readonly Assumed[] {
  const listed = (site.scenario?.assumed ?? []).map((each) => ({
    ...assumedOf(site, each),
    moves: checks.filter(({ rests }) => rests?.place === each.place).map(({ name }) => name),
  }));
  const first = ({ moves }: Assumed): number => {
    const at = checks.findIndex(({ name }) => moves.includes(name));
    return at < 0 ? checks.length : at;
  };
  const way = ({ place }: Assumed): number => {
    const at = ROWS.findIndex((row) => row.place === place);
    return at < 0 ? ROWS.length : at;
  };
  return listed.sort((a, b) => first(a) - first(b) || Number(a.band === '') - Number(b.band === '') || way(a) - way(b));
}

function assumedOf(site: Sketching, each: Assumption): Omit<Assumed, 'moves'> {
  const row = rowAt(each.place);
  if (!row) return { place: each.place, ...ofOthers(each, site) };
  const { called, by, origin } = row.number;
  const words = origin ?? 'our default';
  return {
    place: each.place,
    name: called,
    value: valueWords(site, row),
    band: bandWords(site, row),
    origin: by ? `${words}, by ${ruleIn(by, site.display)}` : words,
  };
}

/** A rule of the trade goes by the inch; in the other system it is told without its figures. */
const ruleIn = (by: string, display: Display): string => (display === 'us' ? by : (by.split(':')[0] ?? by));

/** A value that no number of the sketch asks for. */
function ofOthers(each: Assumption, { scenario, display }: { scenario?: Sketching['scenario']; display: Display }) {
  return {
    name: otherName(each.place, scenario),
    value: otherValue(each.place, each.value, display),
    band: each.band ? otherBand(each.place, each.band, display) : '',
    origin: 'our default',
  };
}
