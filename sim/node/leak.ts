import { leakIn, type Measured, readLog } from '../log/index.ts';
import { leakText } from '../log/text.ts';
import type { Problem, Scenario } from '../scenario/scenario.ts';

/** What a log of levels says of a site, printed. Problems where it says nothing; those of single lines stand beside the answer. */
export function leakCommand(
  s: Scenario,
  text: string,
  { json, measured }: { readonly json: boolean; readonly measured: Measured | undefined },
): { output: string; code: 0 | 1 } | readonly Problem[] {
  const leak = leakIn(s, readLog(text, measured));
  if (!leak.ok) return leak.problems.map(({ place, found, wanted }) => ({ place, found, wanted }));
  const { answer, problems } = leak;
  const output = json ? `${JSON.stringify({ ...answer, problems }, null, 2)}\n` : leakText(s, answer, problems);
  return { output, code: answer.verdict === 'loses' ? 1 : 0 };
}
