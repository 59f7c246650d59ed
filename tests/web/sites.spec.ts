import { expect, test } from './fixture.ts';
import { commandAnswers, siteNames } from './sites.ts';

const words = { pass: 'holds', tight: 'tight', fail: 'fails', told: 'told' };

test('there are demo sites, the courtyard among them', () => {
  expect(siteNames).toContain('courtyard');
});

for (const name of siteNames) {
  test(`${name} shows the verdicts that the command gives`, async ({ page }) => {
    const { title, checks, events } = commandAnswers(name);
    await page.goto(`./#${name}`);
    await expect(page.getByRole('heading', { level: 2 })).toHaveText(title);
    const first = page.getByRole('region', { name: 'The answer' });
    await expect(first.locator('.verdict').first()).toHaveText(words[checks[0]!.verdict]);
    await expect(first.locator('.says')).toHaveText(checks[0]!.says);

    const others = page.getByRole('region', { name: 'Other checks' }).locator('.check');
    await expect(others).toHaveCount(checks.length - 1);
    for (const check of checks.slice(1)) {
      const shown = others.filter({ has: page.getByText(check.name, { exact: true }) });
      await expect(shown.locator('.verdict').first()).toHaveText(words[check.verdict]);
      await expect(shown).toContainText(check.says);
      await expect(shown).toContainText(check.mend);
    }
    await expect(page.getByRole('region', { name: 'Events' }).getByRole('button')).toHaveCount(
      Math.min(16, events.length),
    );
    await expect(page.getByRole('region', { name: 'Levels' }).getByRole('img', { name: /^pond: / })).toBeVisible();
  });
}
