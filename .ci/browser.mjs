// Which browser drives the tests: an explicit one, else the system's, else Playwright's own download if it is there.
import { existsSync } from "node:fs";
import path from "node:path";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const elsewhere = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
];

/** Path of a browser, or undefined to let Playwright use its own. */
export function systemBrowser() {
  if (process.env.PAIRWRIGHT_BROWSER) return process.env.PAIRWRIGHT_BROWSER;
  const folders = (process.env.PATH ?? "").split(path.delimiter).filter(Boolean);
  const candidates = [...names.flatMap((name) => folders.map((folder) => path.join(folder, name))), ...elsewhere];
  return candidates.find((file) => existsSync(file));
}

/** Whether there is any browser to drive. */
export async function hasBrowser() {
  if (systemBrowser()) return true;
  const { chromium } = await import("playwright");
  return existsSync(chromium.executablePath());
}

export const howToGetOne = "No browser was found. Install Chromium or Chrome, or run: npx playwright install chromium";
