import { expect, type Page, test } from '@playwright/test';

/** px by elevation in m, read off the ticks of the drawing's own datum scale. */
async function datum(page: Page): Promise<(elevation: number) => number> {
  const ticks = await page.locator('tb-section text.axis[text-anchor=end]').evaluateAll((texts) =>
    texts.map((text) => ({
      elevation: Number(text.textContent?.replace('−', '-')),
      // A figure stands 4 px below the line of its tick.
      y: Number(text.getAttribute('y')) - 4,
    })),
  );
  const [high, low] = [ticks.at(-1)!, ticks[0]!];
  expect(high.elevation).toBeGreaterThan(low.elevation);
  const perMeter = (high.y - low.y) / (high.elevation - low.elevation);
  return (elevation) => low.y + perMeter * (elevation - low.elevation);
}

/** y of the line in which the pond's surface is drawn, px. */
async function drawn(page: Page): Promise<number> {
  const d = await page.locator('tb-section [clip-path="url(#pond)"] > path.surface').getAttribute('d');
  const [, y0, y1] = /^M[-\d.]+[ ,]([-\d.]+)[HL](?:[-\d.]+[ ,])?([-\d.]+)/.exec(d ?? '') ?? [];
  expect(Number(y0), `a level line: ${d}`).toBeGreaterThan(0);
  if (d?.includes('L')) expect(y1).toBe(y0);
  return Number(y0);
}

for (const site of ['courtyard', 'low-edge']) {
  test(`the pond of ${site} is drawn at the level the table tells, at five moments`, async ({ page }) => {
    await page.goto(`./#${site}`);
    const plots = page.locator('tb-plots');
    await plots.getByRole('button', { name: 'as elevations' }).click();
    await plots.getByText('the same numbers as a table').click();
    const column = (await plots.getByRole('columnheader').allTextContents()).indexOf('pond');
    const hand = plots.getByRole('slider', { name: 'moment' });
    const rows = plots.locator('tbody tr');
    const events = rows.filter({ has: page.getByRole('button') });
    await expect(events.nth(2)).toBeVisible();
    const levels = new Set<number>();
    for (const moment of ['first', 0, 1, 2, 'last'] as const) {
      if (typeof moment === 'number') await events.nth(moment).getByRole('button').click();
      else await hand.press(moment === 'first' ? 'Home' : 'End');
      const row = typeof moment === 'number' ? events.nth(moment) : moment === 'first' ? rows.first() : rows.last();
      const [clock, ...figures] = await row.locator('th, td').allTextContents();
      await expect(plots.locator('.readings b')).toContainText(clock!);
      const told = Number(/^([−+]?\d+) mm$/.exec(figures[column - 1]!)![1]!.replace('−', '-')) / 1000;
      levels.add(told);
      const at = await datum(page);
      const px = (at(0) - at(1)) * 0.0005;
      expect(px, 'a figure to the millimeter is read to less than half a pixel').toBeLessThan(0.25);
      expect(Math.abs((await drawn(page)) - at(told)), `${clock}: ${told} m`).toBeLessThanOrEqual(0.5);
    }
    expect(levels.size, 'the level moves between those moments').toBeGreaterThan(2);
  });
}

// The courtyard's pump stops at noon, six hours into its run, and runs again from one o'clock.
const NOON = 6 * 3600;
for (const [words, t] of [
  ['before the stop', NOON - 60],
  ['30 s after it', NOON + 30],
  ['2 min after it', NOON + 120],
  ['10 min after it', NOON + 600],
  ['with the pump on again', NOON + 3600 + 300],
] as const) {
  test(`the pond is drawn at the level the readings tell, ${words}`, async ({ page }) => {
    await page.goto('./#courtyard');
    const plots = page.locator('tb-plots');
    await plots.getByRole('button', { name: 'as elevations' }).click();
    await plots.evaluate((element, detail) => {
      element.dispatchEvent(new CustomEvent('moment-moved', { detail, bubbles: true, composed: true }));
    }, t);
    const clock = new Date((6 * 3600 + t) * 1000).toISOString().slice(11, 19);
    await expect(plots.locator('.readings b')).toContainText(clock);
    const said = await plots.locator('.readings .subject').first().textContent();
    const told = Number(/pond ([−+]?\d+) mm/.exec(said!)![1]!.replace('−', '-')) / 1000;
    const at = await datum(page);
    expect(Math.abs((await drawn(page)) - at(told))).toBeLessThanOrEqual(0.5);
  });
}
