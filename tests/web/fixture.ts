import { test as base, expect } from '@playwright/test';

/** A page that must stay without a console error and without a request beyond its own origin. */
export const test = base.extend<{ quiet: undefined }>({
  quiet: [
    async ({ page, baseURL }, use) => {
      const errors: string[] = [];
      const foreign: string[] = [];
      page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
      page.on('pageerror', (error) => errors.push(error.message));
      page.on('request', (request) => {
        const { origin } = new URL(request.url());
        if (origin !== new URL(baseURL!).origin) foreign.push(request.url());
      });
      await use(undefined);
      expect(errors, 'console errors').toEqual([]);
      expect(foreign, 'requests beyond the origin').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
