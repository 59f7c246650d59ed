import { test as base, type Page } from '@playwright/test';
import { openCourtyard } from '../tools/views.ts';
import { expect, test } from './fixture.ts';

interface Stop {
  readonly place: string;
  readonly name: string;
  readonly shown: boolean;
}

/** Where the focus is, by which name, and whether it can be seen: by an outline, or by a stroke in the drawing. */
const focused = (page: Page): Promise<Stop | undefined> =>
  page.evaluate(() => {
    let root: Document | ShadowRoot = document;
    while (root.activeElement?.shadowRoot?.activeElement) root = root.activeElement.shadowRoot;
    const element = root.activeElement;
    if (!element || element === document.body) return undefined;
    const lookOf = (each: Element): boolean => {
      const { outlineStyle, outlineWidth, stroke, strokeWidth } = getComputedStyle(each);
      const outlined = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
      const stroked =
        each instanceof SVGElement && !/none|transparent|, 0\)/.test(stroke) && Number.parseFloat(strokeWidth) >= 2;
      return outlined || stroked;
    };
    const labelled = element as HTMLInputElement;
    const words = [
      element.getAttribute('aria-label'),
      ...[...(labelled.labels ?? [])].map(({ textContent }) => textContent),
      element.matches('input, select') ? '' : element.textContent,
    ];
    const label = element.closest('label');
    const seen = lookOf(element) || (label !== null && lookOf(label));
    const index = [...root.querySelectorAll('*')].indexOf(element);
    const host = root instanceof ShadowRoot ? root.host : undefined;
    const which = host
      ? [...((host.getRootNode() as ShadowRoot).querySelectorAll(host.localName) ?? [])].indexOf(host)
      : 0;
    return {
      place: `${host?.localName ?? ''} ${which} ${element.localName} ${index}`,
      name: words.map((each) => each?.trim()).find(Boolean) ?? '',
      shown: seen,
    };
  });

test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const [width, height] of [
  [360, 640],
  [1440, 900],
] as const) {
  test.describe(`at ${width} px`, () => {
    test.use({ viewport: { width, height } });

    test('Tab goes through the whole page and out of it again, each stop with a name and in sight; back the same way', async ({
      page,
    }) => {
      await openCourtyard(page);
      const stops: Stop[] = [];
      for (let i = 0; i < 300; i++) {
        await page.keyboard.press('Tab');
        const stop = await focused(page);
        if (!stop) break;
        stops.push(stop);
      }
      expect(stops.length).toBeGreaterThan(40);
      expect(stops.length, 'stops before the focus leaves the page').toBeLessThan(300);
      expect(stops.filter(({ name }) => name === '').map(({ place }) => place)).toEqual([]);
      expect(stops.filter(({ shown }) => !shown).map(({ place, name }) => `${place} ${name}`)).toEqual([]);
      expect(new Set(stops.map(({ place }) => place)).size).toBe(stops.length);
      await page.keyboard.press('Shift+Tab');
      const back = await focused(page);
      expect(back?.place).toBe(stops.at(-1)!.place);
    });
  });
}

/** Every text the live regions of the page have held, as they changed. */
async function listen(page: Page): Promise<void> {
  await page.evaluate(() => {
    const heard: string[] = [];
    (window as unknown as { heard: string[] }).heard = heard;
    const root = document.querySelector('tb-page')!.shadowRoot!;
    const region = root.querySelector('[role=status][aria-live=polite]')!;
    let last = region.textContent!.trim();
    new MutationObserver(() => {
      const now = region.textContent!.trim();
      if (now !== last && now !== '') heard.push(now);
      last = now;
    }).observe(region, { subtree: true, childList: true, characterData: true });
  });
}

const heard = (page: Page): Promise<string[]> => page.evaluate(() => (window as unknown as { heard: string[] }).heard);

const MOVES = 24;
const spoken = (words: string): string => words.trim().replace(/\s+/g, ' ').toLowerCase();

test('those who listen hear a new answer once, when the hand rests', async ({ page }) => {
  await openCourtyard(page);
  await listen(page);
  const ruler = page.getByRole('slider', { name: 'fill mark' });
  const headline = page.getByRole('region', { name: 'The answer' }).locator('.headline');
  const before = await headline.textContent();
  const box = (await ruler.boundingBox())!;
  await page.mouse.move(box.x + 0.5 * box.width, box.y + 20);
  await page.mouse.down();
  for (let i = 1; i <= MOVES; i++) await page.mouse.move(box.x + (0.5 - (0.3 * i) / MOVES) * box.width, box.y + 20);
  await expect(headline).not.toHaveText(before!);
  await page.mouse.up();
  // A hand on a busy machine may rest on its way; none is told of every place it goes through.
  const words = async (): Promise<string> => spoken((await headline.textContent())!);
  await expect.poll(async () => spoken((await heard(page)).at(-1) ?? '')).toBe(await words());
  await page.waitForTimeout(600);
  const told = await heard(page);
  expect(told.length).toBeLessThanOrEqual(MOVES / 4);
  expect(new Set(told).size).toBe(told.length);
});

test('what is wrong is said at once to those who listen', async ({ page }) => {
  await openCourtyard(page);
  await page.getByRole('textbox', { name: 'fill mark' }).fill('11 gpm');
  await page.getByRole('textbox', { name: 'fill mark' }).press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: /older than what you typed/ })).toBeVisible();
});

// What the policy refuses the console tells, so this page is not held to be quiet.
base(
  'the page’s policy lets in nothing but its own origin: no written script, no text made script',
  async ({ page }) => {
    await openCourtyard(page);
    const policy = await page.locator('meta[http-equiv=Content-Security-Policy]').getAttribute('content');
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    const { refused, written, made } = await page.evaluate(async () => {
      const refused: string[] = [];
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
        refused.push(effectiveDirective),
      );
      const script = document.createElement('script');
      script.textContent = 'window.written = true';
      document.head.append(script);
      await fetch('https://example.com/').catch(() => {});
      // The policy binds what runs by itself, not what the test has just handed in.
      await new Promise((resolve) => setTimeout(resolve, 200));
      let made = true;
      try {
        new Function('return true')();
      } catch {
        made = false;
      }
      return { refused, written: 'written' in window, made };
    });
    expect({ written, made }).toEqual({ written: false, made: false });
    expect(refused).toEqual(expect.arrayContaining(['script-src-elem', 'connect-src']));
  },
);
