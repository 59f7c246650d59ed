import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { looks } from '../../web/state/look.ts';
import { lookIn, openCourtyard, rooms } from '../tools/views.ts';
import { expect, test } from './fixture.ts';

/** WCAG 2.2 at its levels A and AA, and the checker's own best practices. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const sizes = [
  [360, 640],
  [820, 900],
  [1440, 900],
] as const;

/** What the checker holds against the page as it stands, one line a place. The page has no frames for it to look into. */
async function found(page: Page): Promise<string[]> {
  const checker = new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .withTags(tags)
    .setLegacyMode();
  const { violations, passes } = await checker.analyze();
  expect(passes.length, 'rules that found something to hold').toBeGreaterThan(20);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, html, failureSummary }) => `${id} at ${target.flat().join(' ')}, ${html}: ${failureSummary}`),
  );
}

test.describe.configure({ mode: 'parallel' });
test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const look of looks) {
  for (const [width, height] of sizes) {
    test.describe(`in ${look} at ${width} px`, () => {
      test.use({ viewport: { width, height } });

      for (const [room, views] of Object.entries(rooms)) {
        test(`${views.length} views of ${room} hinder nobody, as far as a checker sees`, async ({ page }) => {
          test.slow();
          await lookIn(page, look);
          await openCourtyard(page);
          const hindering: string[] = [];
          for (const { name, show, leave } of views) {
            await show(page);
            hindering.push(...(await found(page)).map((each) => `${name}: ${each}`));
            if (leave) await leave(page);
            else await openCourtyard(page);
          }
          test
            .info()
            .annotations.push(
              { type: 'views checked for accessibility', description: `${views.length}` },
              { type: 'violations found in them', description: `${hindering.length}` },
            );
          expect(hindering).toEqual([]);
        });
      }
    });
  }
}
