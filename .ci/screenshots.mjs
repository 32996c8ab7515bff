// npm run screenshots: makes the README's pictures from the running product, a fresh demo shop in a folder of its own.
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright";
import sharp from "sharp";
import { hasBrowser, howToGetOne, systemBrowser } from "./browser.mjs";
import { fail, root, say } from "./lib.mjs";

const port = 3220;
const address = `http://localhost:${port}`;
const folder = path.join(root, "public", "readme");

if (!(await hasBrowser())) fail(howToGetOne);
mkdirSync(folder, { recursive: true });
const data = mkdtempSync(path.join(os.tmpdir(), "pairwright-pictures-"));
const server = spawn(process.execPath, [path.join(root, ".ci", "start.mjs")], {
  cwd: root,
  env: { ...process.env, PORT: String(port), HOST: "127.0.0.1", PAIRWRIGHT_DATA: data, DATABASE_URL: "" },
  stdio: ["ignore", "inherit", "pipe"],
});

try {
  const signIn = await ownersSignIn();
  const executablePath = systemBrowser();
  const browser = await chromium.launch({ ...(executablePath ? { executablePath } : {}), args: ["--no-sandbox"] });
  await sheetPictures(browser);
  await queuePicture(browser, signIn);
  await browser.close();
  say(`The pictures are in ${path.relative(root, folder)}.`);
} catch (error) {
  say(error?.stack ?? error);
  process.exitCode = 1;
} finally {
  server.kill("SIGTERM");
  await new Promise((resolve) => server.once("exit", resolve));
  rmSync(data, { recursive: true, force: true });
}

/** Waits until the shop says it is running and reads the owner's sign-in from what it prints. */
function ownersSignIn() {
  return new Promise((resolve, reject) => {
    let said = "";
    server.stderr.on("data", (chunk) => {
      said += chunk;
      const owner = /owner\s+(\S+@\S+)\s+(\S+)/.exec(said);
      if (owner && said.includes("Stop with Ctrl-C")) resolve({ email: owner[1], password: owner[2] });
    });
    server.once("exit", () => reject(new Error(`the shop did not start:\n${said}`)));
  });
}

async function sheetPictures(browser) {
  const page = await openPage(browser, { width: 1440, height: 1000 }, "light");
  await page.goto(`${address}/sheet`);
  await page.getByRole("button", { name: "Start a new sheet" }).click();
  await page.waitForURL(/\/sheet\/[\w-]{43}$/);
  await page.getByLabel("Height, centimetres").fill("182");
  await page.getByLabel("Weight without gear").fill("82");
  await page.getByRole("radio", { name: "Confident" }).check();
  await page.getByLabel("Share of your days off the groomed runs, in %").fill("40");
  await page.locator("#graphic > summary").click();
  await page.getByRole("radio", { name: "Autumn larch" }).check();
  await page.locator("#graphic > summary").click();
  await page.getByText("Saved", { exact: true }).waitFor();
  await page.waitForTimeout(2500);
  await page.evaluate(() => window.scrollTo(0, 0));
  await save(await page.screenshot(), "sheet-1440.png", 1200);
  const phone = await openPage(browser, { width: 390, height: 844 }, "dark");
  await phone.goto(page.url());
  await phone.waitForTimeout(1500);
  await phone.getByRole("heading", { name: "Your ski, station by station" }).scrollIntoViewIfNeeded();
  await save(await phone.screenshot(), "sheet-390.png", 390);
}

async function queuePicture(browser, { email, password }) {
  const page = await openPage(browser, { width: 1440, height: 1000 }, "light");
  await page.goto(`${address}/shop/sign-in`);
  await page.getByLabel(/e-?mail/i).fill(email);
  await page.getByLabel(/password/i).fill(password);
  await page.getByRole("button", { name: /sign in/i }).click();
  await page.waitForURL(`${address}/shop`);
  await page.goto(`${address}/shop/queue`);
  await save(await page.screenshot(), "queue-1440.png", 1200);
}

async function openPage(browser, viewport, colorScheme) {
  const context = await browser.newContext({ viewport, colorScheme });
  return context.newPage();
}

async function save(picture, name, width) {
  await sharp(picture)
    .resize({ width, withoutEnlargement: true })
    .png({ palette: true, effort: 9 })
    .toFile(path.join(folder, name));
}
