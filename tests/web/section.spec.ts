import { expect, test } from './fixture.ts';

test('every part of the drawing is reached by keyboard and says its name, level and flow', async ({ page }) => {
  await page.goto('/');
  const parts = page.locator('tb-section .part');
  await expect(parts.first()).toBeVisible();
  const labels = await parts.evaluateAll((all) => all.map((part) => part.getAttribute('aria-label') ?? ''));
  expect(labels.length).toBeGreaterThan(10);
  expect(labels.find((label) => label.startsWith('pond'))).toMatch(/^pond, water at −\d+ mm/);
  expect(labels.find((label) => label.startsWith('main line'))).toMatch(/L\/min|m³\/h/);
  for (const part of await parts.all()) {
    await part.focus();
    await expect(part).toBeFocused();
    await expect(part).toHaveAttribute('role', 'button');
  }
});

test('a press tells the place of the smallest part under it', async ({ page }) => {
  await page.goto('/');
  const drawing = page.locator('tb-section');
  await expect(drawing.locator('.part').first()).toBeVisible();
  const place = await drawing.evaluate(async (element) => {
    const chosen = new Promise<string>((resolve) => {
      element.addEventListener('part-chosen', (event) => resolve((event as CustomEvent<string>).detail));
    });
    const stone = element.shadowRoot!.querySelector('[data-place="watercourse[0].stones[0]"]')!;
    stone.scrollIntoView({ block: 'center' });
    const { left, top, width, height } = stone.getBoundingClientRect();
    const at = { clientX: left + width / 2, clientY: top + height / 2, bubbles: true, composed: true };
    element.shadowRoot!.elementFromPoint(at.clientX, at.clientY)!.dispatchEvent(new MouseEvent('click', at));
    return chosen;
  });
  expect(place).toBe('watercourse[0].stones[0]');
});

test('a narrow page shows a strip that opens on the pond and says how heights are drawn', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/');
  const drawing = page.locator('tb-section');
  await expect(drawing.locator('.caption')).toContainText('as tall as lengths');
  expect(await drawing.evaluate((element) => element.scrollWidth > element.clientWidth + 100)).toBe(true);
  await expect.poll(() => drawing.evaluate((element) => element.scrollLeft)).toBeGreaterThan(100);
  const pond = drawing.locator('[data-place="pond"]');
  const box = (await pond.boundingBox())!;
  expect(box.x + box.width / 2).toBeGreaterThan(60);
  expect(box.x + box.width / 2).toBeLessThan(330);
});
