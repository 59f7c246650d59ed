import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { felted } from '../map/sites.ts';
import { ask, openFile } from '../tools/views/hand.ts';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';
import { unreachable } from './pageReads.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const QUESTION = 'What does the water do inside the filter?';

/** The courtyard with fine felt, so that every border lies in the map. */
function felt(): string {
  const file = JSON.parse(readFileSync(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8'));
  felted(file);
  return JSON.stringify({ ...file, title: 'Felted courtyard' });
}

async function openMap(page: Page, file?: string): Promise<void> {
  await page.goto('./#courtyard');
  await page.locator('tb-plots path.subject').first().waitFor();
  if (file !== undefined) {
    await openFile(page, 'felted.json', file);
    await page.getByRole('heading', { level: 1, name: 'Felted courtyard' }).waitFor();
  }
  await ask(page, QUESTION);
  await page.locator('summary', { hasText: 'see all valve settings' }).click();
  await page.locator('tb-map path.line').first().waitFor();
}

const bottom = (page: Page) => page.getByRole('slider', { name: 'bottom valve', exact: true });
const top = (page: Page) => page.getByRole('slider', { name: 'top valve', exact: true });
const said = (page: Page) => page.locator('tb-map [role=status]');

test('nothing of the map is fetched before it is opened, and it is only in the question about the filter', async ({
  page,
}) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  await page.goto('./#courtyard');
  await page.locator('tb-plots path.subject').first().waitFor();
  await expect(page.getByText('see all valve settings')).toHaveCount(0);
  await ask(page, QUESTION);
  expect(fetched.filter((path) => /\/map-/.test(path))).toEqual([]);
  await page.locator('summary', { hasText: 'see all valve settings' }).click();
  await page.locator('tb-map path.line').first().waitFor();
  expect(fetched.filter((path) => /\/map-/.test(path)).length).toBeGreaterThan(0);
});

test('the present point lies where the valves stand; the words under it are the worker’s', async ({ page }) => {
  await openMap(page, felt());
  await expect(bottom(page)).toHaveAttribute('aria-valuetext', '18° closed');
  await expect(top(page)).toHaveAttribute('aria-valuetext', '40° closed');
  await expect(said(page)).toContainText('As it is (the bottom valve 18° closed');
  await expect(said(page)).toContainText('The check ‘headroom’ fails.');
  const { x, y, left, right, upper, lower } = await page.locator('tb-map').evaluate((map) => {
    const point = map.shadowRoot!.querySelector('.point')!;
    const plane = map.shadowRoot!.querySelector('.plane')!;
    const of = (element: Element, name: string): number => Number(element.getAttribute(name));
    return {
      x: of(point, 'cx'),
      y: of(point, 'cy'),
      left: of(plane, 'x'),
      right: of(plane, 'x') + of(plane, 'width'),
      upper: of(plane, 'y'),
      lower: of(plane, 'y') + of(plane, 'height'),
    };
  });
  expect((x - left) / (right - left)).toBeCloseTo(0.8, 3);
  expect((lower - y) / (lower - upper)).toBeCloseTo(0.55, 3);
});

test('by keys alone: a handle is turned degree by degree, the answer follows, one step back undoes all', async ({
  page,
}) => {
  await openMap(page, felt());
  await bottom(page).focus();
  for (let k = 0; k < 3; k++) await page.keyboard.press('PageDown');
  for (let k = 0; k < 3; k++) await page.keyboard.press('ArrowRight');
  await expect(bottom(page)).toHaveAttribute('aria-valuetext', '60° closed');
  await page.keyboard.press('Tab');
  await expect(top(page)).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(top(page)).toHaveAttribute('aria-valuetext', '41° closed');
  await expect(said(page)).toContainText('As it is (the bottom valve 60° closed, the top valve 41° closed)');
  await expect(page.getByRole('textbox', { name: 'bottom feed’s valve' })).toHaveValue(/0\.3333|33/);
  const undo = page.getByRole('button', { name: 'undo' });
  await expect(undo).toHaveAttribute('title', 'both valves moved');
  await undo.click();
  await expect(undo).toBeDisabled();
  await expect(bottom(page)).toHaveAttribute('aria-valuetext', '18° closed');
  await expect(said(page)).toContainText('As it is (the bottom valve 18° closed, the top valve 40° closed)');
  await bottom(page).focus();
  await page.keyboard.press('Home');
  await expect(bottom(page)).toHaveAttribute('aria-valuetext', 'shut');
  await expect(said(page)).toContainText('the bottom valve shut');
});

test('by the pointer: the point is dragged over the plane, both valves follow as one step, into where all checks hold', async ({
  page,
}) => {
  await openMap(page, felt());
  const plane = page.locator('tb-map rect.plane');
  await plane.scrollIntoViewIfNeeded();
  const box = (await plane.boundingBox())!;
  const at = (opened: number, up: number): [number, number] => [
    box.x + box.width * opened,
    box.y + box.height * (1 - up),
  ];
  await page.mouse.move(...at(0.8, 0.55));
  await page.mouse.down();
  await page.mouse.move(...at(0.6, 0.4), { steps: 5 });
  await page.mouse.move(...at(0.5, 0.3), { steps: 5 });
  await expect(bottom(page)).toHaveAttribute('aria-valuetext', '45° closed');
  await page.mouse.up();
  await expect(top(page)).toHaveAttribute('aria-valuetext', '63° closed');
  await expect(said(page)).toContainText('the bottom valve 45° closed, the top valve 63° closed');
  await expect(said(page)).toContainText('All checks of the running balance hold.');
  await expect(said(page)).toContainText(
    /all checks hold with the bottom valve shut, and between \d+° and \d+° closed/,
  );
  const undo = page.getByRole('button', { name: 'undo' });
  await undo.click();
  await expect(undo).toBeDisabled();
  await expect(bottom(page)).toHaveAttribute('aria-valuetext', '18° closed');
});

test.describe('by thumb', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true });

  test('a tap sets the point, a finger drawn over the plane scrolls the page and sets nothing', async ({ page }) => {
    await openMap(page, felt());
    const plane = page.locator('tb-map rect.plane');
    await plane.scrollIntoViewIfNeeded();
    const box = (await plane.boundingBox())!;
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height * 0.7);
    await expect(bottom(page)).toHaveAttribute('aria-valuetext', '45° closed');
    await expect(top(page)).toHaveAttribute('aria-valuetext', '63° closed');
    const client = await page.context().newCDPSession(page);
    const from = await page.evaluate(() => scrollY);
    const touch = (type: string, y: number) =>
      client.send('Input.dispatchTouchEvent', {
        type: type as 'touchStart',
        touchPoints: type === 'touchEnd' ? [] : [{ x: box.x + 30, y }],
      });
    await touch('touchStart', box.y + 200);
    for (let y = 190; y > 60; y -= 10) await touch('touchMove', box.y + y);
    await touch('touchEnd', 0);
    await expect.poll(() => page.evaluate(() => scrollY)).not.toBe(from);
    await expect(bottom(page)).toHaveAttribute('aria-valuetext', '45° closed');
  });
});

