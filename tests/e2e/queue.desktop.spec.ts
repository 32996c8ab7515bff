/** The queue as the shop uses it: the board to scale, the order moved by keyboard, a second screen that follows. */
import type { Page } from "playwright/test";
import { expectAccessible, expectNoSidewaysScroll } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

const moved = "Moved by the browser test";

/** Waits until the page listens: what happens before is no news. */
async function follows(page: Page): Promise<void> {
  await expect(page.locator("[data-live=live]")).toBeVisible();
}

const serialsOf = (page: Page) =>
  page.locator("[data-pair]").evaluateAll((cells) => cells.map((cell) => cell.querySelector("a")?.textContent ?? ""));

/** Opens the preview of "one place later" for the first pair that may be moved; everything by keyboard. */
async function previewByKeyboard(page: Page): Promise<string> {
  const down = page.getByRole("link", { name: /one place later$/ }).first();
  const serial = /TY-\d+/.exec((await down.getAttribute("aria-label")) ?? "")?.[0] ?? "";
  await down.focus();
  await page.keyboard.press("Enter");
  await page.waitForURL(/move=/);
  await expect(
    page.getByRole("heading", { name: new RegExp(`^${serial} from place \\d+ to place \\d+$`) }),
  ).toBeVisible();
  return serial;
}

test("a pair is moved by keyboard with its effect shown first, a second screen follows, and the move is taken back", async ({
  page,
  browser,
}) => {
  test.setTimeout(120_000);
  await signInAs(page, "owner");
  const second = await (await browser.newContext()).newPage();
  await signInAs(second, "desk");
  await second.goto("/shop/queue/order");
  await follows(second);
  const start = await serialsOf(second);
  expect(start.length).toBeGreaterThan(3);

  // Other tests use the same queue: when it changes between the look and the move, the look is taken again.
  let serial = "";
  await expect(async () => {
    await page.goto("/shop/queue/order");
    serial = await previewByKeyboard(page);
    await expect(page.getByText("Nothing has been changed yet.")).toBeVisible();
    await expectAccessible(page);
    await page.getByRole("textbox", { name: "Reason" }).fill(moved);
    await page.getByRole("button", { name: "Move it" }).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByText(new RegExp(`${serial}.*${moved}`)).first()).toBeVisible({ timeout: 10_000 });
  }).toPass({ timeout: 60_000 });

  const entry = second.getByRole("listitem").filter({ hasText: moved }).first();
  await expect(entry).toBeVisible({ timeout: 15_000 });
  await expect.poll(async () => (await serialsOf(second)).indexOf(serial)).not.toBe(start.indexOf(serial));

  await page
    .getByRole("listitem")
    .filter({ hasText: moved })
    .first()
    .getByRole("button", { name: "Take back" })
    .click();
  await expect(entry.getByText(/^taken back by/)).toBeVisible({ timeout: 15_000 });
  await second.context().close();
});

test("what is being typed is kept when the queue changes; the page says so instead", async ({ page, browser }) => {
  test.setTimeout(120_000);
  await signInAs(page, "owner");
  await page.goto("/shop/queue/order");
  await previewByKeyboard(page);
  await follows(page);
  await page.getByRole("textbox", { name: "Reason" }).fill("half a sentence");

  const second = await (await browser.newContext()).newPage();
  await signInAs(second, "owner");
  await expect(async () => {
    await second.goto("/shop/queue/order");
    await previewByKeyboard(second);
    await second.getByRole("textbox", { name: "Reason" }).fill("something else");
    await second.getByRole("button", { name: "Move it" }).click();
    await expect(second.getByText(/something else/).first()).toBeVisible({ timeout: 10_000 });
  }).toPass({ timeout: 60_000 });
  await expect(page.getByText("The queue has changed.")).toBeVisible({ timeout: 15_000 });
  await expect(page.getByRole("textbox", { name: "Reason" })).toHaveValue("half a sentence");
  await second
    .getByRole("listitem")
    .filter({ hasText: "something else" })
    .first()
    .getByRole("button", { name: "Take back" })
    .click();
  await expect(second.getByText(/^taken back by/).first()).toBeVisible();
  await second.context().close();
});

test("a maker sees the order and moves nothing", async ({ page }) => {
  await signInAs(page, "maker");
  await page.goto("/shop/queue/order");
  await expect(page.locator("[data-pair]").first()).toBeVisible();
  await expect(page.getByRole("link", { name: /one place later$/ })).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Take back" })).toHaveCount(0);
});

/** WHATWG HTML, "Server-sent events": the type, the retry line, an id with each event, and Last-Event-ID on coming back. */
test("the stream says the revision once, with its id, and only news to who comes back", async ({ page }) => {
  await signInAs(page, "desk");
  await page.goto("/shop/queue");
  const read = (lastSeen: string | null) =>
    page.evaluate(async (last) => {
      const stop = new AbortController();
      const headers: Record<string, string> = last === null ? {} : { "Last-Event-ID": last };
      const answer = await fetch("/shop/queue/live", { headers, signal: stop.signal });
      const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
      let text = "";
      const until = Date.now() + 4000;
      while (reader && Date.now() < until && !/^data:/m.test(text)) {
        const wait = new Promise<null>((done) => setTimeout(() => done(null), until - Date.now()));
        const got = await Promise.race([reader.read(), wait]);
        if (got === null || got.done) break;
        text += got.value;
      }
      stop.abort();
      return { text, type: answer.headers.get("content-type"), status: answer.status };
    }, lastSeen);
  const first = await read(null);
  expect(first.status).toBe(200);
  expect(first.type).toMatch(/^text\/event-stream/);
  expect(first.text).toMatch(/^retry: \d+$/m);
  const [, id, data] = /^id: (\d+)\nevent: revision\ndata: (\d+)$/m.exec(first.text) ?? [];
  expect(id).toBeDefined();
  expect(data).toBe(id);
  const again = await read(id ?? "");
  const news = /^id: (\d+)$/m.exec(again.text)?.[1];
  // Nothing, unless somebody changed the queue in between.
  expect(news === undefined || Number(news) > Number(id)).toBe(true);
});

test("the stream is closed to visitors", async ({ page }) => {
  const answer = await page.request.get("/shop/queue/live");
  expect(answer.status()).toBe(401);
});

test("the board is drawn to scale and says the same in words, accessible at 1440 and 390", async ({ page }) => {
  test.setTimeout(120_000);
  await signInAs(page, "owner");
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto("/shop/queue");
  const board = page.getByRole("group", { name: "Stations by days, drawn to working hours" });
  await expect(board).toBeVisible();
  const drawn = await board.locator("svg a").count();
  expect(drawn).toBeGreaterThan(10);
  await expectAccessible(page);
  await page.getByRole("link", { name: "The board as a list" }).click();
  await expect(page.locator("table tbody tr")).toHaveCount(Math.min(50, drawn));
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("/shop/queue");
  await expect(board).toBeHidden();
  await expect(page.getByRole("navigation", { name: "Station" }).first()).toBeVisible();
  await expectAccessible(page);
  for (const view of ["press", "promises", "waiting", "floor"]) {
    await page.goto(`/shop/queue?view=${view}`);
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
  }
});
