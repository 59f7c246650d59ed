import type { Page } from '@playwright/test';
import { elevationFigure } from '../../web/section/labels/figures.ts';
import type { SheetFacts } from '../../web/sheet/block.ts';
import { heightsOf, rodFigure } from '../../web/sheet/heights.ts';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';
import { readPdf } from './pdfText.ts';
import { type Display, factsOf, withStones } from './sheetFacts.ts';
import { siteNames, siteText } from './sites.ts';

const papers = ['A4', 'Letter'] as const;
/** mm; a page's own figures are rounded to whole points. */
const sizes = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
/** pt. */
const TITLE = 15;
const systems: readonly Display[] = ['metric', 'us'];

/** A space in print may be wide, narrow or none: figures are found without. */
const close = (text: string): string => text.replace(/\s+/g, '');

async function open(page: Page): Promise<void> {
  await page.goto('./#courtyard');
  await page.locator('details.site > summary').click();
  const press = page.getByRole('button', { name: 'setting-out sheet and owner’s card' });
  await expect(press).toBeEnabled();
  await press.click();
  await expect(page.getByRole('dialog')).toBeVisible();
}

/** Puts a site on the opened sheet, as the page does. */
async function put(page: Page, { scenario, answer, balance, stops, fill, file }: SheetFacts): Promise<void> {
  const given = { scenario, answer, balance, stops, fill, file };
  await page.locator('tb-sheet').evaluate((sheet, site) => void Object.assign(sheet, site), given);
  await expect(page.locator('tb-sheet h2')).toContainText(scenario.title);
}

async function print(page: Page, paper: (typeof papers)[number]): ReturnType<typeof readPdf> {
  await page.getByRole('button', { name: paper, exact: true }).click();
  await page.waitForTimeout(300);
  return readPdf(await page.pdf({ preferCSSPageSize: true }));
}

/** What the crew must find on the paper of a site that has all of it. */
function wanted(facts: SheetFacts): string[] {
  const { scenario: s, benchmark, fill } = facts;
  const heights = heightsOf(facts).flatMap(({ elevation }) => [
    elevationFigure(elevation - benchmark.elevation, s.display),
    rodFigure(elevation, benchmark, s),
  ]);
  return [...heights, fill?.open?.clock ?? '', fill?.full?.clock ?? '', 'fill mark', 'ground-fault', 'no survey'];
}

