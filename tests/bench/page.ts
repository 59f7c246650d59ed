/** Speed and weight of the built page, measured in Chromium beside their limits; nothing here passes or fails. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { type Browser, chromium } from '@playwright/test';
import { build, preview } from 'vite';
import { chromiumPath } from '../tools/chromium.ts';
import { type Drag, dragDial } from './drag.ts';
import { NAMER } from './probe.ts';

const config = fileURLToPath(new URL('../../web/vite.config.ts', import.meta.url));

/** What is measured and what it should stay under. */
export interface Line {
  readonly name: string;
  readonly value: number;
  readonly unit: 'ms' | 'kB';
  readonly limit: number;
}

const MOVES = 120;
const LOADS = 5;
/** A frame of a screen of 60 Hz, and two of them, ms. */
const FRAME = 16;
const TWO = 33;
const LOAD = 1000;
const KILOBYTES = 100;

const dials = [
  { question: undefined, dial: 'fill mark' },
  { question: undefined, dial: 'broad stone' },
  { question: 'What does the water do inside the filter?', dial: 'bottom feed’s valve' },
] as const;

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

/** ms from the start of the navigation to the end of the frame in which a site's first answer is painted. */
async function coldLoad(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript(NAMER);
  await page.goto(address, { waitUntil: 'commit' });
  const ms = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => resolve(performance.now());
        requestAnimationFrame(function look() {
          const root = document.querySelector('tb-page')?.shadowRoot;
          const whole = [
            ['tb-answer', '.headline'],
            ['tb-section', 'svg'],
            ['tb-plots', 'path.subject'],
          ].every(([name, inside]) => root?.querySelector(name!)?.shadowRoot?.querySelector(inside!));
          if (whole) port2.postMessage(0);
          else requestAnimationFrame(look);
        });
      }),
  );
  await context.close();
  return ms;
}

function weights(folder: string): Line[] {
  const assets = join(folder, 'assets');
  const scripts = readdirSync(assets).filter((file) => file.endsWith('.js'));
  const packed = (files: readonly string[], pack: (text: Buffer) => Buffer): number =>
    files.reduce((sum, file) => sum + pack(readFileSync(join(assets, file))).length, 0) / 1000;
  const isWorker = (file: string): boolean => file.startsWith('worker');
  const sets: [string, string[]][] = [
    ['the page’s own script', scripts.filter((file) => !isWorker(file))],
    ['the worker’s script', scripts.filter(isWorker)],
    ['both', scripts],
  ];
  return sets.flatMap(([name, files]): Line[] => [
    {
      name: `${name}, gzip -9`,
      value: packed(files, (text) => gzipSync(text, { level: 9 })),
      unit: 'kB',
      limit: KILOBYTES,
    },
    { name: `${name}, brotli`, value: packed(files, (text) => brotliCompressSync(text)), unit: 'kB', limit: KILOBYTES },
  ]);
}

function dragLines({ dial, ms, answer, rested, shares, unchanged }: Drag): Line[] {
  const line = (name: string, value: number, limit: number): Line => ({
    name: `${dial}: ${name}`,
    value,
    unit: 'ms',
    limit,
  });
  const seen = `${ms.length} moves${unchanged > 0 ? `, ${unchanged} more changed no figure` : ''}`;
  return [
    line(`move to repainted drawing, plots and answer, median (${seen})`, quantile(ms, 0.5), FRAME),
    line('the same, 95th percentile', quantile(ms, 0.95), TWO),
    line('to the answer alone, median', quantile(answer, 0.5), FRAME),
    line(`after a rest of the hand, median of ${rested.length}`, quantile(rested, 0.5), TWO),
    line('after a rest, 95th percentile', quantile(rested, 0.95), TWO),
    line(`until it is on the screen, rastered without a GPU, median of ${shares.moves}`, shares.drawn, TWO),
    ...(['worker', 'script', 'style', 'layout', 'paint', 'garbage'] as const).map((kind) =>
      line(`of it ${kind}, mean`, shares[kind], FRAME),
    ),
  ];
}

export async function pageLines(): Promise<Line[]> {
  const folder = mkdtempSync(join(tmpdir(), 'tumblebay-page-'));
  const outDir = join(folder, 'web');
  await build({ configFile: config, logLevel: 'error', build: { outDir } });
  const server = await preview({ configFile: config, logLevel: 'silent', build: { outDir }, preview: { port: 4275 } });
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--disable-gpu'] });
  try {
    const address = server.resolvedUrls?.local[0] ?? '';
    const loads: number[] = [];
    for (let i = 0; i < LOADS; i++) loads.push(await coldLoad(browser, address));
    const drags: Drag[] = [];
    for (const dial of dials) drags.push(await dragDial(browser, address, dial, MOVES));
    return [
      ...drags.flatMap(dragLines),
      {
        name: `first answer from a cold load, median of ${LOADS}`,
        value: quantile(loads, 0.5),
        unit: 'ms',
        limit: LOAD,
      },
      ...weights(outDir),
    ];
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true });
  }
}

export function pageTable(lines: readonly Line[]): string {
  const width = Math.max(...lines.map(({ name }) => name.length));
  return lines
    .map(({ name, value, unit, limit }) =>
      [
        name.padEnd(width),
        `${value.toFixed(1).padStart(7)} ${unit}`,
        `of ${String(limit).padStart(4)} ${unit}`,
        `${(value / limit).toFixed(2).padStart(6)}`,
      ].join('  '),
    )
    .join('\n');
}
