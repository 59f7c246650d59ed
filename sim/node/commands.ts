import { balance, type Problem, readScenario, type Scenario, seriesOf, simulate } from '../index.ts';
import { broughtColumns } from '../pondwater/columns.ts';
import { balanceText } from '../results/balanceText.ts';
import { csvLines } from '../results/csv.ts';
import { summaryText } from '../results/summary.ts';
import { parseJson } from '../scenario/json.ts';
import { fileSchema } from '../scenario/schema.ts';
import { expandSketch } from '../sketch/expand.ts';
import type { Call, CommandName } from './arguments.ts';
import { dyeCommand } from './dye.ts';
import { readText, sameFile, writeLines } from './files.ts';
import { fileText } from './fileText.ts';
import { fillCommand } from './fill.ts';
import { leakCommand } from './leak.ts';
import { mapCommand } from './map.ts';

/** What is printed on standard output, and the exit code. */
export interface Outcome {
  readonly output: string;
  readonly code: 0 | 1;
}

/** A file or a call with problems: nothing was run. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(`${problems.length} problems`);
    this.problems = problems;
  }
}

/** A site that has no answer; its clock tells the moment of the failure. */
export class Unsolved extends Error {
  override readonly name = 'Unsolved';
  readonly starts: string;

  constructor(starts: string, cause: unknown) {
    super('no answer', { cause });
    this.starts = starts;
  }
}

/** More rows than any table program opens. */
const MOST_ROWS = 5e6;

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

export const commands: Readonly<Record<CommandName, (call: Call) => Promise<Outcome>>> = {
  async run(call) {
    tellOverwriting(call);
    const scenario = await siteOf(call);
    tellRows(call, scenario);
    const { answer, record } = solved(scenario, simulate);
    if (call.csv !== undefined) {
      const series = seriesOf(record, call.every);
      writeLines(call.csv, csvLines(series, scenario.starts, broughtColumns(scenario, record, series.t)));
    }
    const output = call.json ? json(answer) : summaryText(scenario, answer);
    return { output, code: answer.checks.some(({ verdict }) => verdict === 'fail') ? 1 : 0 };
  },

  async balance(call) {
    const scenario = await siteOf(call);
    const answer = solved(scenario, balance);
    return { output: call.json ? json(answer) : balanceText(answer, scenario), code: 0 };
  },

  async fill(call) {
    tellOverwriting(call);
    const scenario = await siteOf(call);
    const outcome = solved(scenario, (site) => fillCommand(site, { ...call.fill, json: call.json, csv: call.csv }));
    if (!('code' in outcome)) throw new Refused(outcome);
    return outcome;
  },

  async leak(call) {
    const scenario = await siteOf(call);
    const text = await readText(call.log, 'a text of levels');
    const measured = call.ruler ? 'up' : undefined;
    const outcome = solved(scenario, (site) => leakCommand(site, text, { json: call.json, measured }));
    if (!('code' in outcome)) throw new Refused(outcome);
    return outcome;
  },

  async map(call) {
    tellOverwriting(call);
    const scenario = await siteOf(call);
    return solved(scenario, (site) => mapCommand(site, { ...call.map, json: call.json, csv: call.csv }));
  },

  async dye(call) {
    tellOverwriting(call);
    const scenario = await siteOf(call);
    const outcome = solved(scenario, (site) => dyeCommand(site, call));
    if (!('code' in outcome)) throw new Refused(outcome);
    return outcome;
  },

  async sketch({ file, display, json: plain }) {
    const text = await readText(file);
    const reading = readScenario(text);
    if (!reading.ok) throw new Refused(reading.problems);
    const value = parseJson(text);
    const whole = expandSketch(value.ok ? value.value : undefined).file as object;
    const shown = display ? { ...whole, display } : whole;
    return { output: plain ? json(shown) : fileText(shown), code: 0 };
  },

  async schema() {
    return { output: json(fileSchema()), code: 0 };
  },
};

async function siteOf({ file, display }: Call): Promise<Scenario> {
  const reading = readScenario(await readText(file));
  if (!reading.ok) throw new Refused(reading.problems);
  return display ? { ...reading.scenario, display } : reading.scenario;
}

function solved<T>(scenario: Scenario, solve: (scenario: Scenario) => T): T {
  try {
    return solve(scenario);
  } catch (error) {
    throw new Unsolved(scenario.starts, error);
  }
}

/** A site's file is never changed by being run. */
function tellOverwriting({ file, csv, fill: { ics } }: Call): void {
  const written = [
    ['--csv', csv],
    ['--ics', ics],
  ] as const;
  const over = written.filter(([, path]) => path !== undefined && file !== '-' && sameFile(file, path));
  if (over.length === 0) return;
  throw new Refused(
    over.map(([place]) => ({ place, found: 'the scenario file itself', wanted: 'another file to write' })),
  );
}

function tellRows({ every }: Call, { span }: Scenario): void {
  if (every === undefined || span / every <= MOST_ROWS) return;
  const wanted = `at least ${Math.ceil(span / MOST_ROWS)} s for a span of ${span} s`;
  throw new Refused([{ place: '--every', found: `${every} s`, wanted }]);
}
