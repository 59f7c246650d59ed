/** Finds a Chromium for the browser tests, installs one where that is possible, or says in one line what to install. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';

const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Some systems put a stub at the browser's place that only asks for a package, so a file there is not enough. */
function runs(path: string): boolean {
  return existsSync(path) && spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0;
}

function find(): string | undefined {
  return [...usualPlaces, chromium.executablePath()].find(runs);
}

function call(command: string, ...args: string[]): boolean {
  console.log(`$ ${command} ${args.join(' ')}`);
  return spawnSync(command, args, { stdio: 'inherit' }).status === 0;
}

function install(): string | undefined {
  const debianAsRoot = existsSync('/etc/debian_version') && process.getuid?.() === 0;
  if (debianAsRoot && call('apt-get', 'update') && call('apt-get', 'install', '-y', 'chromium')) {
    const found = find();
    if (found) return found;
  }
  call('npx', '--no-install', 'playwright', 'install', 'chromium');
  return find();
}

/** The path of a browser that runs. Throws an error of one line where there is none and none can be installed. */
export function chromiumPath(): string {
  const asked = process.env['CHROMIUM_PATH'];
  if (asked) {
    if (runs(asked)) return asked;
    throw new Error(`CHROMIUM_PATH is ${asked}, but no browser runs there.`);
  }
  const path = find() ?? install();
  if (!path) throw new Error('The browser tests need Chromium: install the package chromium, or set CHROMIUM_PATH.');
  return path;
}
