export { type Leak, leakIn } from './answer.ts';
export type { Log, LogProblem, Measured } from './reading.ts';
export { readLog } from './readLog.ts';
export type { LeakAnswer, LogPlot } from './said.ts';
