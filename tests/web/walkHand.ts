/** Three hands for one and the same walk: a mouse at a desk, a thumb on a phone, and a keyboard alone. */
import type { Locator, Page, TestInfo } from '@playwright/test';
import { expect } from './fixture.ts';
import { sideways } from './pageReads.ts';

export interface Hand {
  /** A button, a summary or a field is come to and pressed. */
  press(at: Locator): Promise<void>;
  /** Puts a text in the place of what stands in a field, and hands it in. */
  type(at: Locator, text: string): Promise<void>;
  /** A dial goes up by so many steps. */
  raise(page: Page, dial: string, steps: number): Promise<void>;
  /** Looks whether the screen hinders this hand as it now stands. */
  look(page: Page): Promise<void>;
}

/** What a hand is called, and the browser it works in. */
export interface Way {
  readonly name: string;
  readonly use: { readonly viewport: { width: number; height: number }; readonly hasTouch: boolean };
  readonly hand: (info: TestInfo) => Hand;
}

const named = (at: Locator): Promise<string> =>
  at.evaluate((each) => {
    const label = each instanceof HTMLInputElement ? each.labels?.[0]?.textContent : each.textContent;
    return each.getAttribute('aria-label') ?? label?.trim() ?? '';
  });

const stepMore = (page: Page, dial: string): Locator =>
  page.getByRole('button', { name: `${dial}: one step more`, exact: true });

async function pressSteps(hand: Pick<Hand, 'press'>, page: Page, dial: string, steps: number): Promise<void> {
  for (let i = 0; i < steps; i++) await hand.press(stepMore(page, dial));
}

const mouse: Hand = {
  press: (at) => at.click(),
  type: async (at, text) => {
    await at.click({ clickCount: 3 });
    const { keyboard } = at.page();
    await keyboard.type(text);
    await keyboard.press('Enter');
  },
  raise: (page, dial, steps) => pressSteps(mouse, page, dial, steps),
  look: async (page) => expect(await sideways(page)).toEqual([]),
};

/** px, that a thumb needs; a browser rounds to parts of one. */
const THUMB = 44 - 0.1;

/** Taps where it is seen, which needs no scrolling but up and down. */
async function tap(at: Locator, position?: { x: number; y: number }): Promise<void> {
  await expect(at).toBeEnabled();
  await at.scrollIntoViewIfNeeded();
  const page = at.page();
  const { x, width, height } = (await at.boundingBox())!;
  const words = await named(at);
  expect(Math.min(width, height), `‘${words}’ is ${width} × ${height} px`).toBeGreaterThanOrEqual(THUMB);
  expect(x, `‘${words}’ begins in sight`).toBeGreaterThanOrEqual(0);
  expect(x + width, `‘${words}’ ends in sight`).toBeLessThanOrEqual(page.viewportSize()!.width);
  await at.tap(position ? { position } : {});
  expect(await page.evaluate(() => scrollX), `scrolled sideways for ‘${words}’`).toBe(0);
}

const touch: Hand = {
  press: (at) => tap(at),
  type: async (at, text) => {
    const { width, height } = (await at.boundingBox())!;
    // At its end, so that the backward key of the phone's own keyboard takes all of it away.
    await tap(at, { x: width - 4, y: height / 2 });
    await expect(at).toBeFocused();
    const { keyboard } = at.page();
    // A thumb between the last two characters is moved on.
    await keyboard.press('End');
    const { length } = await at.inputValue();
    for (let i = 0; i < length; i++) await keyboard.press('Backspace');
    await expect(at).toHaveValue('');
    await keyboard.insertText(text);
    await keyboard.press('Enter');
  },
  raise: (page, dial, steps) => pressSteps(touch, page, dial, steps),
  look: mouse.look,
};

/** Presses of Tab from one thing that matters to the next that nobody should need more of. */
const MOST_TABS = 60;

const isFocused = (at: Locator): Promise<boolean> => at.evaluate((each) => each.matches(':focus'));

/** Whether something stands before what has the focus, in the order of the page as it is composed. */
const isBehind = (at: Locator): Promise<boolean> =>
  at.evaluate((target) => {
    let here = document.activeElement;
    while (here?.shadowRoot?.activeElement) here = here.shadowRoot.activeElement;
    const ordered: Element[] = [];
    const walk = (node: Element): void => {
      ordered.push(node);
      const inner = node instanceof HTMLSlotElement ? node.assignedElements() : (node.shadowRoot ?? node).children;
      for (const child of inner) walk(child);
    };
    walk(document.body);
    return here !== null && here !== document.body && ordered.indexOf(target) < ordered.indexOf(here);
  });

/** A hand that has the keys alone, and notes how far each thing was. */
function keys(info: TestInfo): Hand {
  const goTo = async (at: Locator): Promise<void> => {
    await expect(at).toBeEnabled();
    const { keyboard } = at.page();
    const key = (await isBehind(at)) ? 'Shift+Tab' : 'Tab';
    const words = await named(at);
    let presses = 0;
    while (!(await isFocused(at))) {
      expect(presses, `presses of ${key} to ‘${words}’`).toBeLessThan(MOST_TABS);
      await keyboard.press(key);
      presses++;
    }
    info.annotations.push({ type: 'presses of Tab', description: `${presses} to ‘${words}’` });
  };
  return {
    press: async (at) => {
      await goTo(at);
      await at.page().keyboard.press('Enter');
    },
    type: async (at, text) => {
      await goTo(at);
      const { keyboard } = at.page();
      await keyboard.press('ControlOrMeta+a');
      await keyboard.type(text);
      await keyboard.press('Enter');
    },
    raise: async (page, dial, steps) => {
      await goTo(page.getByRole('slider', { name: dial, exact: true }).or(stepMore(page, dial)).first());
      const key = (await isFocused(stepMore(page, dial))) ? 'Enter' : 'ArrowUp';
      for (let i = 0; i < steps; i++) await page.keyboard.press(key);
    },
    look: mouse.look,
  };
}

export const ways: readonly Way[] = [
  { name: 'by mouse', use: { viewport: { width: 1440, height: 900 }, hasTouch: false }, hand: () => mouse },
  { name: 'by touch', use: { viewport: { width: 360, height: 640 }, hasTouch: true }, hand: () => touch },
  { name: 'by keyboard alone', use: { viewport: { width: 1440, height: 900 }, hasTouch: false }, hand: keys },
];
