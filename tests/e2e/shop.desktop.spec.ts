/**
 * The phone sale and the way from quote to build sheet, in real browsers. Scenario numbers are those of
 * tests/services/scenarios; the measures and prices are worked out by hand.
 */
import type { Browser, Page } from "playwright/test";
import { answerImperial, openCall, quoteFor } from "./support/shop-steps";
import { expectAccessibleInBoth, expectNoSidewaysScroll, startSheet, waitForSaved } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

async function secondDesk(browser: Browser): Promise<Page> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await signInAs(page, "owner");
  return page;
}

test("a dropped call resumes on another desk with nothing lost, in the units that were typed (scenarios 5, 7, 8)", async ({
  page,
  browser,
}) => {
  await signInAs(page, "desk");
  await openCall(page, "303 555 0171");
  await answerImperial(page);
  const address = page.url();

  const other = await secondDesk(browser);
  await openCall(other, "(303) 555-0171");
  expect(other.url()).toBe(address);
  await expect(other.getByText(/Draft open by/)).toBeVisible();
  await other.getByRole("button", { name: "Take over" }).click();
  await expect(other.getByText("You have this draft.")).toBeVisible();
  await expect(other.getByLabel("Height, feet and inches")).toHaveValue("5 ft 7");
  await expect(other.getByLabel("Weight without gear")).toHaveValue("149");
  await expect(other.locator("#you").getByText("= 170.2 cm")).toBeVisible();
  // The first desk sees at once who has the pen, and only reads until it takes it back.
  await expect(page.getByText(/has taken this draft over/)).toBeVisible();
  await expect(page.getByLabel("Height, feet and inches")).toBeDisabled();
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByLabel("Height, feet and inches")).toBeEnabled();
  await expect(other.getByText(/has taken this draft over/)).toBeVisible();
  await other.context().close();
});

test("the desk sees the ski and the price that the skier would see, and sends the quote by link and PDF", async ({
  page,
  browser,
}) => {
  await signInAs(page, "desk");
  await openCall(page, "303 555 0173");
  await answerImperial(page);

  const skier = await (await browser.newContext()).newPage();
  await startSheet(skier);
  await answerImperial(skier);
  const shown = async (each: Page) => ({
    ski: await each.locator("#ski > summary").textContent(),
    price:
      (await each.getByRole("complementary", { name: "Price, date" }).locator("output").first().textContent()) ?? "",
  });
  await expect(skier.locator("#ski > summary")).toContainText("class 2");
  const atHome = await shown(skier);
  expect(await shown(page)).toEqual(atHome);

  await quoteFor(page, "Anselm Birk");
  await expect(page.getByText(atHome.price).first()).toBeVisible();
  const link = page.getByRole("link", { name: /\/quote\/[\w-]{43}$/ });
  await skier.goto(new URL((await link.getAttribute("href")) ?? "").pathname);
  await expect(skier.getByRole("heading", { name: /^Quote Q-\d+/ })).toBeVisible();
  await expect(skier.getByText(atHome.price).first()).toBeVisible();
  const pdf = await page.request.get((await page.getByRole("link", { name: "PDF, A4" }).getAttribute("href")) ?? "");
  expect((await pdf.body()).subarray(0, 5).toString()).toBe("%PDF-");
  await skier.context().close();
});

test("a call dropped after seven answers is called back and goes on at the eighth question (scenario 7)", async ({
  page,
  browser,
}) => {
  await signInAs(page, "desk");
  await openCall(page, "303 555 0174");
  await answerImperial(page);
  const you = page.locator("#you");
  await you.getByLabel("Share of your days off the groomed runs, in %").fill("40");
  for (const answer of ["Steady", "Mixed", /^Medium/]) await you.getByRole("radio", { name: answer }).check();
  await page.getByRole("group", { name: "Where the quote goes" }).getByLabel("Your name").fill("Perrin Lusk");
  await waitForSaved(page);
  await page.keyboard.press("Alt+9");
  await page.locator("#end").getByText("Call or write back", { exact: true }).click();
  const later = new Date(Date.now() + 2 * 86_400_000).toISOString().slice(0, 10);
  await page.getByLabel("Day and time, shop clock").fill(`${later}T10:00`);
  await page.getByLabel("Why", { exact: true }).fill("the line went dead");
  await page.getByRole("button", { name: "Set the call back" }).click();
  await expect(page.getByText(/^Call back set: .*10:00, 303 555 0174\. the line went dead$/)).toBeVisible();

  const other = await secondDesk(browser);
  await other.goto("/shop/call?text=Perrin");
  await other.getByRole("link", { name: "Perrin Lusk" }).click();
  await expect(other.getByText("the line went dead")).toBeVisible();
  await expect(other.getByText("What matters to them", { exact: true })).toBeVisible();
  await expect(other.locator("#you").getByRole("radio", { name: "Steady" })).toBeChecked();
  await other.goto("/shop/quotes?text=Perrin");
  await expect(other.getByText("No quote matches")).toBeVisible();
  await other.context().close();
});

