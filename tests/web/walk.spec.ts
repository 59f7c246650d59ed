/** Each of the three people, from a page never opened before to what they leave with, by mouse, by thumb and by keys. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import ICAL from 'ical.js';
import { answer, comesBackTo, differs, field, settled, undo } from './dialsHand.ts';
import { expect, test } from './fixture.ts';
import { readPdf } from './pdfText.ts';
import { type Hand, ways } from './walkHand.ts';

const ZONE = 'America/New_York';
const QUESTION = { full: 'When will it be full?' };

const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const fold = (page: Page, name: string): Locator => page.locator('summary', { hasText: name });
const headline = (page: Page): Locator => answer(page).locator('.headline');

/** A page nobody has opened yet, with its first answer. */
async function open(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute('data-printed', 'once');
  });
  await page.goto('./');
  expect(await page.evaluate(() => localStorage.length + sessionStorage.length)).toBeLessThanOrEqual(2);
  await expect(headline(page)).toHaveText(/Holds|Tight|Fails/);
}

/** Asks a question, also where a narrow page shows only the one asked. */
async function ask(page: Page, hand: Hand, question: string): Promise<void> {
  const others = button(page, 'other questions');
  if (await others.isVisible()) await hand.press(others);
  await hand.press(button(page, question));
}

const OWN = {
  'How long is the pond at the water line?': '10 ft 4 1/2 in',
  'How wide is it at the water line?': '7 ft',
  'How deep is the water at its deepest?': '22 1/2 in',
  'How far above the water is the lowest edge of the liner?': '2 3/4 in',
  'most flow': '2400 gph',
  'most head': '16 ft',
};

/** 'Make it mine' with a pond of one's own, in inches. */
async function sketch(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.getByRole('button', { name: 'inches and gallons' }));
  await hand.press(button(page, 'make it mine'));
  const mine = page.getByRole('region', { name: 'Make it mine' });
  await expect(page.getByRole('heading', { name: 'A pond of my own' })).toBeVisible();
  for (const [name, text] of Object.entries(OWN)) {
    const at = mine.getByRole('textbox', { name, exact: true });
    await hand.type(at, text);
    await expect(at).toHaveValue(/\d/);
  }
  await expect(mine.getByText('An example’s: type your own.')).toHaveCount(0);
  await expect(mine.getByRole('alert')).toHaveCount(0);
  await settled(page);
}

const NAME = 'Pond by the two birches';

/** A space in print may be wide, narrow or none: figures are found without. */
const close = (text: string): string => text.replace(/\s+/g, '');

async function designer(page: Page, hand: Hand): Promise<void> {
  await open(page);
  await sketch(page, hand);
  await hand.look(page);
  await expect(headline(page)).toHaveText(
    /(Holds|Tight|Fails): with the check valve sound the pond .* below its edge;/,
  );
  const before = await headline(page).textContent();
  await hand.raise(page, 'liner edge', 3);
  await expect(
    page.getByRole('region', { name: 'Make it mine' }).getByRole('textbox', { name: /lowest edge/ }),
  ).toHaveValue('3½ in');
  await expect(headline(page)).not.toHaveText(before!);
  const now = (await settled(page)).answer;
  const [, stays] = /sound the pond stays (.*?) below its edge/.exec(now)!;
  const [, inch] = /An inch of this pond is (.*?)\./.exec(now)!;
  await hand.press(page.locator('details.site > summary'));
  await hand.type(field(page, 'its name'), NAME);
  await expect(page.getByRole('heading', { level: 1, name: NAME })).toBeVisible();
  const sheet = button(page, 'setting-out sheet and owner’s card');
  await expect(sheet).toBeEnabled({ timeout: 60_000 });
  await hand.press(sheet);
  await expect(page.getByRole('dialog').getByRole('heading', { name: NAME })).toBeVisible();
  await hand.look(page);
  await hand.press(button(page, 'print'));
  await expect(page.locator('body[data-printed]')).toHaveCount(1);
  const { pages, text } = await readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(pages).toBe(1);
  const paper = close(text);
  expect(paper).toContain(close(`${NAME}: setting-out sheet`));
  // Its edge is the benchmark, and the fill mark lies as far under it as was typed and stepped.
  expect(paper).toMatch(/liner’sedge,[^+−]*0in0in/);
  expect(paper).toContain(close('fill mark −3 1/2 in +3 1/2 in'));
  expect(paper).toContain(close(`it stays ${stays} below its edge`));
  expect(paper).toContain(close(`one inch of it ${inch}`));
  await hand.press(button(page, 'back to the page'));
  await expect(page.locator('tb-sheet')).toHaveCount(0);
}

