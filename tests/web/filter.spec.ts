/** Inside the filter: marks as fast as the water, dye that arrives, two cases side by side; by hand, by thumb, by keys. */
import type { Page } from '@playwright/test';
import { balance, readScenario } from '../../sim/index.ts';
import { looks } from '../../web/state/look.ts';
import { lookIn } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { hindering } from './hindering.ts';
import { siteText } from './sites.ts';

const question = 'What does the water do inside the filter?';

async function openFilter(page: Page, site = 'courtyard'): Promise<void> {
  await page.goto(`./#${site}`);
  await expect(page.locator('tb-section').first()).toBeVisible();
  const others = page.getByRole('button', { name: 'other questions' });
  if (await others.isVisible()) await others.click();
  await page.getByRole('button', { name: question }).last().click();
  await expect(page.locator('tb-filter')).toBeVisible();
}

const type = async (page: Page, name: string, text: string): Promise<void> => {
  const field = page.getByRole('textbox', { name, exact: true });
  await field.fill(text);
  await field.press('Enter');
};

interface Moved {
  readonly way: string;
  /** Where it was, px of the drawing, and its speed there, px/s of the screen, up being positive. */
  readonly y: number;
  readonly speed: number;
}

/** Where the marks are on the screen, twice: by their boxes, not by what is written into them. */
async function moved(page: Page, after: number): Promise<{ factor: number; scale: number; marks: Moved[] }> {
  return page.locator('tb-section .hundred').evaluate(async (group, ms) => {
    const svg = (group as SVGGElement).ownerSVGElement!;
    const top = (): number => svg.getBoundingClientRect().top;
    const read = (): { at: number; marks: { y: number; way: string; within: boolean }[] } => ({
      at: performance.now(),
      marks: [...group.querySelectorAll('.mark')].map((mark) => {
        const box = mark.getBoundingClientRect();
        const way = mark.parentElement?.getAttribute('data-way') ?? '';
        return { y: box.top + box.height / 2 - top(), way, within: !mark.classList.contains('beyond') };
      }),
    });
    const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));
    await frame();
    const before = read();
    while (performance.now() - before.at < ms) await frame();
    const now = read();
    const seconds = (now.at - before.at) / 1000;
    const marks = before.marks.flatMap(({ y, way, within }, i) => {
      const then = now.marks[i]!;
      const up = y - then.y;
      return within && then.within && up > 0 ? [{ way, y: 0.5 * (y + then.y), speed: up / seconds }] : [];
    });
    return {
      factor: Number(group.getAttribute('data-factor')),
      scale: Number(group.getAttribute('data-scale')),
      marks,
    };
  }, after);
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

test('the marks move as fast as the water in their way, on the scale of the drawing', async ({ page }) => {
  await openFilter(page);
  await type(page, 'gap round the mats', '12 mm');
  await expect(page.locator('.hundred [data-way=round]')).not.toHaveAttribute('data-count', '1');
  // What the water does, from the site's running balance.
  const file = JSON.parse(siteText('courtyard'));
  file.filter.media.gap = '12 mm';
  const reading = readScenario(JSON.stringify(file));
  if (!reading.ok) throw new Error('the site has problems');
  const { area, perimeter, gap, layers } = reading.scenario.filter!.media!;
  const { flows } = balance(reading.scenario);
  const pore = (porosity: number): number => flows['media']! / area / porosity;
  const inGap = flows['gap']! / (perimeter * gap);

  // The scale of the drawing, from its own ruler: a quarter of a meter between two figures of the datum.
  const ruler = await page
    .locator('tb-section svg text.axis')
    .evaluateAll((all) =>
      all
        .map((each) => ({ text: each.textContent ?? '', y: each.getBoundingClientRect().top }))
        .filter(({ text }) => /^\+\d\.\d+$/.test(text)),
    );
  const at = (text: string): number => ruler.find((each) => each.text === text)!.y;
  const drawn = (at('+0.25') - at('+1.00')) / 0.75;

  const { factor, scale, marks } = await moved(page, 1500);
  expect(Math.abs(scale / drawn - 1)).toBeLessThan(0.01);
  const round = marks.filter(({ way }) => way === 'round').map(({ speed }) => speed / factor / drawn);
  expect(round.length).toBeGreaterThan(3);
  expect(Math.abs(median(round) / inGap - 1)).toBeLessThan(0.05);
  // The bags are three times as high as the mat, so the middle of all marks is in them.
  const through = marks.filter(({ way }) => way === 'through').map(({ speed }) => speed / factor / drawn);
  expect(through.length).toBeGreaterThan(30);
  expect(Math.abs(median(through) / pore(layers[1]!.porosity) - 1)).toBeLessThan(0.05);
});

