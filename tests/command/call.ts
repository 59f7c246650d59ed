import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { vi } from 'vitest';

// A process of its own takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const courtyard = 'scenarios/courtyard.json';

/** How a call of the command ended, and what it printed. */
export interface Ended {
  code: number | null;
  out: string;
  err: string;
}

const ended = new Map<string, Ended>();

/** Calls the command as a process of its own, as a shell would; the same call is made once. */
export function tumblebay(args: readonly string[], input = ''): Ended {
  const call = JSON.stringify([args, input]);
  const known = ended.get(call) ?? callOnce(args, input);
  ended.set(call, known);
  return known;
}

function callOnce(args: readonly string[], input: string): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'sim/node/main.ts', ...args], {
    cwd: root,
    input,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return { code: status, out: stdout, err: stderr };
}

/** A file's value as it is parsed: whatever a test wants to spoil in it. */
type Parsed = ReturnType<typeof JSON.parse>;

/** The text of a site with parts of its file changed. */
export function changed(file: string, change: (site: Parsed) => void): string {
  const site = JSON.parse(readFileSync(join(root, file), 'utf8'));
  change(site);
  return JSON.stringify(site);
}
