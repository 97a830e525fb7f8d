import { defineConfig } from '@playwright/test';
import { findBrowser } from './tests/screens/find-browser';

const { executablePath, env } = findBrowser();

/** Browser tests: what a maker does, on a phone and on a desk. Each file starts its own server (tests/screens/workshop.ts). */
export default defineConfig({
  testDir: 'tests/screens',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results',
  workers: 1,
  fullyParallel: false,
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  timeout: 90_000,
  expect: { timeout: 10_000 },
  reporter: [['list']],
  use: {
    launchOptions: {
      executablePath,
      env,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--disable-dev-shm-usage',
      ],
    },
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
  },
});
