/**
 * `npm test`: types, lint, unit tests, build, and the built page in a real browser, with one line of figures at the end.
 *
 * Every step runs even where an earlier one failed, so that one run tells all there is to mend. Steps can be chosen by
 * name: `npm test -- unit browser`.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';
import { chromiumPath } from './chromium.ts';
import { browserNotes, browserTally, type Tally, unitTally } from './tally.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'tumblebay-'));

function call(command: string, args: string[], env: Record<string, string> = {}): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0));
  });
}

/** A step that is no set of tests adds nothing where it holds, and one failure where it does not. */
const asTally = (holds: boolean): Tally => ({ passed: 0, failed: holds ? 0 : 1 });

async function unit(): Promise<Tally> {
  const file = join(reports, 'unit.json');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const ranWell = await call('npx', ['vitest', 'run', '--config', 'tests/vitest.config.ts', ...reporters]);
  return unitTally(file, ranWell);
}

async function browser(): Promise<Tally> {
  const executable = chromiumPath();
  const server = await preview({ configFile: join(root, 'web/vite.config.ts'), preview: { port: 4273 } });
  const file = join(reports, 'browser.json');
  const ranWell = await call('npx', ['playwright', 'test', '--config', 'tests/playwright.config.ts'], {
    CHROMIUM_PATH: executable,
    PAGE_ADDRESS: server.resolvedUrls?.local[0] ?? '',
    PLAYWRIGHT_JSON_OUTPUT_FILE: file,
  });
  await server.close();
  console.log(browserNotes(file));
  return browserTally(file, ranWell);
}

const steps: Record<string, () => Promise<Tally>> = {
  types: async () => asTally(await call('npm', ['run', '--silent', 'types'])),
  lint: async () => asTally(await call('npm', ['run', '--silent', 'lint'])),
  unit,
  build: async () => asTally(await call('npm', ['run', '--silent', 'build'])),
  browser,
};

async function run(name: string, step: () => Promise<Tally>): Promise<Tally> {
  console.log(`\n== ${name}`);
  try {
    const tally = await step();
    if (tally.failed > 0) console.error(`${name}: failed`);
    return tally;
  } catch (error) {
    console.error(`${name}: ${error instanceof Error ? error.message : error}`);
    return { passed: 0, failed: 1 };
  }
}

const chosen = process.argv.slice(2);
const unknown = chosen.filter((name) => !(name in steps));
if (unknown.length > 0) {
  console.error(`No step is called ${unknown.join(', ')}; there are ${Object.keys(steps).join(', ')}.`);
  process.exit(2);
}

const sum: Tally = { passed: 0, failed: 0 };
for (const [name, step] of Object.entries(steps)) {
  if (chosen.length > 0 && !chosen.includes(name)) continue;
  const { passed, failed } = await run(name, step);
  sum.passed += passed;
  sum.failed += failed;
}
rmSync(reports, { recursive: true });
console.log(`\n${sum.passed} passed, ${sum.failed} failed`);
process.exit(sum.failed === 0 ? 0 : 1);
