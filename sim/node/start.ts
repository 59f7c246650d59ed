/**
 * `npm start`: the answer of the default site by the command, then the address of the built page on its own line.
 *
 * A build older than a source is made anew first, so that the page served is the page of the sources.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const made = ['dist/sim/main.js', 'dist/web/index.html'];
const sources = ['sim', 'web', 'scenarios', 'package.json'];

function newest(path: string): number {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function upToDate(): boolean {
  if (!made.every((file) => existsSync(join(root, file)))) return false;
  const oldestBuild = Math.min(...made.map((file) => newest(join(root, file))));
  return Math.max(...sources.map((name) => newest(join(root, name)))) <= oldestBuild;
}

function build(): void {
  const done = spawnSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  if (done.status !== 0) {
    console.error('The build failed, so there is nothing to start.');
    process.exit(1);
  }
}

/** A site that fails a check is no reason not to show the page, so the command's exit code is not ours. */
function answerDefaultSite(): void {
  spawnSync(process.execPath, ['dist/sim/main.js', 'run', 'scenarios/courtyard.json'], { cwd: root, stdio: 'inherit' });
}

async function serve(): Promise<string> {
  const server = await preview({
    configFile: join(root, 'web/vite.config.ts'),
    logLevel: 'silent',
    preview: { port: Number(process.env['PORT'] ?? 4173) },
  });
  return server.resolvedUrls?.local[0] ?? '';
}

if (!upToDate()) build();
answerDefaultSite();
console.log(await serve());
