import { openCourtyard, rooms } from '../tools/views.ts';
import { expect, test } from './fixture.ts';
import { hindering, screens, standIn } from './hindering.ts';

test.describe.configure({ mode: 'parallel' });
test.use({ contextOptions: { reducedMotion: 'reduce' } });

for (const screen of screens) {
  test.describe(`in ${screen.look} at ${screen.width} px`, () => {
    for (const [room, views] of Object.entries(rooms)) {
      test(`${views.length} views of ${room} hinder nobody, as far as a checker sees`, async ({ page }) => {
        test.slow();
        await standIn(page, screen);
        await openCourtyard(page);
        const found: string[] = [];
        for (const { name, show, leave } of views) {
          await show(page);
          found.push(...(await hindering(page)).map((each) => `${name}: ${each}`));
          if (leave) await leave(page);
          else await openCourtyard(page);
        }
        test
          .info()
          .annotations.push(
            { type: 'views checked for accessibility', description: `${views.length}` },
            { type: 'violations found in them', description: `${found.length}` },
          );
        expect(found).toEqual([]);
      });
    }
  });
}
