import { defineConfig, devices } from "playwright/test";
import { systemBrowser } from "./.ci/browser.mjs";

const port = Number(process.env.E2E_PORT ?? 3210);
const browser = systemBrowser();

/** Names: `x.spec.ts` runs on both screens, `x.desktop.spec.ts` and `x.phone.spec.ts` on one; a test tagged `@desktop` or `@phone` too. */
export default defineConfig({
  testDir: "tests/e2e",
  outputDir: "tests/e2e/results",
  timeout: 60_000,
  expect: { timeout: 10_000 },
  fullyParallel: false,
  // Two cores: a second worker made the run slower.
  workers: 1,
  retries: 0,
  forbidOnly: process.env.CI !== undefined,
  reporter: [["list"], ["json", { outputFile: ".cache/results/browser.json" }]],
  use: {
    baseURL: `http://localhost:${port}`,
    // Far from the shop's zone, so that a page that shows the visitor's clock instead of the shop's is caught.
    timezoneId: "Asia/Kathmandu",
    locale: "en-US",
    screenshot: "only-on-failure",
    trace: "retain-on-failure",
    launchOptions: {
      ...(browser === undefined ? {} : { executablePath: browser }),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
      ],
    },
  },
  projects: [
    {
      name: "desktop",
      testIgnore: "**/*.phone.spec.ts",
      grepInvert: /@phone/,
      use: { ...devices["Desktop Chrome"], viewport: { width: 1440, height: 900 } },
    },
    {
      name: "phone",
      testIgnore: "**/*.desktop.spec.ts",
      grepInvert: /@desktop/,
      use: { ...devices["Desktop Chrome"], viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
    },
  ],
  webServer: {
    command: "node .ci/e2e-server.mjs",
    url: `http://127.0.0.1:${port}/health`,
    env: { PORT: String(port) },
    timeout: 240_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: "SIGTERM", timeout: 12_000 },
    stdout: "ignore",
    stderr: "pipe",
  },
});
