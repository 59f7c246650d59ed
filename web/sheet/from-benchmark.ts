/** A site as a surveyor sees it from a benchmark: every elevation less that of the benchmark, everything else as it is. */
import type { BalanceAnswer, Range, RunAnswer } from '../../sim/results/answer.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';

/** Keys of a checked scenario whose figures are elevations. */
const ELEVATIONS = new Set(
  'fillMark elevation bottom suction minimum below restart tee inlet outlet foot set low level from to'.split(' '),
);

/** Lists of points, and where the elevation stands in each. */
const POINTS: Readonly<Record<string, 0 | 1>> = { profile: 0, crest: 1 };

export function scenarioFrom(s: Scenario, benchmark: number): Scenario {
  return benchmark === 0 ? s : (lowered(s, '', benchmark) as Scenario);
}

function lowered(value: unknown, key: string, by: number): unknown {
  if (typeof value === 'number') return ELEVATIONS.has(key) ? value - by : value;
  if (Array.isArray(value)) {
    const at = POINTS[key];
    return at === undefined
      ? value.map((each) => lowered(each, '', by))
      : value.map((point: readonly number[]) => point.map((each, i) => (i === at ? each - by : each)));
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, UNTOUCHED.has(name) ? each : lowered(each, name, by)]),
  );
}

/** Parts that no drawing takes elevations from, and whose keys mean other things. */
const UNTOUCHED = new Set(['actions', 'assumed', 'limits', 'sketched', 'hoses', 'weather', 'curve', 'power']);

export function answerFrom(answer: RunAnswer | undefined, by: number): RunAnswer | undefined {
  if (!answer || by === 0) return answer;
  const range = ({ start, end, min, max }: Range): Range => ({
    start: start - by,
    end: end - by,
    min: { t: min.t, value: min.value - by },
    max: { t: max.t, value: max.value - by },
  });
  return { ...answer, levels: mapped(answer.levels, range) };
}

export function balanceFrom(balance: BalanceAnswer | null | undefined, by: number): BalanceAnswer | null | undefined {
  if (!balance || by === 0) return balance;
  return { ...balance, levels: mapped(balance.levels, (level) => level - by) };
}

const mapped = <T>(all: Record<string, T>, change: (each: T) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(all).map(([name, each]) => [name, change(each)]));
