import { defineConfig } from '@playwright/test';

const asRoot = process.getuid?.() === 0;

/** The built page in a browser that asks nothing of the network by itself. `npm run browser` gives the two paths. */
export default defineConfig({
  testDir: 'web',
  testMatch: '*.spec.ts',
  outputDir: '../test-results',
  forbidOnly: true,
  retries: 0,
  workers: 2,
  // A busy machine is no fault of the page: what is awaited may take its time, and a test fails by what never comes.
  timeout: 90_000,
  expect: { timeout: 20_000 },
  reporter: [['list'], ['json']],
  use: {
    baseURL: process.env['PAGE_ADDRESS'],
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      executablePath: process.env['CHROMIUM_PATH'],
      args: [
        ...(asRoot ? ['--no-sandbox'] : []),
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
        '--disable-quic',
      ],
    },
  },
});
