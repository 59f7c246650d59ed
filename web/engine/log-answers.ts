/** What the worker does for a log of levels. */
import { readScenario } from '../../sim/index.ts';
import { leakIn, readLog } from '../../sim/log/index.ts';
import { besideWords, leadWords, restWords } from '../../sim/log/words.ts';
import type { LeakRequest } from './log-asked.ts';
import type { Given } from './protocol.ts';

export function leakGiven({ text, display, log, measured }: LeakRequest): Given {
  const reading = readScenario(text);
  if (!reading.ok) return { kind: 'refused', problems: reading.problems };
  const { scenario } = reading;
  const shown = display ?? scenario.display;
  const leak = leakIn(scenario, readLog(log, measured));
  if (!leak.ok) return { kind: 'leak', problems: leak.problems, said: null };
  const { answer, problems } = leak;
  return {
    kind: 'leak',
    problems,
    said: {
      verdict: answer.verdict,
      lead: leadWords(answer, shown),
      rest: restWords(answer, shown),
      beside: besideWords(answer, shown),
      plot: answer.plot,
      starts: answer.facts.dated ? answer.facts.starts : undefined,
    },
  };
}
