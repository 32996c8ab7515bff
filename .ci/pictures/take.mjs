// The README's pictures, taken from the running product: the demo as it is at one instant, seen in a browser whose clock
// stands there too, so that they are the same on every day.
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright";
import sharp from "sharp";
import { systemBrowser } from "../browser.mjs";
import { openShop, visitor } from "../record/shop.mjs";

/** Late in a morning of the shop, so that the line of the hour stands clear of the words. */
const instant = "2026-11-25T18:00:00.000Z";
const screen = { width: 1440, height: 1000 };
const phone = { width: 390, height: 844 };
/** The README's column is narrower than a screen. */
const widthPx = 1200;

/** Each picture: its file, and what a person does to see it. */
const pictures = [
  { name: "sheet-1440.png", show: showSheet },
  { name: "core-1440.png", show: showCore, colorScheme: "dark" },
  { name: "arrival-390.png", show: showArrival, screen: phone },
  { name: "bar-390.png", show: showBar, screen: phone },
  { name: "queue-1440.png", show: showQueue },
];

/**
 * Takes every picture. The pages must be built.
 * @param folder where they go
 * @param port of the shop that is opened for them
 * @returns {Promise<readonly string[]>} the files' names
 */
export async function takePictures(folder, port) {
  const data = mkdtempSync(path.join(os.tmpdir(), "pairwright-pictures-"));
  mkdirSync(folder, { recursive: true });
  try {
    const shop = await openShop({ data, port, instant, series: "pictures" });
    try {
      await withBrowser(async (browser) => {
        for (const { name, show, ...seen } of pictures) {
          const page = await pageAtInstant(browser, seen);
          await show(page, shop.address, ownerIn(data));
          await writePicture(await still(page), path.join(folder, name));
          await page.context().close();
        }
      });
    } finally {
      await shop.stop();
    }
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
  return pictures.map(({ name }) => name);
}

async function withBrowser(work) {
  const executablePath = systemBrowser();
  const browser = await chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ["--no-sandbox", "--disable-gpu", "--force-color-profile=srgb", "--font-render-hinting=none"],
  });
  try {
    await work(browser);
  } finally {
    await browser.close();
  }
}

async function pageAtInstant(browser, seen) {
  const context = await browser.newContext({
    viewport: seen.screen ?? screen,
    colorScheme: seen.colorScheme ?? "light",
    reducedMotion: "reduce",
    locale: "en-US",
    timezoneId: "America/Denver",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.clock.setFixedTime(instant);
  return page;
}

function ownerIn(data) {
  const all = JSON.parse(readFileSync(path.join(data, "demo-sign-ins.json"), "utf8"));
  return all.find(({ role }) => role === "owner");
}

/** A new sheet with the three answers that a recommendation needs. */
async function answer(page, address) {
  await page.goto(`${address}/sheet`);
  await page.getByRole("button", { name: "Start a new sheet" }).click();
  await page.waitForURL(/\/sheet\/[\w-]{43}$/);
  await page.getByLabel("Height, centimetres").fill("182");
  await page.getByLabel("Weight without gear").fill("82");
  await page.getByRole("radio", { name: "Confident" }).check();
}

async function showSheet(page, address) {
  await answer(page, address);
  await page.getByLabel("Share of your days off the groomed runs, in %").fill("40");
  await page.locator("#graphic > summary").click();
  await page.getByRole("radio", { name: "Autumn larch" }).check();
  await page.locator("#graphic > summary").click();
  await settled(page);
  await page.evaluate(() => window.scrollTo(0, 0));
}

/** A core of one's own on the bench, with the strips beside the middle taken up. */
async function showCore(page, address) {
  await answer(page, address);
  await page.locator("#you > summary").click();
  await page.locator("#core > summary").click();
  await page.getByRole("radio", { name: /A core of your own/ }).check();
  await page
    .getByRole("button", { name: /^Beside it/ })
    .first()
    .click();
  await page.getByRole("radio", { name: /^Yellow birch/ }).check();
  await settled(page);
  await page.locator("#core figure").evaluate((figure) => figure.scrollIntoView());
}

/** What the third answer earns on a phone. */
async function showArrival(page, address) {
  await answer(page, address);
  await page.getByRole("dialog").waitFor();
  await settled(page);
}

/** The pair in the bar while a wood is chosen. */
async function showBar(page, address) {
  await showArrival(page, address);
  await page.getByRole("button", { name: "Go on with the sheet" }).click();
  await page.locator("#core > summary").click();
  await page.getByRole("radio", { name: /Poplar with much maple/ }).check();
  await settled(page);
  await page.locator("#core").evaluate((section) => section.scrollIntoView());
}

async function settled(page) {
  await page.getByText("Saved", { exact: true }).waitFor();
  // Price and date are there, and nothing is being saved or counted any more.
  await page.waitForFunction(() => {
    const told = [...document.querySelectorAll("aside output")].map((output) => output.textContent ?? "");
    return told.length === 2 && told.every((text) => /\d/.test(text));
  });
}

/**
 * The owner signs in by a plain request: what the shop's clock gives an end, a browser, whose cookies know no clock but the
 * machine's, would take for over.
 */
async function showQueue(page, address, { email, password }) {
  const owner = visitor(address);
  await owner.send("/shop/sign-in", { email: null, password: null }, { email, password });
  await page.context().addCookies(owner.cookies().map((cookie) => ({ ...cookie, url: address })));
  await page.goto(`${address}/shop/queue`);
  await page.getByRole("heading", { name: "Queue", level: 1 }).waitFor();
}

/** The page as it stands once nothing comes in any more: two looks that are the same. */
async function still(page) {
  await page.waitForLoadState("networkidle");
  await page.evaluate(() => document.fonts.ready.then(() => document.activeElement?.blur()));
  let last = await page.screenshot({ animations: "disabled", caret: "hide" });
  for (let look = 0; look < 20; look += 1) {
    await page.waitForTimeout(500);
    const next = await page.screenshot({ animations: "disabled", caret: "hide" });
    if (next.equals(last)) return next;
    last = next;
  }
  throw new Error(`${page.url()} does not come to rest`);
}

async function writePicture(picture, file) {
  await sharp(picture)
    .resize({ width: widthPx, withoutEnlargement: true })
    .png({ palette: true, effort: 9 })
    .toFile(file);
}
