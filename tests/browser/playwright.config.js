// `cargo xtask test browser` serves the page, finds Chromium, and sets what is read from the
// environment here.

import { defineConfig, devices } from '@playwright/test';

const { BASE_URL: baseURL, CHROMIUM_PATH: executablePath } = process.env;
if (!baseURL) {
  throw new Error('BASE_URL is not set: run these tests by `cargo xtask test browser`.');
}

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.js',
  outputDir: 'results/traces',
  reporter: [['list'], ['json', { outputFile: 'results/report.json' }]],
  forbidOnly: Boolean(process.env.CI),
  fullyParallel: true,
  // Two cores run two browsers without a graphics card: the longest tests take half of this.
  timeout: 60_000,
  // How long a state may be waited for. Nothing is measured by it: a machine at half the speed is
  // to find the same faults.
  expect: { timeout: 20_000 },
  workers: 2,
  // A machine that stands still for a moment may break a test that waits. It is tried once more; the
  // list names it and the tally counts it, since it may have found something all the same.
  retries: 1,
  use: {
    ...devices['Desktop Chrome'],
    baseURL,
    // Requests of a service worker cannot be refused here; the tests of it ask for it.
    serviceWorkers: 'block',
    launchOptions: {
      executablePath,
      chromiumSandbox: process.getuid?.() !== 0,
      args: [
        // Whatever else is asked of the network finds no host.
        '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-quic',
        '--disable-sync',
        '--no-first-run',
      ],
    },
  },
});