test('a hundred marks: as many go round as parts of the bottom feed, told apart by shape', async ({ page }) => {
  await openFilter(page);
  await type(page, 'gap round the mats', '12 mm');
  const says = page.locator('tb-section').getByText(/^\d+ of 100 marks go through, \d+ go round$/);
  await expect(says).not.toHaveText(/ 1 go round/);
  const [, through, round] = /^(\d+) of 100 marks go through, (\d+) go round$/.exec((await says.textContent())!)!;
  await expect(page.locator('.hundred .mark.through')).toHaveCount(Number(through));
  await expect(page.locator('.hundred .mark.round')).toHaveCount(Number(round));
  const outline = (way: string) => page.locator(`.hundred .mark.${way}`).first().getAttribute('d');
  expect(await outline('through')).not.toBe(await outline('round'));
});

test('what is seen is told, and told otherwise when it is', async ({ page }) => {
  await openFilter(page);
  const seen = page.getByRole('region', { name: 'What is seen' });
  await expect(seen).toContainText('the gap decides');
  await expect(seen).toContainText('Nobody has measured that gap');
  await type(page, 'gap round the mats', '1 mm');
  await expect(seen).toContainText('Hardly anything slips round the sides');
  await expect(seen).not.toContainText('Nobody has measured');
  await page.getByRole('button', { name: 'stop the pump' }).click();
  await expect(seen).toContainText('The pump stands');
});

test('marks can be held, and let run', async ({ page }) => {
  await openFilter(page);
  await page.getByRole('button', { name: 'let the marks stand' }).click();
  expect((await moved(page, 400)).marks).toHaveLength(0);
  await page.getByRole('button', { name: 'let the marks run' }).click();
  await expect.poll(async () => (await moved(page, 400)).marks.length).toBeGreaterThan(50);
});

test('dye is poured, watched arriving, and goes where it was poured with the moment of the page', async ({ page }) => {
  await openFilter(page);
  await page.getByRole('button', { name: 'pour dye' }).click();
  const plenum = page.locator('tb-section [data-dye=plenum]');
  await expect(plenum).toHaveCount(1);
  const part = async (name: string): Promise<number> =>
    Number(
      (await page
        .locator(`tb-section [data-dye="${name}"]`)
        .first()
        .getAttribute('data-part', { timeout: 1000 })
        .catch(() => '0')) ?? 0,
    );
  await expect.poll(() => part('media 8')).toBeGreaterThan(0.02);
  expect(await part('plenum')).toBeLessThan(1);
  await expect(page.getByText(/after it was poured: .* under the rack/)).toBeVisible();
  const curve = page.getByRole('img', { name: /^Dye at the lip: \d+ % through the media/ });
  await expect(curve).toBeVisible();
  await page.getByRole('button', { name: 'hold the dye' }).click();
  const half = page.getByRole('button', { name: /^half past the lip after/ });
  await half.click();
  const told = page.getByText(/after it was poured:/);
  const time = (await half.textContent())!;
  await expect(told).toContainText(`${time} after it was poured`);
  // Half of it has passed at the flows of the moment, and this run keeps them.
  const beyond = Number(/(\d+) % beyond the lip/.exec((await told.textContent())!)?.[1]);
  expect(Math.abs(beyond - 50)).toBeLessThanOrEqual(3);
  await expect(page.getByText(/the published scale of basins|published/).first()).toBeVisible();
  await page.getByRole('button', { name: 'let the dye go' }).click();
  await expect(page.locator('tb-section [data-dye]')).toHaveCount(0);
});

test.describe('with motion unwelcome', () => {
  test.use({ contextOptions: { reducedMotion: 'reduce' } });

  test('marks and dye step', async ({ page }) => {
    await openFilter(page);
    const at = (): Promise<string | null> => page.locator('.hundred .mark').first().getAttribute('transform');
    await expect.poll(at).not.toBeNull();
    const seen = new Set<string | null>();
    for (let i = 0; i < 12; i++) {
      seen.add(await at());
      await page.waitForTimeout(100);
    }
    expect(seen.size).toBeLessThanOrEqual(2);
    const before = await at();
    await expect.poll(at).not.toBe(before);
  });
});

