import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixture.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const plots = (page: Page): Locator => page.locator('tb-plots');
const playhead = (page: Page): Locator => plots(page).getByRole('slider', { name: 'moment' });
const moment = async (page: Page): Promise<number> => Number(await playhead(page).getAttribute('aria-valuenow'));
const flag = (page: Page, name: RegExp): Locator => plots(page).locator('.flag').filter({ hasText: name });
const opened = (page: Page): Promise<string | null> =>
  plots(page)
    .getByText(/^(other minutes than these|open some minutes)/)
    .textContent();

/** The courtyard's pump stops at noon, six hours from the start. */
const STOP = 6 * 3600;

async function open(page: Page): Promise<void> {
  await page.goto('./#courtyard');
  await plots(page).locator('path.subject').first().waitFor();
  await flag(page, /^pump off/).click();
  await expect.poll(() => moment(page)).toBe(STOP);
}

test('the stop stands in the opened minutes, with what runs back as an area, its volume and the rise', async ({
  page,
}) => {
  await open(page);
  await expect(plots(page).locator('path.wash')).toHaveCount(1);
  await expect(plots(page).locator('svg text').filter({ hasText: 'L run back' })).toHaveCount(1);
  await expect(
    plots(page)
      .locator('svg text')
      .filter({ hasText: /^\+\d+ mm$/ }),
  ).toHaveCount(1);
  for (const name of ['pond', 'filter', 'edge', 'room wanted', 'run into the pond'])
    await expect(
      plots(page)
        .locator('svg text')
        .filter({ hasText: new RegExp(`^${name}`) })
        .first(),
    ).toBeAttached();
});

test('drawing, levels, flows and the bar of all time stand on the first screen of a desk', async ({ page }) => {
  await open(page);
  await page.evaluate(() => window.scrollTo(0, 0));
  const bottom = await plots(page)
    .locator('svg text')
    .evaluateAll((texts) => Math.max(...texts.map((text) => text.getBoundingClientRect().bottom)));
  expect(bottom).toBeLessThanOrEqual(900);
  await expect(page.locator('tb-section svg').first()).toBeInViewport({ ratio: 0.99 });
  await expect(page.getByRole('button', { name: 'stop the pump' })).toBeInViewport({ ratio: 1 });
});

test('the playhead is moved by keys: a second, a minute, an hour, to the ends', async ({ page }) => {
  await open(page);
  await playhead(page).focus();
  for (const [key, t] of [
    ['ArrowRight', STOP + 1],
    ['Shift+ArrowRight', STOP + 61],
    ['Control+ArrowRight', STOP + 3661],
    ['ArrowLeft', STOP + 3660],
    ['Home', 0],
    ['End', 86_400],
  ] as const) {
    await page.keyboard.press(key);
    await expect.poll(() => moment(page), key).toBe(t);
  }
});

test('the playhead is dragged through both plots, and what stands there is said', async ({ page }) => {
  await open(page);
  const box = (await playhead(page).boundingBox())!;
  await page.mouse.move(box.x + 0.2 * box.width, box.y + 40);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.4 * box.width, box.y + 140, { steps: 4 });
  const inside = await moment(page);
  expect(inside).toBeGreaterThan(STOP);
  expect(inside).toBeLessThan(STOP + 720);
  await page.mouse.move(box.x + box.width + 300, box.y + 140);
  await expect.poll(() => moment(page)).toBe(86_400);
  await page.mouse.up();
  await page.mouse.move(box.x + 0.1 * box.width, box.y + 40);
  expect(await moment(page)).toBe(86_400);
  await expect(playhead(page)).toHaveAttribute(
    'aria-valuetext',
    /^3 Jun 06:00:00.*; pond \d+ mm below its edge; run into the pond/,
  );
  await expect(plots(page).getByRole('status')).toContainText('3 Jun 06:00:00');
});

test('an event’s flag opens its minutes and moves there; the whole run can be opened', async ({ page }) => {
  await open(page);
  await flag(page, /^pump on/).click();
  await expect.poll(() => moment(page)).toBe(7 * 3600);
  await expect(
    plots(page)
      .locator('svg text')
      .filter({ hasText: /^start$/ }),
  ).toHaveCount(1);
  await plots(page).getByText('other minutes than these').click();
  await plots(page).getByRole('button', { name: 'the whole run' }).click();
  await expect.poll(() => opened(page)).toBe('open some minutes');
  await expect(plots(page).locator('path.opened')).toHaveCount(0);
});

