/** The library: from a file's text to the answer. */
export { balance } from './balance.ts';
export type * from './clogging/answer.ts';
export { care } from './clogging/care.ts';
export type * from './pondwater/answer.ts';
export { wasteCourse } from './pondwater/course.ts';
export type * from './results/answer.ts';
export { RunFailure } from './results/failure.ts';
export type { RunRecord } from './results/record.ts';
export { seriesOf } from './results/series.ts';
export { readScenario } from './scenario/read.ts';
export type { Problem, Reading, Scenario } from './scenario/scenario.ts';
export { type Run, simulate } from './simulate.ts';
