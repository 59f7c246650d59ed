import type { Page } from '@playwright/test';
import { openCourtyard, rooms } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { running, sideways, unreachable } from './pageReads.ts';
import { commandAnswers } from './sites.ts';

/** Windows as they come about: a small phone; a desk read at twice and at four times its size (WCAG 2.2, 1.4.4, 1.4.10). */
const windows = [
  ['of 300 px', 300, 560],
  ['of a desk at 200 %', 720, 450],
  ['of a desk at 400 %', 320, 256],
] as const;

test.describe.configure({ mode: 'parallel' });

for (const [name, width, height] of windows) {
  test.describe(`in a window ${name}`, () => {
    test.use({ viewport: { width, height }, contextOptions: { reducedMotion: 'reduce' } });

    for (const [room, views] of Object.entries(rooms)) {
      test(`nothing scrolls sideways but the strip and tables, and every press is reached, in every view of ${room}`, async ({
        page,
      }) => {
        test.slow();
        await openCourtyard(page);
        const beyond: string[] = [];
        for (const { name, show, leave } of views) {
          await show(page);
          const found = [...(await sideways(page)), ...(await unreachable(page))];
          beyond.push(...found.map((each) => `${name}: ${each}`));
          if (leave) await leave(page);
          else await openCourtyard(page);
        }
        expect(beyond).toEqual([]);
      });
    }
  });
}

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in ${colorScheme} colors of the reader’s own`, () => {
    test.use({ colorScheme, contextOptions: { forcedColors: 'active' } });

    test('ink and paper are the system’s, and what is chosen shows without color', async ({ page }) => {
      await openCourtyard(page);
      const [ink, paper] = await page.evaluate(() => {
        const swatch = document.body.appendChild(document.createElement('p'));
        const colorOf = (name: string): string => {
          swatch.style.setProperty('color', name);
          return getComputedStyle(swatch).color;
        };
        return [colorOf('CanvasText'), colorOf('Canvas')];
      });
      expect(ink).not.toBe(paper);
      const words = page.locator('tb-section text');
      const inks = await words.evaluateAll((all) => [...new Set(all.map((word) => getComputedStyle(word).fill))]);
      expect(inks.length).toBeGreaterThan(0);
      expect(inks).not.toContain(paper);
      expect(await page.locator('html').evaluate((html) => getComputedStyle(html).backgroundColor)).toBe(paper);
      const asked = page.locator('nav .asked, header .presses [aria-pressed=true]');
      expect(await asked.count()).toBe(2);
      for (const each of await asked.all()) await expect(each).toHaveCSS('text-decoration-line', 'underline');
    });
  });
}

test.describe('where motion is unwelcome', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('the site stands at its highest level at once, and nothing moves', async ({ page }) => {
    await openCourtyard(page);
    const { max } = commandAnswers('courtyard').levels['pond']!;
    const below = `pond ${Math.round(-1000 * max.value)} mm below its edge`;
    await expect(page.getByRole('group', { name: 'The moment drawn' }).locator('.now')).toContainText(below);
    expect(await running(page)).toEqual([]);
    await page.getByRole('button', { name: 'stop the pump' }).click();
    await expect(page.getByRole('group', { name: 'The moment drawn' }).locator('.now')).toContainText(below);
    expect(await running(page)).toEqual([]);
  });
});

/** WCAG 2.2, 1.4.12: lines of 1.5, paragraphs 2 apart, letters 0.12 and words 0.16 of the type’s size. */
async function spaceOut(page: Page): Promise<void> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`:not(svg *) { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
      p { margin-bottom: 2em !important; }`);
    const roots: (Document | ShadowRoot)[] = [document];
    for (const root of roots) {
      root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
      for (const { shadowRoot } of root.querySelectorAll('*')) if (shadowRoot) roots.push(shadowRoot);
    }
  });
}

/** Words that are cut off at the end of their box. */
const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const roots: (Document | ShadowRoot)[] = [document];
    for (const root of roots) {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (element.shadowRoot) roots.push(element.shadowRoot);
        if (element.matches('tb-section, .rows, [role=status], svg, svg *, option, input') || element.clientWidth < 2)
          continue;
        const hides = getComputedStyle(element).overflow !== 'visible';
        if (hides && element.scrollWidth > element.clientWidth + 1)
          found.push(`${element.localName}.${element.className} “${element.textContent?.trim().slice(0, 40)}”`);
      }
    }
    return found;
  });

test.describe('with text spaced out', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('nothing is cut off and nothing reaches past the page', async ({ page }) => {
    await openCourtyard(page);
    await spaceOut(page);
    expect(await cutOff(page)).toEqual([]);
    expect(await sideways(page)).toEqual([]);
    expect(await unreachable(page)).toEqual([]);
  });
});