test('minutes are opened by two rulers with the keyboard alone', async ({ page }) => {
  await open(page);
  const summary = plots(page).locator('summary').filter({ hasText: 'other minutes' });
  await summary.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await expect(plots(page).getByLabel('opened from')).toBeFocused();
  for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowLeft');
  await expect.poll(() => opened(page)).toBe('other minutes than these 15 min');
  await page.keyboard.press('Tab');
  await page.keyboard.press('End');
  await expect(plots(page).getByLabel('opened to')).toHaveAttribute('aria-valuetext', '3 Jun 06:00');
});

test('a stretch brushed over the bar of all the time is opened', async ({ page }) => {
  await open(page);
  await plots(page).locator('.brush').scrollIntoViewIfNeeded();
  const box = (await plots(page).locator('.brush').boundingBox())!;
  expect(box.height).toBeGreaterThanOrEqual(44);
  await page.mouse.move(box.x + 0.5 * box.width, box.y + 22);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.75 * box.width, box.y + 22, { steps: 3 });
  await expect(plots(page).locator('rect.sliver')).toHaveCount(1);
  await page.mouse.up();
  await expect.poll(() => opened(page)).toBe('other minutes than these 6 h');
});

test('the wheel zooms with Ctrl or in focus, and else scrolls the page', async ({ page }) => {
  await open(page);
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  const box = (await playhead(page).boundingBox())!;
  await page.mouse.move(box.x + box.width / 3, box.y + 60);
  const before = await opened(page);
  await page.mouse.wheel(0, 120);
  await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(0);
  expect(await opened(page)).toBe(before);
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.mouse.move(box.x + box.width / 3, box.y + 61);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -240);
  await page.keyboard.up('Control');
  await expect.poll(() => opened(page)).not.toBe(before);
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
});

test('levels are told as elevations at one press', async ({ page }) => {
  await open(page);
  await expect(plots(page).locator('.readings')).toContainText('mm below its edge');
  await plots(page).getByRole('button', { name: 'as elevations' }).click();
  await expect(plots(page).locator('.readings')).toContainText('pond −112 mm');
  await expect(plots(page).locator('svg text').filter({ hasText: 'above the site’s datum' })).toHaveCount(1);
});

test('lines are added and taken away, and another comes first', async ({ page }) => {
  await open(page);
  await plots(page).getByText('which lines').click();
  const lines = plots(page).locator('path.line');
  const count = await lines.count();
  await plots(page).getByRole('button', { name: 'pump vault' }).click();
  await expect(lines).toHaveCount(count + 1);
  await plots(page).getByRole('button', { name: 'filter', exact: true }).click();
  await expect(lines).toHaveCount(count);
  await plots(page).getByLabel('first of the flows').selectOption({ label: 'gap round the mats' });
  await expect(plots(page).locator('.readings .subject').nth(1)).toContainText('gap round the mats');
});

test('the stop with its check valve failed is dashed, with the word where it fails, once the answer is whole', async ({
  page,
}) => {
  await open(page);
  const other = plots(page).locator('svg text').filter({ hasText: 'if the check valve fails' });
  await expect(other).toHaveText('× fails: pond, if the check valve fails');
  await expect(plots(page).locator('path.failing')).toHaveCount(1);
  await expect(plots(page).locator('.readings')).toContainText('at the stop');
  await plots(page).getByRole('button', { name: 'one minute on' }).click();
  await expect(plots(page).locator('.readings')).toContainText(/if the check valve fails \d+ mm below its edge/);
  await page.getByRole('button', { name: 'What does the water do inside the filter?' }).click();
  await expect(other).toHaveCount(0);
});

test('a case is kept beside the present one, told in its differences, and let go again', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: 'keep this case beside' }).click();
  const kept = page.locator('p.kept');
  await expect(kept).toContainText('as in the case kept');
  await expect(plots(page).locator('path.other')).toHaveCount(2);
  const dial = page.getByRole('textbox', { name: 'fill mark' });
  await dial.fill('-90 mm');
  await dial.press('Enter');
  await expect(kept).toContainText(/\d+ mm higher than in the case kept; \d+ L run back, \d/);
  await page.getByRole('button', { name: 'let the case kept go' }).click();
  await expect(plots(page).locator('path.other')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'keep this case beside' })).toBeVisible();
});

