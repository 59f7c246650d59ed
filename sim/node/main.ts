#!/usr/bin/env node
/** The command: reads the call, answers it, and says by its exit code how that went. */
import { type Problem, RunFailure } from '../index.ts';
import { formatClock, formatDuration } from '../quantity/index.ts';
import { readCall } from './arguments.ts';
import { commands, Refused, Unsolved } from './commands.ts';
import { FileTrouble, outputProblem } from './files.ts';
import { USAGE } from './usage.ts';

const complain = (lines: readonly string[]): void => {
  process.stderr.write(`${lines.join('\n')}\n`);
};

/** One problem a line, whatever a name in the file has in it. */
const problemLine = ({ place, found, wanted }: Problem): string =>
  `${place}: found ${found}, wanted ${wanted}`.replace(/[\s\p{Cc}]+/gu, ' ');

/** Tells what went wrong and answers with the exit code. */
function explain(error: unknown): 2 | 3 {
  if (error instanceof Refused) {
    complain(error.problems.map(problemLine));
    return 2;
  }
  if (error instanceof FileTrouble) {
    complain([problemLine(error.problem)]);
    return 2;
  }
  complain([failureLine(error)]);
  return 3;
}

function failureLine(error: unknown): string {
  const cause = error instanceof Unsolved ? error.cause : error;
  if (error instanceof Unsolved && cause instanceof RunFailure) {
    const clock = formatClock(error.starts, cause.time);
    return `${cause.kind} after ${formatDuration(cause.time)} (${clock}), ${cause.words}`;
  }
  // What is no failure of a run is a mistake in this program, and its trace says where.
  const trace = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
  return `a fault of tumblebay, not of the site: ${trace}`;
}

async function answer(args: readonly string[]): Promise<number> {
  const reading = readCall(args);
  if (reading.kind === 'help') {
    process.stdout.write(USAGE);
    return 0;
  }
  try {
    if (reading.kind === 'refused') throw new Refused(reading.problems);
    const { output, code } = await commands[reading.call.command](reading.call);
    process.stdout.write(output);
    return code;
  } catch (error) {
    return explain(error);
  }
}

// A reader that has seen enough, as `head`, closes the pipe; that is no fault. A full disk is one of the call.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') return;
  complain([problemLine(outputProblem(error))]);
  process.exit(2);
});
process.exitCode = await answer(process.argv.slice(2));