test('lines are chosen by presses and told in place; the same numbers stand in a table', async ({ page }) => {
  await openMap(page, felt());
  const map = page.locator('tb-map');
  await expect(map.locator('path.headroom')).toHaveCount(0);
  await map.getByRole('button', { name: 'headroom' }).click();
  await expect(map.locator('path.headroom').first()).toBeAttached();
  await expect(map.locator('text.seat', { hasText: 'of headroom' })).toHaveCount(1);
  for (const words of ['all checks hold', 'media float up', 'headroom fails here', 'channeling fails here'])
    await expect(map.locator('text.seat', { hasText: words })).toHaveCount(1);
  const overlapping = await map.evaluate(({ shadowRoot }) => {
    const boxes = [...shadowRoot!.querySelectorAll('text.seat')].map((each) => each.getBoundingClientRect());
    return boxes.filter((a, i) =>
      boxes.some(
        (b, k) => k > i && a.left < b.right && b.left < a.right && a.top + 3 < b.bottom - 3 && b.top + 3 < a.bottom - 3,
      ),
    ).length;
  });
  expect(overlapping).toBe(0);
  await map.locator('summary', { hasText: 'the same as a table' }).click();
  await expect(map.getByRole('row', { name: /^60° closed/ })).toContainText('channeling');
  await map.getByRole('combobox').selectOption('stone');
  await expect(map.getByRole('row', { name: /^open/ })).toContainText('L/min');
  await expect(map.locator('tbody tr')).toHaveCount(7);
  await expect(map.locator('thead th')).toHaveCount(7);
});

test('a site without two valves says why there is no map', async ({ page }) => {
  await openMap(page);
  const file = JSON.parse(readFileSync(new URL('../../scenarios/courtyard.json', import.meta.url), 'utf8'));
  delete file.plumbing.topFeed;
  await openFile(page, 'one.json', JSON.stringify({ ...file, title: 'One valve' }));
  await page.getByRole('heading', { level: 1, name: 'One valve' }).waitFor();
  await expect(page.locator('tb-map')).toContainText('There is no top feed');
});

for (const screen of screens) {
  test(`hinders nobody in ${screen.look} at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await openMap(page, felt());
    await page.locator('tb-map summary', { hasText: 'the same as a table' }).click();
    await hindersNobody(page, 'tb-map');
    expect((await unreachable(page)).filter((each) => /map|valve/.test(each))).toEqual([]);
  });
}

test('in the reader’s own colors the point, the region and the lines are still drawn', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await openMap(page, felt());
  const seen = await page.locator('tb-map').evaluate(({ shadowRoot }) =>
    ['path.border', 'path.stone', '.point', '.plane'].map((at) => {
      const { stroke } = getComputedStyle(shadowRoot!.querySelector(at)!);
      const paper = getComputedStyle(document.documentElement).backgroundColor;
      return stroke !== 'none' && stroke !== paper;
    }),
  );
  expect(seen).toEqual([true, true, true, true]);
});