test('the same numbers stand in a table, the events in it', async ({ page }) => {
  await open(page);
  await plots(page).getByText('the same numbers as a table').click();
  const table = plots(page).getByRole('table');
  await expect(table.getByRole('columnheader')).toContainText(['clock', 'pond', 'filter']);
  const row = table.getByRole('row').filter({ hasText: 'pump off' });
  await expect(row).toContainText('12:00:00');
  await expect(row).toContainText('112 mm below its edge');
  await table.getByRole('button', { name: 'pump on' }).click();
  await expect.poll(() => moment(page)).toBe(7 * 3600);
});

async function saved(page: Page, press: string): Promise<{ name: string; bytes: Buffer }> {
  const waiting = page.waitForEvent('download');
  await plots(page).getByRole('button', { name: press }).click();
  const download = await waiting;
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

test('all numbers are saved as CSV, and are those of the table', async ({ page }) => {
  await open(page);
  await plots(page).getByText('save', { exact: true }).click();
  const { name, bytes } = await saved(page, 'all numbers as CSV');
  expect(name).toMatch(/^courtyard-spring-\d{4}-06-02-120000-numbers\.csv$/);
  const rows = bytes.toString('utf8').trimEnd().split('\r\n');
  expect(rows[0]).toMatch(/^t\[s\],clock,pond\[m\]/);
  expect(rows.length).toBeGreaterThan(100);
  // The table says a day beside the clock after the first one only.
  const first = rows.slice(1).flatMap((row) => {
    const [t, clock, pond] = row.split(',');
    return Number.isInteger(Number(t)) && clock!.includes('-02T') ? [[clock!.slice(11), Number(pond)] as const] : [];
  });
  const pond = new Map(first);
  await plots(page).getByText('the same numbers as a table').click();
  const table = plots(page).getByRole('table');
  await expect(table.getByRole('columnheader')).toContainText(['clock', 'pond', 'filter']);
  const figures = await table
    .locator('tbody tr')
    .evaluateAll((found) =>
      found.map((row) => [row.children[0]!.textContent!.trim(), row.children[1]!.textContent!.trim()] as const),
    );
  // The courtyard's edge is its datum. Only rows at whole seconds of the run have a row of the file at their clock.
  const both = figures.filter(([clock]) => /^\d\d:/.test(clock) && pond.has(clock));
  expect(both.length).toBeGreaterThan(2);
  for (const [clock, says] of both)
    expect(says, clock).toBe(`${Math.round(-1000 * pond.get(clock)!)} mm below its edge`);
});

test('what settles in the media is saved beside levels and flows, as the command saves it', async ({ page }) => {
  await page.goto('./#uncleaned');
  // Its run never stops, so that it opens with the trial of a stop, which is of the water alone.
  await page.getByRole('button', { name: 'back to the run' }).click();
  await plots(page).getByText('save', { exact: true }).click();
  const { bytes } = await saved(page, 'all numbers as CSV');
  const [head, ...rows] = bytes
    .toString('utf8')
    .trimEnd()
    .split('\r\n')
    .map((row) => row.split(','));
  const settled = head!.findIndex((name) => /^settled in .*\[m3\]$/.test(name));
  expect(settled).toBeGreaterThan(head!.indexOf('main[m3/s]'));
  const held = rows.map((row) => Number(row[settled]));
  expect(held.at(-1)).toBeGreaterThan(held[0]!);
  expect(rows.every((row) => row.length === head!.length)).toBe(true);
});

for (const look of ['paper', 'slate'] as const) {
  test(`plots and drawing are saved as SVG and PNG, in ${look}`, async ({ page }) => {
    await page.addInitScript((kept) => localStorage.setItem('tumblebay look', kept), look);
    await open(page);
    await plots(page).getByText('save', { exact: true }).click();
    // A page without a policy of its own, as programs that open the file have none.
    const reader = await page.context().newPage();
    const paper = look === 'paper' ? [0xf5, 0xf0, 0xe5] : [0x1d, 0x24, 0x28];
    for (const [what, within, says] of [
      ['plots', 'tb-plots', 'L run back'],
      ['drawing', 'tb-section', 'upper pool'],
    ] as const) {
      const { name, bytes } = await saved(page, `the ${what} as SVG`);
      expect(name).toMatch(new RegExp(`^courtyard-spring-\\d{4}-06-02-120000-${what}\\.svg$`));
      const text = bytes.toString('utf8');
      expect(text).toContain('Courtyard spring');
      expect(text).toContain(says);
      expect(text).not.toMatch(/var\(|NaN|undefined/);
      const whole = (given: string): string =>
        new DOMParser().parseFromString(given, 'image/svg+xml').documentElement.nodeName;
      expect(await reader.evaluate(whole, text)).toBe('svg');

      const picture = await saved(page, `the ${what} as PNG`);
      expect(picture.name).toBe(name.replace(/svg$/, 'png'));
      expect(picture.bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
      // PNG, IHDR chunk: width as the first four bytes after its name.
      const drawn = await page
        .locator(`${within} svg`)
        .first()
        .evaluate((svg) => svg.clientWidth);
      // Title and flags of the plots keep a margin of 16 px.
      expect(picture.bytes.readUInt32BE(16)).toBe(2 * (what === 'plots' ? drawn + 32 : drawn));
      const seen = await page.evaluate(
        async (data) => {
          const image = await createImageBitmap(new Blob([Uint8Array.from(data)], { type: 'image/png' }));
          const brush = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
          brush.drawImage(image, 0, 0);
          const dots = brush.getImageData(0, 0, image.width, image.height).data;
          const kinds = new Set<number>();
          for (let i = 0; i < dots.length; i += 4) kinds.add((dots[i]! << 16) | (dots[i + 1]! << 8) | dots[i + 2]!);
          return { corner: [...dots.slice(0, 4)], kinds: kinds.size };
        },
        [...picture.bytes],
      );
      expect(seen.corner).toEqual([...paper, 255]);
      expect(seen.kinds).toBeGreaterThan(100);
    }
  });
}

test.describe('with motion', () => {
  test.use({ contextOptions: { reducedMotion: 'no-preference' } });

  test('time is let run at one speed over the screen, and stands at a press or a key', async ({ page }) => {
    await open(page);
    await plots(page).getByRole('button', { name: 'let it run' }).click();
    await expect.poll(() => moment(page)).toBeGreaterThan(STOP + 5);
    await plots(page).getByRole('button', { name: 'let it stand' }).click();
    await expect(plots(page).getByRole('button', { name: 'let it run' })).toBeVisible();
    const stood = await moment(page);
    await page.waitForTimeout(250);
    expect(await moment(page)).toBe(stood);
    await plots(page).getByRole('button', { name: 'one minute on' }).click();
    await expect.poll(() => moment(page)).toBe(stood + 60);
  });
});

test('under reduced motion time steps, a second of the screen at once', async ({ page }) => {
  await open(page);
  await plots(page).getByRole('button', { name: 'let it run' }).click();
  const seen = new Set<number>();
  for (let i = 0; i < 24; i++) {
    seen.add(await moment(page));
    await page.waitForTimeout(100);
  }
  expect(seen.size).toBeGreaterThan(1);
  expect(seen.size).toBeLessThan(6);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true });

  test('a finger moves the playhead and still scrolls the page', async ({ page }) => {
    await open(page);
    await expect(playhead(page)).toHaveCSS('touch-action', 'pan-y');
    await playhead(page).scrollIntoViewIfNeeded();
    const box = (await playhead(page).boundingBox())!;
    await page.touchscreen.tap(box.x + 0.5 * box.width, box.y + 60);
    await expect.poll(() => moment(page)).toBeGreaterThan(STOP + 60);
  });
});

test.describe('pinched', () => {
  test.use({ viewport: { width: 390, height: 800 }, hasTouch: true });

  test('two fingers apart open fewer minutes', async ({ page }) => {
    await open(page);
    await playhead(page).scrollIntoViewIfNeeded();
    const box = (await playhead(page).boundingBox())!;
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart?: number) =>
      client.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          apart === undefined
            ? []
            : [-apart, apart].map((dx, id) => ({ x: box.x + box.width / 2 + dx, y: box.y + 80, id })),
      });
    await touch('touchStart', 20);
    for (const apart of [25, 30, 35, 40]) await touch('touchMove', apart);
    await touch('touchEnd');
    await expect.poll(() => opened(page)).toMatch(/other minutes than these (5|6|7) min/);
  });
});
