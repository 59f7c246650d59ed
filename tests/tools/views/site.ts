/** The page with a demo, and with files of every kind. */
import type { Page } from '@playwright/test';
import { ask, first, isWhole, openFile, scenario, type, type View } from './hand.ts';

/** A question, whose answer is there as soon as its words are. */
const asked = (name: string, words: string, heard: RegExp): View => ({
  name,
  show: async (page) => {
    await ask(page, words);
    await page.getByRole('region', { name: 'The answer' }).filter({ hasText: heard }).waitFor();
    await isWhole(page);
  },
  leave: (page) => ask(page, first),
});

/** Dye half way to the lip. */
async function dyed(page: Page): Promise<void> {
  await ask(page, 'What does the water do inside the filter?');
  await page.getByRole('button', { name: 'pour dye' }).click();
  await page.getByRole('button', { name: 'hold the dye' }).click();
  await page.getByRole('button', { name: /^half past the lip/ }).click();
  await isWhole(page);
}

/** Dye in a filter whose narrower gap is kept beside it. */
async function dyedBeside(page: Page): Promise<void> {
  await ask(page, 'What does the water do inside the filter?');
  await page.getByRole('button', { name: 'keep this case beside' }).click();
  await type(page, 'gap round the mats', '15 mm');
  await isWhole(page);
  await page.getByRole('button', { name: 'pour dye' }).click();
  await page.getByRole('button', { name: 'hold the dye' }).click();
  await page.getByRole('button', { name: /^half past the lip/ }).click();
  await isWhole(page);
}

/** Two gaps of one filter beside each other. */
async function sides(page: Page): Promise<void> {
  await ask(page, 'What does the water do inside the filter?');
  await page.getByRole('button', { name: 'keep this case beside' }).click();
  await type(page, 'gap round the mats', '15 mm');
  await isWhole(page);
  await page.getByRole('button', { name: 'side by side' }).click();
  await page.getByRole('dialog', { name: 'Two cases side by side' }).waitFor();
}

/** The weeks in which the media clog. */
async function weeks(page: Page): Promise<void> {
  await ask(page, 'What does the water do inside the filter?');
  await page.getByText('how often to clean it').click();
  await page.getByRole('button', { name: /^suppose fine muck/ }).click();
  await page.getByRole('region', { name: 'Week by week' }).waitFor();
}

/** The lesson where the media float. */
async function lesson(page: Page): Promise<void> {
  await ask(page, 'What does the water do inside the filter?');
  await page.getByRole('button', { name: /^a lesson on channeling/ }).click();
  await page.getByRole('heading', { name: 'Two ways through a filter' }).waitFor();
  for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'next step' }).click();
  await page.getByRole('heading', { name: 'Pushed' }).waitFor();
  await isWhole(page);
}

async function lessonOnPaper(page: Page): Promise<void> {
  await lesson(page);
  await page.getByRole('button', { name: 'print the lesson' }).click();
  await page.getByRole('article', { name: 'Sheet for the trainer' }).waitFor();
}

/** Something the page unfolds, pressed open and closed again. */
const unfolded = (name: string, at: string): View => {
  const press = (page: Page): Promise<void> => page.locator(at).locator('> summary').first().click();
  return { name, show: press, leave: press };
};

const part = (name: string, place: string): View => ({
  name: `part-${name}`,
  show: async (page) => {
    await page.locator(`tb-section [data-place="${place}"]`).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: `Inputs: ${name}` }).waitFor();
  },
  leave: (page) => page.locator('tb-part').getByRole('button', { name: 'close' }).click(),
});

/** A file opened; one that has no answer is known by its name, else by its title. */
const file = (name: string, text: () => string, title: string, shown: string): View => ({
  name,
  show: async (page) => {
    await openFile(page, `${name}.json`, text());
    await page.getByRole('heading', { level: 1, name: title, exact: true }).waitFor();
    await page.locator(shown).first().waitFor();
    await isWhole(page);
  },
});

/** A site whose pond does not hold what runs back. */
const FAILING = 'courtyard-no-check-valve';

/** A pond that holds by night and loses by its falls; one line can't be read. */
const LOG = `2031-06-02 08:00, 110 mm, on
2031-06-03 08:00, 128 mm, on
2031-06-03 09:00, 92 mm, off
2031-06-04 09:00, 95 mm, off
2031-06-04 10:00, 133 mm, on
2031-06-05 08:00, 149 mm, on
2031-06-06 08:00, 168 mm, on
06.06. 9:00, 170 mm`;

