/** Published stiff problems against the integrator, state by state. */
import { type Published, problems, solveProblem } from '../solver/stiffProblems.ts';
import { publishedBy } from './checks.ts';

/** Solved when the first of its states is asked for. */
function solution(problem: Published): () => Float64Array {
  let state: Float64Array | undefined;
  return () => {
    state ??= solveProblem(problem).state;
    return state;
  };
}

for (const problem of problems) {
  const { name, source, expected, relative } = problem;
  const state = solution(problem);
  publishedBy(
    { source, kind: 'published value', tolerance: relative },
    expected.map((value, k) => [`${name}, state ${k + 1}`, value, () => state()[k]] as const),
  );
}