test('deposit darkens the layers as the run goes on, and is told', async ({ page }) => {
  await openFilter(page);
  const file = { ...JSON.parse(siteText('teaching-filter')), debris: 3e-6, span: '20 d', title: 'Clogging' };
  const buffer = Buffer.from(JSON.stringify(file));
  await page.locator('input[type=file]').setInputFiles({ name: 'clogging.json', mimeType: 'application/json', buffer });
  await expect(page.getByRole('heading', { level: 1, name: 'Clogging' })).toBeVisible();
  const seen = page.getByRole('region', { name: 'What is seen' });
  await expect(seen).not.toContainText('deposit holds the water back');
  const hand = page.getByRole('slider', { name: 'moment', exact: true });
  await hand.focus();
  await page.keyboard.press('End');
  await expect(seen).toContainText('deposit holds the water back');
  await expect(page.locator('tb-section .silt')).toHaveCount(2);
  await expect(page.getByRole('row', { name: /^pores of ‘fine mat’ filled/ })).toBeVisible();
});

test('a pump that stands: dye stays, and a sentence says so', async ({ page }) => {
  await openFilter(page);
  await page.getByRole('button', { name: 'stop the pump' }).click();
  await expect(page.getByRole('region', { name: 'What is seen' })).toContainText('The pump stands');
  await page.getByRole('button', { name: 'pour dye' }).click();
  const dye = page.getByRole('region', { name: 'Dye' });
  await expect(dye.getByRole('status').first()).not.toBeEmpty();
  await expect(dye).not.toContainText('NaN');
});

test('two cases side by side on a projector, opened and left by keys', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await openFilter(page);
  await page.getByRole('button', { name: 'keep this case beside' }).press('Enter');
  await type(page, 'gap round the mats', '15 mm');
  const press = page.getByRole('button', { name: 'side by side' });
  await press.focus();
  await page.keyboard.press('Enter');
  const sides = page.getByRole('dialog', { name: 'Two cases side by side' });
  await expect(sides).toBeVisible();
  await expect(sides.getByRole('heading', { level: 2 })).toHaveText(
    /^As kept, 1\.0 % slips round the media; now \d+ % does\.$/,
  );
  await expect(sides).toContainText('Set otherwise: gap round the mats 15 mm, as kept 5 mm.');
  // Both whole in sight, at one scale and one speed.
  const drawings = sides.locator('tb-section svg');
  await expect(drawings).toHaveCount(2);
  const boxes = await drawings.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON()));
  for (const { left, right, bottom, top } of boxes) {
    expect(left).toBeGreaterThanOrEqual(0);
    expect(right).toBeLessThanOrEqual(1280);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(bottom).toBeLessThanOrEqual(720);
  }
  const table = await sides.getByRole('table').boundingBox();
  expect(table!.y + table!.height).toBeLessThanOrEqual(720);
  const hundreds = sides.locator('.hundred');
  for (const name of ['data-scale', 'data-factor']) {
    const both = await hundreds.evaluateAll((all, key) => all.map((each) => each.getAttribute(key)), name);
    expect(new Set(both).size).toBe(1);
  }
  expect(await hindering(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(sides).toBeHidden();
  await expect(press).toBeFocused();
  await page.keyboard.press('Enter');
  await sides.getByRole('button', { name: 'back to the page' }).press('Enter');
  await expect(sides).toBeHidden();
  await expect(press).toBeFocused();
});

test.describe('by thumb', () => {
  test.use({ viewport: { width: 360, height: 640 }, hasTouch: true });

  test('dye is poured and the page is not wider than the phone', async ({ page }) => {
    await openFilter(page);
    await page.getByRole('button', { name: 'pour dye' }).tap();
    await expect(page.getByRole('img', { name: /^Dye at the lip/ })).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    const vessel = await page.locator('.hundred').boundingBox();
    expect(vessel!.x).toBeLessThan(360);
  });
});

for (const look of looks)
  test(`has nothing a reader cannot reach, in ${look}`, async ({ page }) => {
    await lookIn(page, look);
    await openFilter(page);
    await page.getByRole('button', { name: 'pour dye' }).click();
    await expect(page.getByRole('img', { name: /^Dye at the lip/ })).toBeVisible();
    await page.getByRole('button', { name: 'hold the dye' }).click();
    expect(await hindering(page)).toEqual([]);
  });

test('how often to clean it is told week by week; where nothing settles, some muck can be supposed and taken back', async ({
  page,
}) => {
  await openFilter(page, 'backyard');
  await page.getByText('how often to clean it').click();
  const weeks = page.getByRole('region', { name: 'The weeks between cleanings' });
  await expect(weeks).toContainText('no debris');
  await weeks.getByRole('button', { name: /^suppose fine muck/ }).click();
  await expect(weeks).toContainText(/Clean the media every/);
  await expect(weeks.getByRole('row')).toHaveCount(7);
  expect(await hindering(page)).toEqual([]);
  await page.getByRole('button', { name: /^undo/ }).click();
  await expect(weeks).toContainText('no debris');
});