export const siteViews: readonly View[] = [
  {
    name: 'stop',
    show: (page) => page.getByRole('button', { name: 'stop the pump' }).click(),
    leave: async () => {},
  },
  asked('filling', 'When will it be full?', /Shut the hose/),
  asked('filter', 'What does the water do inside the filter?', /slips round the mats/),
  { name: 'filter-dye', show: dyed },
  { name: 'filter-dye-kept', show: dyedBeside },
  { name: 'filter-weeks', show: weeks },
  { name: 'filter-sides', show: sides },
  { name: 'lesson', show: lesson },
  { name: 'lesson-paper', show: lessonOnPaper },
  part('pond', 'pond'),
  part('filter', 'filter'),
  unfolded('whole', 'tb-whole-answer details'),
  unfolded('sites', 'details.site'),
  unfolded('dials', 'tb-dials details.more'),
  unfolded('parts', '.inputs > details.others'),
  unfolded('ruler', '.folds > details:nth-of-type(1)'),
  unfolded('setting', '.folds > details:nth-of-type(2)'),
  {
    name: 'sheet',
    show: async (page) => {
      await page.locator('details.site > summary').click();
      await page.getByRole('button', { name: 'setting-out sheet and owner’s card' }).click();
      await page.getByRole('button', { name: 'print' }).waitFor();
    },
    leave: async (page) => {
      await page.getByRole('button', { name: 'back to the page' }).click();
      await page.locator('details.site > summary').click();
    },
  },
  unfolded('minutes', 'tb-plots .more > details:nth-of-type(1)'),
  unfolded('lines', 'tb-plots .more > details:nth-of-type(2)'),
  unfolded('table', 'tb-plots .more > details:nth-of-type(3)'),
  unfolded('save', 'tb-plots .more > details:nth-of-type(4)'),
  unfolded('check', 'tb-checks .check:last-child details'),
  unfolded('assumed', '.rest > details:nth-of-type(1)'),
  {
    name: 'kept',
    show: async (page) => {
      await page.getByRole('button', { name: 'keep this case beside' }).click();
      await page.getByRole('textbox', { name: 'fill mark' }).fill('-70 mm');
      await page.getByRole('textbox', { name: 'fill mark' }).press('Enter');
      await page.getByRole('button', { name: 'let the case kept go' }).waitFor();
      await isWhole(page);
    },
    leave: async (page) => {
      await page.getByRole('button', { name: 'undo' }).click();
      await page.getByRole('button', { name: 'let the case kept go' }).click();
    },
  },
  {
    name: 'year',
    show: async (page) => {
      await page.getByRole('button', { name: 'a year later' }).click();
      await page.getByText('A year later (our default)').waitFor();
      await isWhole(page);
    },
    leave: async (page) => {
      await page.getByRole('button', { name: 'undo' }).click();
      await page.getByRole('button', { name: 'let the case kept go' }).click();
    },
  },
  {
    name: 'log',
    show: async (page) => {
      await page.locator('summary', { hasText: 'is it leaking?' }).click();
      await page.getByRole('textbox', { name: 'The pond’s level, a line for each reading' }).fill(LOG);
      await page.getByRole('region', { name: 'What the log says' }).waitFor();
    },
    leave: async (page) => {
      await page.getByRole('textbox', { name: 'The pond’s level, a line for each reading' }).fill('');
      await page.locator('summary', { hasText: 'is it leaking?' }).click();
    },
  },
  {
    name: 'wrong',
    show: async (page) => {
      const field = page.getByRole('textbox', { name: 'fill mark' });
      await field.fill('11 gpm');
      await field.press('Enter');
      await page.getByText(/older than what you typed/).waitFor();
    },
    leave: (page) => page.getByRole('button', { name: 'undo' }).click(),
  },
  file('fails', () => scenario(FAILING), JSON.parse(scenario(FAILING)).title, 'tb-checks .check'),
  file(
    'broken',
    () => JSON.stringify({ ...JSON.parse(scenario('courtyard')), span: '24 gpm', colour: 'green' }),
    JSON.parse(scenario('courtyard')).title,
    '.trouble',
  ),
];