test.describe('in print', () => {
  for (const display of systems) {
    test(`every site takes one page of either paper in ${display} units, with all its figures`, async ({ page }) => {
      test.setTimeout(300_000);
      await open(page);
      const texts = [...siteNames.map(siteText), withStones(siteText('courtyard'), 12)];
      for (const text of texts) {
        const facts = factsOf(text, display);
        await put(page, facts);
        for (const paper of papers) {
          const { pages, size, largest, text: words } = await print(page, paper);
          expect(pages, `${facts.scenario.title} on ${paper}`).toBe(1);
          expect(Math.abs(size[0] - sizes[paper][0])).toBeLessThan(0.5);
          expect(Math.abs(size[1] - sizes[paper][1])).toBeLessThan(0.5);
          expect(Math.abs(largest - TITLE), 'printed at its own size').toBeLessThan(0.3);
          expect(words).not.toMatch(/NaN|undefined|Infinity/);
          for (const each of wanted(facts)) expect(close(words), `${each} on ${paper}`).toContain(close(each));
        }
      }
    });

    test(`the courtyard’s sheet has both handles with what a ruler shows, in ${display} units`, async ({ page }) => {
      await open(page);
      const facts = factsOf(siteText('courtyard'), display);
      await put(page, facts);
      const { text } = await print(page, display === 'us' ? 'Letter' : 'A4');
      const words = close(text);
      expect(words).toContain(close('bottom feed 18° from the pipe'));
      expect(words).toContain(close('top feed 41° from the pipe'));
      // 1.050 m of lip under the balance’s level; 0.620 m of stone: 26 mm by the command’s own check.
      expect(words).toContain(close(display === 'us' ? '+2 ft 3/8 in −2 ft 3/8 in 1 in' : '+620 mm −620 mm 26 mm'));
    });

    test(`the owner’s card takes one page of either paper in ${display} units`, async ({ page }) => {
      await open(page);
      await put(page, factsOf(siteText('courtyard'), display));
      await page.getByRole('button', { name: 'owner’s card', exact: true }).click();
      for (const paper of papers) {
        const { pages, text } = await print(page, paper);
        expect(pages).toBe(1);
        expect(close(text)).toContain(close('pump off for a day'));
        expect(close(text)).toContain(close(display === 'us' ? 'falls by 2 in each week' : 'falls by 50 mm each week'));
      }
    });
  }

  test('fits the other paper than the one chosen, too', async ({ page }) => {
    await open(page);
    await put(page, factsOf(siteText('courtyard')));
    for (const paper of papers) {
      await page.getByRole('button', { name: paper, exact: true }).click();
      for (const format of papers) expect((await readPdf(await page.pdf({ format }))).pages).toBe(1);
    }
  });

  test('what one page cannot hold goes on over a second, says so, and loses nothing', async ({ page }) => {
    await open(page);
    const facts = factsOf(withStones(siteText('courtyard'), 70));
    await put(page, facts);
    await expect(page.locator('tb-sheet')).toContainText('More stands on this sheet than one page holds');
    const { pages, text } = await print(page, 'A4');
    expect(pages).toBeGreaterThan(1);
    for (const each of wanted(facts)) expect(close(text)).toContain(close(each));
  });

  test('is black on white whatever the look of the screen', async ({ page }) => {
    await page.addInitScript(() => localStorage.setItem('tumblebay look', 'slate'));
    await open(page);
    await page.emulateMedia({ media: 'print' });
    const colors = await page.locator('tb-sheet article').evaluate((article) => {
      const { color, backgroundColor } = getComputedStyle(article);
      const stone = article.querySelector('tb-section')?.shadowRoot?.querySelector('.stone');
      return [color, backgroundColor, stone && getComputedStyle(stone).fill];
    });
    expect(colors).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)', 'rgb(255, 255, 255)']);
    await expect(page.locator('tb-sheet .presses')).toBeHidden();
  });
});

test('by keyboard alone: opened, a benchmark typed, the card chosen, closed where it was opened', async ({ page }) => {
  await open(page);
  await expect(page.getByRole('button', { name: 'back to the page' })).toBeFocused();
  const benchmark = page.getByRole('textbox', { name: 'benchmark' });
  for (let i = 0; i < 8 && !(await benchmark.evaluate((each) => each.matches(':focus'))); i++)
    await page.keyboard.press('Tab');
  await page.keyboard.type('bolt in the wall');
  await page.keyboard.press('Tab');
  await page.keyboard.type('400 mm');
  await page.keyboard.press('Tab');
  await page.keyboard.type('1,3');
  await expect(page.locator('tb-sheet')).toContainText('whose comma can be read two ways');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('1.30 m');
  // 1.700 m of sight less 0.620 m of stone.
  await expect(page.locator('tb-sheet tr', { hasText: 'broad stone' })).toContainText('1.080 m');
  await expect(page.locator('tb-sheet article')).toContainText('bolt in the wall = 0');
  await page.keyboard.press('Escape');
  await expect(page.locator('tb-sheet')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'setting-out sheet and owner’s card' })).toBeFocused();
});

test('the press prints', async ({ page }) => {
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute('data-printed', 'once');
  });
  await open(page);
  await page.getByRole('button', { name: 'print', exact: true }).click();
  await expect(page.locator('body[data-printed]')).toHaveCount(1);
});

for (const screen of screens) {
  test(`hinders nobody in ${screen.look} at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await open(page);
    for (const kind of ['owner’s card', 'setting-out sheet']) {
      await page.getByRole('button', { name: kind, exact: true }).click();
      await hindersNobody(page, 'tb-sheet');
    }
  });
}
