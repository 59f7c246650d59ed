import { expect, test } from './fixture.ts';
import { commandAnswers, siteNames } from './sites.ts';

const words = { pass: 'holds', tight: 'tight', fail: 'fails', told: 'told' };

test('there are demo sites, the courtyard among them', () => {
  expect(siteNames).toContain('courtyard');
});

for (const name of siteNames) {
  test(`${name} shows the verdicts that the command gives`, async ({ page }) => {
    const { title, checks } = commandAnswers(name);
    await page.goto(`./#${name}`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
    const first = page.getByRole('region', { name: 'The answer' });
    const whole = page.getByRole('region', { name: 'The whole answer' });
    await expect(whole.locator('.says')).toHaveText(checks[0]!.says);
    await expect(first.locator('.verdict').first()).toHaveText(words[checks[0]!.verdict], { ignoreCase: true });

    const others = page.getByRole('region', { name: 'Other checks' }).locator('.check');
    await expect(others).toHaveCount(checks.length - 1);
    for (const check of checks.slice(1)) {
      const shown = others.filter({ has: page.getByText(check.name, { exact: true }) });
      await expect(shown.locator('.verdict').first()).toHaveText(words[check.verdict]);
      await expect(shown).toContainText(check.says);
      await expect(shown).toContainText(check.mend);
    }
  });
}
