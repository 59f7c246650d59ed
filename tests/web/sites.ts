/** The demo sites, and what the built command answers for them. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { RunAnswer } from '../../sim/results/answer.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export const siteNames = readdirSync(join(root, 'scenarios'))
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace(/\.json$/, ''));

export const siteText = (name: string): string => readFileSync(join(root, 'scenarios', `${name}.json`), 'utf8');

/** Throws where the command gives no answer: every demo site has one. */
export function commandAnswers(name: string): RunAnswer {
  const file = join('scenarios', `${name}.json`);
  const { stdout, stderr, status } = spawnSync(process.execPath, ['dist/sim/main.js', 'run', file, '--json'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (status !== 0 && status !== 1) throw new Error(`tumblebay run ${file} ended with ${status}: ${stderr}`);
  return JSON.parse(stdout);
}
