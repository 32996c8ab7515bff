/**
 * A club orders (as tests/services/scenarios/38): one palette and one customer, a sheet and a fit for each skier, one offer
 * of which some are taken, and each name proofed by itself.
 */
import { expectPdf } from "./support/paper";
import { dayFromNow, expectFieldError, rowsOf } from "./support/shop-steps";
import { expectAccessible, expectNoSidewaysScroll, waitForSaved } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

const skiers = [
  { name: "Ada", cm: "168", kg: "62" },
  { name: "Bo", cm: "184", kg: "88" },
] as const;

test("a club of two: one palette, two fits, one offer, one ordered on the phone and one online", async ({
  page,
  browser,
}) => {
  test.setTimeout(120_000);
  await signInAs(page, "desk");
  await page.goto("/shop/clubs");
  const begin = page.getByRole("button", { name: "Begin" });
  const club = page.getByLabel("Club", { exact: true });

  // A day that is past: the field says which, and everything typed stays.
  await club.fill("Ridge Club");
  await page.getByLabel("Who orders for all").fill("Robin Alder");
  await page.getByLabel("Telephone").fill("303 555 0163");
  await page.getByLabel("Base colour, left ski").selectOption({ label: "Lake blue" });
  await page.getByLabel("Base colour, right ski").selectOption({ label: "Bone white" });
  await page.getByLabel("Graphic").selectOption({ label: "Contour lines" });
  await page.getByLabel("Each skier's name on the pair").check();
  await page.getByLabel("One delivery for all").selectOption({ label: "Fetched at the workshop" });
  const wanted = page.getByLabel("Wanted on");
  await wanted.fill(dayFromNow(-2));
  await begin.click();
  await expectFieldError(wanted, new RegExp(`${dayFromNow(-2)} is past; today is ${dayFromNow(0)}`));
  await expect(club).toHaveValue("Ridge Club");
  await expect(page.getByLabel("Each skier's name on the pair")).toBeChecked();
  await wanted.fill(dayFromNow(200));
  await begin.click();
  await page.waitForURL(/\/shop\/clubs\/[0-9a-f-]{36}$/);
  const address = page.url();
  await expect(page.getByText("Nobody yet")).toBeVisible();
  const link = (await page.getByRole("link", { name: /\/club\// }).getAttribute("href")) ?? "";

  for (const { name, cm, kg } of skiers) {
    await page.goto(address);
    await page.getByLabel("Skier's name").fill(name);
    await page.getByRole("button", { name: "Open a sheet" }).click();
    await page.waitForURL(/\/shop\/call\/[0-9a-f-]{36}$/);
    await expect(page.getByRole("heading", { level: 1 })).toContainText(name);
    const you = page.locator("#you");
    await you.getByLabel("Height, centimetres").fill(cm);
    await you.getByLabel("Weight without gear").fill(kg);
    await you.getByRole("radio", { name: "Improving" }).check();
    await waitForSaved(page);
    await page.getByRole("button", { name: "Make my quote" }).click();
    await page.waitForURL(/\/shop\/quotes\/[0-9a-f-]{36}/);
    await page.getByRole("link", { name: "Part of the club order" }).click();
    await page.waitForURL(address);
  }

  const lines = rowsOf(page, "Skiers");
  await expect(lines).toHaveCount(2);
  for (const [index, { name }] of skiers.entries()) await expect(lines.nth(index)).toContainText(name.toUpperCase());
  await expect(page.getByText(/^2 quotes are open/)).toBeVisible();
  await expect(page.getByText(/Nine times out of ten or more, all are ready by/)).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSidewaysScroll(page);
  await page.setViewportSize({ width: 1440, height: 900 });

  // Nobody ticked is told, and who said yes stays.
  const picks = page.getByRole("checkbox");
  for (const pick of await picks.all()) await pick.uncheck();
  await page.getByRole("radio", { name: "On the telephone" }).check();
  await page.getByLabel("Who says yes").fill("R. Alder");
  await page.getByRole("button", { name: "Order the ticked pairs" }).click();
  await expect(page.getByText(/tick at least one quote/).first()).toBeVisible();
  await expect(page.getByLabel("Who says yes")).toHaveValue("R. Alder");
  // The price shown was of both: Bo alone is not ordered at it, but priced, and everything said stays.
  await page.getByRole("checkbox", { name: /^Bo:/ }).check();
  await page.getByRole("button", { name: "Order the ticked pairs" }).click();
  await expect(
    page.getByText(/Nothing is ordered yet: the price and the day shown were those of other pairs/),
  ).toBeVisible();
  await expect(page.getByText("Price and day here are those of Bo.")).toBeVisible();
  await expect(page.getByRole("checkbox", { checked: true })).toHaveCount(1);
  await expect(page.getByRole("radio", { name: "On the telephone" })).toBeChecked();
  await expect(page.getByLabel("Who says yes")).toHaveValue("R. Alder");
  await expectAccessible(page);
  await page.getByRole("button", { name: "Order the ticked pairs" }).click();
  await page.waitForURL(/\/shop\/orders\/[0-9a-f-]{36}/);
  await expect(page.getByText("ridden by Bo")).toBeVisible();
  await page.getByText("Proof: none yet").click();
  await expectPdf(page, page.getByRole("link", { name: "See the proof, A4" }));
  await page.getByRole("link", { name: /Ridge Club/ }).click();
  await page.waitForURL(address);
  await expect(lines.nth(1)).toContainText("to be made");
  await expect(page.getByText("One quote is open.")).toBeVisible();
  await expect(rowsOf(page, "In the press")).toHaveCount(1);

  // The customer opens the private page, reads what is left and orders it.
  const customer = await (await browser.newContext()).newPage();
  await customer.goto(new URL(link).pathname);
  await expect(customer.getByRole("heading", { level: 1, name: "Ridge Club" })).toBeVisible();
  const theirs = rowsOf(customer, "Skiers");
  await expect(theirs.nth(0)).toContainText("open");
  await expect(theirs.nth(1)).toContainText(/ordered, TY-\d{4}/);
  await expectAccessible(customer);
  await customer.setViewportSize({ width: 390, height: 844 });
  await expectNoSidewaysScroll(customer);
  await customer.getByRole("button", { name: "Accept and order" }).click();
  await expect(customer.getByText(/Terms and price/).first()).toBeVisible();
  await expect(customer.getByRole("checkbox", { name: /^Ada:/ })).toBeChecked();
  await customer.getByRole("checkbox", { name: /I accept the terms/ }).check();
  await customer.getByRole("checkbox", { name: /right to withdraw/ }).check();
  await customer.getByRole("button", { name: "Accept and order" }).click();
  await customer.waitForURL(/\/pair\//);
  await expect(customer.getByText(/TY-\d{4}/).first()).toBeVisible();
  await page.reload();
  await expect(page.getByText("No quote is open.")).toBeVisible();
});

test("a club's customer without scripts asks what some of the pairs cost and when they are ready", async ({
  page,
  browser,
}) => {
  await signInAs(page, "desk");
  await page.goto("/shop/clubs");
  await rowsOf(page, "Clubs so far").filter({ hasText: "Lower Fennick Ski Club" }).getByRole("link").click();
  await page.getByRole("button", { name: "Make a new private link" }).click();
  const link = (await page.getByRole("link", { name: /\/club\// }).getAttribute("href")) ?? "";
  const customer = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
  await customer.goto(new URL(link).pathname);
  const picks = customer.getByRole("group", { name: "Pairs ordered now" });
  const open = await picks.getByRole("checkbox").count();
  expect(open).toBeGreaterThan(1);
  const ask = customer.getByRole("button", { name: "Price and day of the ticked" });
  const yes = customer.getByRole("button", { name: "Accept and order" });
  const total = customer.getByRole("row", { name: /^Total/ });
  const name = customer.getByLabel("Your name");
  const accepts = customer.getByRole("checkbox", { name: /I accept the terms/ });

  // One is left out: the sum of the others is what the ticks say they cost, and the day is of them.
  await name.fill("R. Umber");
  await accepts.check();
  await picks.getByRole("checkbox").first().uncheck();
  const labels = await picks.getByRole("checkbox", { checked: true }).locator("xpath=..").allTextContents();
  const sumCents = labels.reduce((sum, text) => sum + centsIn(text), 0);
  await ask.click();
  await customer.waitForURL(/\?pairs=[0-9a-f-]{36}/);
  expect(centsIn(await total.textContent())).toBe(sumCents);
  const names = labels.map((text) => text.split(":")[0] ?? "");
  const answer = customer.getByRole("status");
  await expect(answer).toBeFocused();
  await expect(answer).toContainText(new RegExp(`^${names.join(" and ")}: .* in all\\. (All ready|Ready) \\d`));
  expect(centsIn(await answer.textContent())).toBe(sumCents);
  await expect(customer.getByRole("heading", { name: `Price of the ticked: ${names.join(" and ")}` })).toBeVisible();
  await expect(picks.getByRole("checkbox", { checked: true })).toHaveCount(open - 1);
  await expect(name).toHaveValue("R. Umber");
  await expect(accepts).toBeChecked();

  // Others are ticked than were priced: refused once, with their price, and nothing typed is lost.
  await customer.getByRole("checkbox", { name: /right to withdraw/ }).check();
  await picks.getByRole("checkbox").first().check();
  await yes.click();
  await customer.waitForURL(/changed=yes/);
  await expect(customer.getByRole("alert")).toBeFocused();
  await expect(customer.getByRole("alert")).toContainText("Nothing is ordered yet");
  await expect(customer.getByRole("heading", { name: "Price of all that is open" })).toBeVisible();
  expect(centsIn(await total.textContent())).toBeGreaterThan(sumCents);
  await expect(name).toHaveValue("R. Umber");
  await expect(accepts).toBeChecked();

  // None is ticked: said at the ticks.
  for (const tick of await picks.getByRole("checkbox").all()) await tick.uncheck();
  await ask.click();
  await customer.waitForURL(/\?pairs=$/);
  await expect(picks).toHaveAccessibleDescription(/Error: Nothing is chosen: tick at least one quote/);
  await expect(picks.getByRole("checkbox", { checked: true })).toHaveCount(0);

  // An address that names somebody else's quote says that it is left out.
  const first = await picks.getByRole("checkbox").first().getAttribute("value");
  await customer.goto(`${new URL(link).pathname}?pairs=somebody-elses,${first}`);
  await expect(customer.getByText("Left out, not open here: somebody-elses.")).toBeVisible();
  await expect(picks.getByRole("checkbox", { checked: true })).toHaveCount(1);
});

/** The first amount of money in a text, "$1,727.80", in cents. */
function centsIn(text: string | null): number {
  const [, dollars = "", cents = ""] = /\$([\d,]+)\.(\d\d)/.exec(text ?? "") ?? [];
  expect(dollars, `an amount in "${text}"`).not.toBe("");
  return Number(dollars.replaceAll(",", "")) * 100 + Number(cents);
}
