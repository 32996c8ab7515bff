/**
 * The phone sale and the way from quote to build sheet, in real browsers. Scenario numbers are those of the trade page's
 * acceptance list (part 15); the measures and prices are worked out there by hand.
 */
import type { Browser, Page } from "playwright/test";
import { expectAccessible, expectNoSidewaysScroll, waitForSaved } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

async function openCall(page: Page, phone: string): Promise<void> {
  await page.goto("/shop/call");
  await page.getByLabel("Telephone number").fill(phone);
  await page.getByRole("button", { name: "Open the sheet" }).click();
  await page.waitForURL(/\/shop\/call\/[0-9a-f-]{36}$/);
}

async function answerImperial(page: Page): Promise<void> {
  const you = page.locator("#you");
  await you.getByRole("group", { name: "Unit of height" }).getByText("ft in").click();
  await you.getByLabel("Height, feet").fill("5");
  await you.getByLabel("Height, inches").fill("7");
  await you.getByRole("group", { name: "Unit of weight without gear" }).getByText("lb").click();
  await you.getByLabel("Weight without gear").fill("149");
  await you.getByRole("radio", { name: "Improving" }).check();
  await waitForSaved(page);
}

async function quoteFor(page: Page, name: string): Promise<string> {
  const contact = page.getByRole("group", { name: "Where the quote goes" });
  await contact.getByLabel("Your name").fill(name);
  await waitForSaved(page);
  await page.getByRole("button", { name: "Make my quote" }).click();
  await page.waitForURL(/\/shop\/quotes\/[0-9a-f-]{36}/);
  return new URL(page.url()).pathname;
}

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
  await expect(other.getByLabel("Height, feet")).toHaveValue("5");
  await expect(other.getByLabel("Height, inches")).toHaveValue("7");
  await expect(other.getByLabel("Weight without gear")).toHaveValue("149");
  await expect(other.locator("#you").getByText("= 170.2 cm")).toBeVisible();
  await other.context().close();
});

test("two staff convert one quote at the same moment and there is one order (scenario 9)", async ({
  page,
  browser,
}) => {
  await signInAs(page, "desk");
  await openCall(page, "303 555 0172");
  await answerImperial(page);
  const quote = await quoteFor(page, "Tamsin Roke");
  const other = await secondDesk(browser);
  await other.goto(quote);
  await page.goto(quote);
  for (const each of [page, other]) await each.getByLabel(/Terms, price and the notice/).check();
  await Promise.all(
    [page, other].map((each) => each.getByRole("button", { name: "Make it an order", exact: true }).click()),
  );
  await Promise.all(
    [page, other].map((each) =>
      expect(
        each
          .getByRole("link", { name: /^O-\d+/ })
          .or(each.getByRole("heading", { name: /^Order O-\d+/ }))
          .first(),
      ).toBeVisible(),
    ),
  );
  await page.goto("/shop/orders?text=Tamsin");
  await expect(page.getByRole("link", { name: /^O-\d+$/ })).toHaveCount(1);

  await page.getByRole("link", { name: /^O-\d+$/ }).click();
  await page.getByRole("link", { name: /^TY-\d{4}$/ }).click();
  await expect(page.getByRole("heading", { name: /^Pair TY-\d{4}/ })).toBeVisible();
  for (const paper of ["A4", "Letter"]) {
    const link = page.getByRole("link", { name: `Build sheet, ${paper}` });
    const pdf = await page.request.get((await link.getAttribute("href")) ?? "");
    expect(pdf.headers()["content-type"]).toBe("application/pdf");
    expect((await pdf.body()).subarray(0, 5).toString()).toBe("%PDF-");
  }
  await other.context().close();
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

test("every page of the shop is accessible and fits the phone", async ({ page }) => {
  test.setTimeout(180_000);
  await signInAs(page, "owner");
  const pages = [
    "/shop",
    "/shop/call",
    "/shop/quotes",
    "/shop/orders",
    "/shop/queue",
    "/shop/queue?view=press",
    "/shop/queue?view=promises",
    "/shop/queue?view=waiting",
    "/shop/prices",
    "/shop/pair/TY-0412",
  ];
  for (const address of pages) {
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.goto(address);
    await expectAccessible(page);
    await page.setViewportSize({ width: 390, height: 844 });
    await expectNoSidewaysScroll(page);
  }
});