test("a sheet that stops the sale gets no quote from the desk, and the desk is told why (scenario 3)", async ({
  page,
}) => {
  await signInAs(page, "desk");
  await openCall(page, "303 555 0175");
  const you = page.locator("#you");
  await you.getByLabel("Height, centimetres").fill("188");
  await you.getByLabel("Weight without gear").fill("128");
  await you.getByRole("radio", { name: "Expert" }).check();
  await page.getByRole("group", { name: "Where the quote goes" }).getByLabel("Your name").fill("Rufus Tarn");
  await waitForSaved(page);
  await expect(page.getByText("stops the sale").first()).toBeVisible();
  await expect(page.getByText("An owner has to write why the sale may go on.").first()).toBeVisible();
  await page.getByRole("button", { name: "Make my quote" }).click();
  await expect(page.getByText(/Somebody of the shop has to look at this sheet/)).toBeVisible();
  expect(page.url()).toContain("/shop/call/");
});

test("an expired quote is priced anew line by line before it can become an order (scenario 10)", async ({ page }) => {
  await signInAs(page, "desk");
  await page.goto("/shop/quotes?state=expired");
  await page
    .getByRole("link", { name: /^Q-\d+/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { name: "Price it anew" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Make it an order", exact: true })).toHaveCount(0);
  await expect(page.getByText("Only an owner may let the old price stand.")).toBeVisible();
  await page.getByRole("button", { name: "Make the new revision" }).click();
  await expect(page.getByRole("button", { name: "Make it an order", exact: true })).toBeVisible();
});

test("a maker sees no prices and no orders", async ({ page, allowConsole }) => {
  allowConsole(/404/);
  await signInAs(page, "maker");
  await page.goto("/shop/queue");
  await expect(page.getByRole("heading", { name: "Queue" })).toBeVisible();
  await expect(page.getByRole("link", { name: "Prices" })).toHaveCount(0);
  await page.goto("/shop/pair/TY-0412");
  await expect(page.getByText("$")).toHaveCount(0);
  const orders = await page.goto("/shop/orders");
  expect(orders?.status()).toBe(404);
});

const lists = [
  "/shop",
  "/shop/call",
  "/shop/search?text=alder",
  "/shop/quotes",
  "/shop/orders",
  "/shop/queue",
  "/shop/queue?view=floor",
  "/shop/queue?view=press",
  "/shop/queue?view=promises",
  "/shop/queue?view=waiting",
  "/shop/queue/order",
  "/shop/queue/breakdown?kind=ski-rebuild",
  "/shop/queue/what-if?kind=rework&factor=2",
  "/shop/promises",
  "/shop/strips",
  "/shop/notices",
  "/shop/prices",
  "/shop/floor-times",
  "/shop/measured",
  "/shop/pair/TY-0412",
];
/** A list, and the first of its links that leads to one of its kind. */
const details: readonly (readonly [string, RegExp])[] = [
  ["/shop/call", /^\/shop\/call\/[0-9a-f-]{36}$/],
  ["/shop/quotes?state=open", /^\/shop\/quotes\/[0-9a-f-]{36}$/],
  ["/shop/quotes?state=expired", /^\/shop\/quotes\/[0-9a-f-]{36}$/],
  ["/shop/orders?state=waiting", /^\/shop\/orders\/[0-9a-f-]{36}$/],
];

async function firstOf(page: Page, [list, kind]: readonly [string, RegExp]): Promise<string> {
  await page.goto(list);
  const hrefs = await page
    .getByRole("main")
    .getByRole("link")
    .evaluateAll((links) => links.map((link) => link.getAttribute("href") ?? ""));
  const found = hrefs.find((href) => kind.test(href));
  if (found === undefined) throw new Error(`${list} leads to nothing like ${kind}`);
  return found;
}

test("every page of the shop is accessible in light and in dark, and fits the phone", async ({ page }) => {
  test.setTimeout(240_000);
  await page.goto("/shop/sign-in");
  await expectAccessibleInBoth(page);
  await signInAs(page, "owner");
  const single: string[] = [];
  for (const detail of details) single.push(await firstOf(page, detail));
  const order = single.at(-1) ?? "";
  for (const address of [...lists, ...single, `${order}/edit`]) {
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.goto(address);
    await expectAccessibleInBoth(page);
    await page.setViewportSize({ width: 390, height: 844 });
    await expectNoSidewaysScroll(page);
  }
});
