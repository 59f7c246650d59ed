/** What every view is held to: in every look, on a phone, a tablet and a desk, it hinders nobody as far as a checker sees. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { type Look, looks } from '../../web/state/look.ts';
import { lookIn, SIZES } from '../tools/views.ts';
import { expect } from './fixture.ts';
import { sideways } from './pageReads.ts';

/** WCAG 2.2 at its levels A and AA, and the checker's own best practices. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** px: a press is as tall as a thumb (WCAG 2.2, target size enhanced), and no narrower than its level AA allows. */
const [TALL, WIDE] = [44, 24];

export interface Screen {
  readonly look: Look;
  readonly width: number;
  readonly height: number;
}

export const screens: readonly Screen[] = looks.flatMap((look) =>
  SIZES.map(([width, height]) => ({ look, width, height })),
);

/** Every page opened from now on stands in a look, in a window of a size. */
export async function standIn(page: Page, { look, width, height }: Screen): Promise<void> {
  await lookIn(page, look);
  await page.setViewportSize({ width, height });
}

/** What the checker holds against the page as it stands, one line a place. The page has no frames for it to look into. */
export async function hindering(page: Page): Promise<string[]> {
  const checker = new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .withTags(TAGS)
    .setLegacyMode();
  const { violations, passes } = await checker.analyze();
  expect(passes.length, 'rules that found something to hold').toBeGreaterThan(20);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, html, failureSummary }) => `${id} at ${target.flat().join(' ')}, ${html}: ${failureSummary}`),
  );
}

/** What a thumb misses among the presses and fields of some elements. */
async function missed(page: Page, within: string): Promise<string[]> {
  const presses = page
    .locator(within)
    .locator('button, input, summary, select, [role=slider]')
    .filter({ visible: true });
  const sizes = await presses.evaluateAll((all) =>
    all.map((each) => {
      const { width, height } = each.getBoundingClientRect();
      return { width, height, html: each.outerHTML.slice(0, 80) };
    }),
  );
  expect(sizes.length, `presses in ${within}`).toBeGreaterThan(0);
  return sizes.filter(({ width, height }) => height < TALL || width < WIDE).map(({ html }) => html);
}

/** The checker finds nothing, a thumb finds every press within the elements named, and nothing scrolls sideways. */
export async function hindersNobody(page: Page, within?: string): Promise<void> {
  expect(await hindering(page)).toEqual([]);
  if (within !== undefined) expect(await missed(page, within)).toEqual([]);
  expect(await sideways(page)).toEqual([]);
}