async function installer(page: Page, hand: Hand): Promise<void> {
  await page.clock.setFixedTime(new Date('2027-05-12T12:30:00Z'));
  await open(page);
  await sketch(page, hand);
  await ask(page, hand, QUESTION.full);
  await hand.type(field(page, 'bucket of hose'), '5 gal');
  await hand.type(field(page, 'seconds to fill the bucket of hose'), '40');
  await expect(page.getByText('The hose gives 7.5 gpm.')).toBeVisible();
  await hand.type(field(page, 'water then, below the edge'), 'empty');
  await hand.type(field(page, 'hose opened at'), '9:20 am');
  await expect(field(page, 'hose opened at')).toHaveValue('9:20 am');
  await expect(page.getByText(/from 9:20\sam, give or take/)).toBeVisible();
  await hand.look(page);
  const shut = page.getByRole('heading', { name: /^Shut the hose at/ });
  const [, clock, half] = /(\d+:\d\d)\s*([ap]m)/.exec((await shut.textContent())!)!;
  const download = page.waitForEvent('download');
  await hand.press(button(page, 'ring me: a calendar file'));
  const event = new ICAL.Component(
    ICAL.parse(readFileSync(await (await download).path(), 'utf8')),
  ).getFirstSubcomponent('vevent')!;
  // Whoever says an hour and no day means today.
  await expect(
    page.getByText(/It rings 10 minutes before, on 12 May 2027, by the clock of America\/New_York\.$/),
  ).toBeVisible();
  const begins = new ICAL.Event(event).startDate.toJSDate();
  const wall = begins.toLocaleString('en-US', { timeZone: ZONE, dateStyle: 'short', timeStyle: 'short' });
  expect(close(wall)).toBe(`5/12/27,${clock}${half!.toUpperCase()}`);
}

async function setter(page: Page, hand: Hand): Promise<void> {
  await open(page);
  await hand.press(fold(page, 'set the valves'));
  const setting = page.getByRole('region', { name: 'How the valves are set' });
  await expect(setting).toContainText('Both valves can be set so.');
  await hand.type(field(page, 'share of the water through the bottom feed'), 'about half');
  await hand.type(field(page, 'water over the stone'), '25 mm');
  await expect(setting).toContainText(/50 % of it by the bottom feed; the water over ‘broad stone’ is 25 mm\./);
  for (const handle of ['bottom feed', 'top feed'])
    await expect(setting).toContainText(new RegExp(`${handle}\\s*\\d+° from along the pipe`));
  await expect(setting.getByRole('listitem').last()).toContainText('until the water over ‘broad stone’ is 25 mm');
  await hand.look(page);
  const before = await settled(page);
  await expect(undo(page)).toBeDisabled();
  await hand.press(setting.getByRole('button', { name: 'put these into the site' }));
  await expect(setting).toContainText('They stand in the site');
  await expect(undo(page)).toHaveAttribute('title', 'valves set by the ruler');
  expect(differs(before, await settled(page))).toContain('section');
  await hand.press(undo(page));
  await expect(undo(page)).toBeDisabled();
  await comesBackTo(page, before);
  await expect(setting).not.toContainText('They stand in the site');
}

const jobs = {
  'the designer goes from nothing to a printed sheet of an own pond': designer,
  'the installer goes from nothing to the hour in a calendar': installer,
  'whoever sets the valves goes from nothing to both handles, and back': setter,
};

for (const { name, use, hand } of ways) {
  test.describe(name, () => {
    test.use({ ...use, timezoneId: ZONE, contextOptions: { reducedMotion: 'reduce' } });
    for (const [says, job] of Object.entries(jobs))
      test(`${says}, ${name}`, async ({ page }, info) => {
        test.slow();
        await job(page, hand(info));
      });
  });
}
