/** The plane of pump speed and share under a hand: by mouse, by thumb and by keys, each gesture one step back. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { ask, openFile } from '../tools/views/hand.ts';
import { expect, test } from './fixture.ts';
import { hindersNobody, screens, standIn } from './hindering.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

/** The teaching filter with muck in its fine mat. */
function clogged(): string {
  const file = JSON.parse(readFileSync(new URL('../../scenarios/teaching-filter.json', import.meta.url), 'utf8'));
  file.filter.media.layers[0].deposit = '6 L';
  return JSON.stringify({ ...file, title: 'Clogged filter' });
}

async function openPlane(page: Page): Promise<void> {
  await page.goto('./#courtyard');
  await page.locator('tb-plots path.subject').first().waitFor();
  await openFile(page, 'clogged.json', clogged());
  await page.getByRole('heading', { level: 1, name: 'Clogged filter' }).waitFor();
  await ask(page, 'What does the water do inside the filter?');
  await page.locator('summary', { hasText: 'see all valve settings' }).click();
  await page.locator('tb-map path.line').first().waitFor();
  await page.getByRole('button', { name: 'pump speed and share' }).click();
  await speed(page).waitFor();
}

const speed = (page: Page) => page.getByRole('slider', { name: 'pump’s speed', exact: true });
const share = (page: Page) => page.getByRole('slider', { name: 'share by the bottom feed', exact: true });
const said = (page: Page) => page.locator('tb-map [role=status]');
const undo = (page: Page) => page.getByRole('button', { name: 'undo' });

/** Pixels of a place of the plane, whose speeds go from 40 % to 100 %. */
async function placer(page: Page): Promise<(speed: number, share: number) => [number, number]> {
  const plane = page.locator('tb-map rect.plane');
  await plane.scrollIntoViewIfNeeded();
  const box = (await plane.boundingBox())!;
  return (at, below) => [box.x + (box.width * (at - 0.4)) / 0.6, box.y + box.height * (1 - below)];
}

/** What the site itself answers for the share, once the hand has let go. */
async function settlesAt(page: Page, at: string, below: string): Promise<void> {
  await expect(said(page)).toContainText(`As it is (the pump at ${at} of its full speed`);
  await expect(said(page)).toContainText(`${below} of it goes by the bottom feed`);
  await expect(speed(page)).toHaveAttribute('aria-valuetext', at);
  await expect(share(page)).toHaveAttribute('aria-valuetext', below);
}

async function oneStepBack(page: Page): Promise<void> {
  await expect(undo(page)).toHaveAttribute('title', 'pump and valves moved');
  await undo(page).click();
  await expect(undo(page)).toBeDisabled();
  await expect(said(page)).toContainText('As it is (the bottom valve 45° closed, the top valve 45° closed)');
  await expect(speed(page)).toHaveAttribute('aria-valuetext', '100 %');
  await expect(share(page)).toHaveAttribute('aria-valuetext', '63 %');
}

test('by the mouse: the point is dragged, pump and valves follow as one step, and the site answers for the share', async ({
  page,
}) => {
  await openPlane(page);
  await expect(speed(page)).toHaveAttribute('aria-valuetext', '100 %');
  await expect(share(page)).toHaveAttribute('aria-valuetext', '63 %');
  await expect(said(page)).not.toContainText('can’t be driven slower');
  const at = await placer(page);
  await page.mouse.move(...at(1, 0.63));
  await page.mouse.down();
  await page.mouse.move(...at(0.9, 0.5), { steps: 4 });
  await page.mouse.move(...at(0.8, 0.3), { steps: 4 });
  await expect(said(page)).toContainText(/Under the hand|As it is/);
  await page.mouse.up();
  await settlesAt(page, '80 %', '30 %');
  await expect(said(page)).toContainText(
    'A pump that can’t be driven slower wants a smaller one in its place, or a throttle.',
  );
  await expect(page.locator('tb-map')).toContainText('with what has settled in the media now, 6.0 L');
  await oneStepBack(page);
});

test('where no setting does what is asked, the hand gets the nearest that has one', async ({ page }) => {
  await openPlane(page);
  await expect(page.locator('tb-map')).toContainText('points are left blank');
  const at = await placer(page);
  await page.mouse.click(...at(0.41, 0.5));
  await expect(speed(page)).toHaveAttribute('aria-valuetext', /^4[5-9] %$/);
  await expect(said(page)).toContainText(/As it is \(the pump at\s4[5-9]\s% of its full speed/);
  await oneStepBack(page);
});

test('by keys: both rulers move percent by percent and by tens, and a row of keys is one step back', async ({
  page,
}) => {
  await openPlane(page);
  await speed(page).focus();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowLeft');
  await settlesAt(page, '89 %', '63 %');
  await page.keyboard.press('Tab');
  await expect(share(page)).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await settlesAt(page, '89 %', '62 %');
  for (let k = 0; k < 3; k++) await page.keyboard.press('PageUp');
  await settlesAt(page, '89 %', '92 %');
  await oneStepBack(page);
});

test.describe('by thumb', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true });

  test('a tap sets the place, a finger on the point drags it', async ({ page }) => {
    await openPlane(page);
    const at = await placer(page);
    await page.touchscreen.tap(...at(0.8, 0.4));
    await settlesAt(page, '80 %', '40 %');
    const client = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', place?: [number, number]) =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: place ? [{ x: place[0], y: place[1] }] : [] });
    const now = await placer(page);
    await touch('touchStart', now(0.8, 0.4));
    for (const part of [0.45, 0.5, 0.55, 0.6]) await touch('touchMove', now(0.8 + (part - 0.4) / 2, part));
    await touch('touchEnd');
    await settlesAt(page, '90 %', '60 %');
    await undo(page).click();
    await settlesAt(page, '80 %', '40 %');
    await oneStepBack(page);
  });
});

test('the pump’s flow at the share is a second scale along the upper edge, which follows the share', async ({
  page,
}) => {
  await openPlane(page);
  const figures = page.locator('tb-map text.water');
  await expect(figures.last()).toHaveText(/^\d+ L\/min$/);
  const place = () => figures.last().evaluate((each) => Number(each.getAttribute('x')));
  const before = await place();
  await share(page).focus();
  for (let k = 0; k < 4; k++) await page.keyboard.press('PageDown');
  await expect.poll(place).not.toBe(before);
});

for (const screen of screens.filter(({ look, width }) => (look === 'stark') === (width === 820))) {
  test(`hinders nobody in ${screen.look} at ${screen.width} px, as far as a checker sees`, async ({ page }) => {
    await standIn(page, screen);
    await openPlane(page);
    await hindersNobody(page, 'tb-map');
  });
}
