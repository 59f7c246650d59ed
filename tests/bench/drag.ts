/** A hand on a dial of the built page: from each move of the pointer to the frame that shows what came of it. */
import type { Browser, Locator, Page } from '@playwright/test';
import { type Followed, followers, installProbe, NAMER } from './probe.ts';
import { categories, type Shares, sharesOf } from './trace.ts';

export interface Drag {
  readonly dial: string;
  /** ms of every move that was followed by drawing, plots and answer. */
  readonly ms: readonly number[];
  /** ms until the answer alone. */
  readonly answer: readonly number[];
  /** Moves after which one of the three stood unchanged: the figure rounds to the same. */
  readonly unchanged: number;
  /** ms of a move of the hand that had rested until the answer in full was under way. */
  readonly rested: readonly number[];
  readonly shares: Shares;
}

interface Asked {
  readonly question: string | undefined;
  readonly dial: string;
}

/** Moves stand further apart than this, ms, so that each is seen by itself; the hand rests only after 150. */
const QUIET = 40;
const LONGEST = 1500;
/** px along the dial's ruler from one move to the next, so that every rounded figure changes. */
const STRIDE = 9;

/** Positions up and down the middle of a ruler, never the same twice running. */
function* sweep(box: { x: number; y: number; width: number; height: number }): Generator<[number, number]> {
  const [low, high] = [box.x + 0.3 * box.width, box.x + 0.7 * box.width];
  let [x, way] = [(low + high) / 2, STRIDE];
  while (true) {
    if (x + way > high || x + way < low) way = -way;
    x += way;
    yield [x, box.y + box.height / 2];
  }
}

async function ask({ question, dial }: Asked, page: Page): Promise<Locator> {
  await page.locator('tb-plots path.subject').first().waitFor();
  if (question) await page.getByRole('button', { name: question }).click();
  const ruler = page.getByRole('slider', { name: dial, exact: true });
  await ruler.scrollIntoViewIfNeeded();
  // The first stop is played once, and every dial is searched for where its answer turns.
  await page.waitForTimeout(10_000);
  await page.evaluate(installProbe);
  return ruler;
}

async function moveOnce(page: Page, [x, y]: [number, number], quiet: number): Promise<Followed> {
  await page.evaluate(() => window.probe.arm());
  await page.mouse.move(x, y);
  return page.evaluate(([quiet, longest]) => window.probe.settled(quiet!, longest!), [quiet, LONGEST]);
}

const isWhole = (followed: Followed): followed is Required<Followed> =>
  followers.every((follower) => followed[follower] !== undefined);

const lastOf = (followed: Required<Followed>): number => Math.max(...Object.values(followed));

/**
 * @param moves how many are measured, after a tenth as many that warm up
 */
export async function dragDial(browser: Browser, address: string, asked: Asked, moves: number): Promise<Drag> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.addInitScript(NAMER);
  await page.goto(address);
  const ruler = await ask(asked, page);
  const spots = sweep((await ruler.boundingBox())!);
  const spot = (): [number, number] => spots.next().value as [number, number];
  await page.mouse.move(...spot());
  await page.mouse.down();
  for (let i = 0; i < moves / 10; i++) await moveOnce(page, spot(), QUIET);

  const seen: Followed[] = [];
  for (let i = 0; i < moves; i++) seen.push(await moveOnce(page, spot(), QUIET));
  const whole = seen.filter(isWhole);

  await browser.startTracing(page, { categories });
  for (let i = 0; i < moves / 4; i++) await moveOnce(page, spot(), QUIET);
  const shares = sharesOf(JSON.parse((await browser.stopTracing()).toString()));

  const rested: Followed[] = [];
  for (let i = 0; i < moves / 12; i++) {
    await page.waitForTimeout(160 + ((i * 37) % 120));
    rested.push(await moveOnce(page, spot(), QUIET));
  }
  await page.mouse.up();
  await page.close();
  return {
    dial: asked.dial,
    ms: whole.map(lastOf),
    answer: whole.map(({ answer }) => answer),
    unchanged: seen.length - whole.length,
    rested: rested.filter(isWhole).map(lastOf),
    shares,
  };
}
