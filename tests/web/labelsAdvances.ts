/**
 * Measures how wide STIX Two Text sets each character and writes the table of it:
 * `npx tsx tests/web/labelsAdvances.ts /usr/bin/chromium > web/section/labels/advances.ts`.
 *
 * Chromium sets each character at 1000 px, a thousand to the em, in the very files the page serves, with the page's
 * figures. What kerning and ligatures take off a text is left out.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';

const folder = fileURLToPath(new URL('../../node_modules/@fontsource/stix-two-text/files/', import.meta.url));
const fontOf = (style: string): string =>
  readFileSync(`${folder}stix-two-text-latin-400-${style}.woff2`).toString('base64');

const run = (from: number, to: number): string =>
  String.fromCodePoint(...Array.from({ length: to - from + 1 }, (_, i) => from + i));
const plain = run(0x20, 0x7e);
const latin = run(0xa1, 0xff);
const others = 'ıŒœ\u2009\u2013\u2014‘’“”•…′″\u2212\u2215€™';

const styles = `${['normal', 'italic']
  .map(
    (style) =>
      `@font-face { font-family: F; font-style: ${style}; src: url(data:font/woff2;base64,${fontOf(style)}) format("woff2"); }`,
  )
  .join('\n')}
span { font: 1000px F; font-kerning: none; font-variant-numeric: tabular-nums lining-nums; white-space: pre; position: absolute; }`;

const browser = await chromium.launch({ executablePath: process.argv[2], args: ['--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage();
await page.setContent(`<style>${styles}</style>`);

const widths = (text: string, style: string): Promise<number[]> =>
  page.evaluate(
    async ([text, style]) => {
      await document.fonts.load(`${style} 1000px F`, text);
      const span = document.createElement('span');
      span.style.fontStyle = style;
      document.body.append(span);
      return [...text].map((character) => {
        span.textContent = character;
        return Math.round(span.getBoundingClientRect().width);
      });
    },
    [text, style] as const,
  );

const table = async (style: string): Promise<string> => {
  const [a, b, c] = [await widths(plain, style), await widths(latin, style), await widths(others, style)];
  const rest = [...others].map((character, i) => `${JSON.stringify(character)}: ${c[i]}`);
  return `{ plain: [${a.join(', ')}], latin: [${b.join(', ')}], others: { ${rest.join(', ')} } }`;
};

console.log(`/**
 * Advance widths of STIX Two Text in thousandths of its size, measured by Chromium from the served files with
 * tabular lining figures (tests/web/labelsAdvances.ts wrote this table and says how).
 */
export interface Advances {
  /** Of U+0020 to U+007E, one after the other. */
  readonly plain: readonly number[];
  /** Of U+00A1 to U+00FF. */
  readonly latin: readonly number[];
  readonly others: Readonly<Record<string, number>>;
}

export const roman: Advances = ${await table('normal')};

export const italic: Advances = ${await table('italic')};`);
await browser.close();
