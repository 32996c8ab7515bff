/** A question to the queue: the answer is shown as before and after, and the floor is as it was until somebody applies it. */
import type { Page } from "playwright/test";
import { dayFromNow, expectFieldError, rowsOf } from "./support/shop-steps";
import { expectAccessible, expectNoSidewaysScroll } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

const home = "/shop/queue/what-if";
const reason = "Rented from the yard across the river";

/** The figures of a row of the distribution: before, after. */
async function figures(page: Page, level: string): Promise<readonly [number, number]> {
  const cells = await rowsOf(page, "Working days until ready")
    .filter({ hasText: level })
    .locator("td")
    .allTextContents();
  return [Number(cells[0]), Number(cells[1])];
}

test("a second press is looked at without changing anything, then applied with a reason and withdrawn", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await signInAs(page, "owner");
  await page.goto(home);
  await page.getByRole("link", { name: "A second press" }).click();
  const from = page.getByLabel("From");
  await from.fill(dayFromNow(-2));
  await page.getByRole("button", { name: "Ask the queue" }).click();
  await expectFieldError(from, `Error: From: not before ${dayFromNow(0)}, not ${dayFromNow(-2)}`);
  await expect(from).toHaveValue(dayFromNow(-2));

  await from.fill(dayFromNow(4));
  await page.getByRole("button", { name: "Ask the queue" }).click();
  await expect(page.getByRole("heading", { name: "Before and after" })).toBeVisible();
  await expect(page.getByText(/^Orders rescued: \d+\. Costs \$[\d,]+ a week\.$/)).toBeVisible();
  // One press is the bottleneck: two of them make a new pair's middle day earlier, and each distribution grows with its level.
  const levels = ["10 %", "50 %", "80 %", "90 %", "95 %"];
  const all = [];
  for (const level of levels) all.push(await figures(page, level));
  for (const when of [0, 1] as const)
    expect(all.map((pair) => pair[when])).toEqual(all.map((pair) => pair[when]).sort((a, b) => a - b));
  expect(all[1]?.[1]).toBeLessThan(all[1]?.[0] ?? 0);
  // Every line of the drawing is named: five levels on both strips.
  const strips = page.getByRole("img", { name: "One more pair ordered now" });
  for (const level of [10, 50, 80, 90, 95])
    expect(await strips.getByText(String(level), { exact: true }).count()).toBeGreaterThanOrEqual(2);
  // Every promise stands in one bar before and in one after.
  const counts = await rowsOf(page, "Negative is late").locator("td").allTextContents();
  const sum = (rest: number) =>
    counts.filter((_, index) => index % 2 === rest).reduce((total, count) => total + Number(count), 0);
  expect(sum(0)).toBeGreaterThan(10);
  expect(sum(1)).toBe(sum(0));
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSidewaysScroll(page);
  await page.setViewportSize({ width: 1440, height: 900 });

  // Looked at only: neither this page nor the board knows of another press.
  await expect(page.locator("#in-force")).not.toContainText("extra press");
  await page.goto("/shop/queue");
  await expect(page.getByRole("list", { name: "Different about the floor" }).getByText("extra press")).toHaveCount(0);

  await page.goBack();
  const apply = page.locator("#apply");
  await apply.getByRole("button", { name: "Make it so" }).click();
  await expectFieldError(apply.getByLabel("Reason"), /A reason is missing/);
  await apply.getByLabel("Reason").fill(reason);
  await apply.getByRole("button", { name: "Make it so" }).click();
  const change = page.locator("#in-force").getByRole("listitem").filter({ hasText: reason });
  await expect(change).toContainText("extra press");
  await page.goto("/shop/queue");
  await expect(page.getByRole("list", { name: "Different about the floor" })).toContainText(reason);

  await page.goto(home);
  await change.getByLabel("Reason").fill("it does not fit through the door");
  await change.getByRole("button", { name: "Withdraw" }).click();
  await expect(change).toHaveCount(0);
});

test("a desk asks but does not apply", async ({ page }) => {
  await signInAs(page, "desk");
  await page.goto(`${home}?kind=closure&from=${dayFromNow(1)}&until=${dayFromNow(20)}`);
  await expect(page.getByRole("heading", { name: "Before and after" })).toBeVisible();
  // Closed days are no working days: what a closure costs a new pair shows on the calendar.
  const told = (await page.getByText(/^Before, .* of the runs are ready by /).textContent()) ?? "";
  const [before = 0, after = 0] = [...told.matchAll(/ by (\d+ \w+ \d+);.* by (\d+ \w+ \d+)\.$/g)]
    .flatMap(([, ...days]) => days)
    .map((day) => Date.parse(day));
  expect(after).toBeGreaterThan(before);
  await expect(page.getByRole("button", { name: "Make it so" })).toHaveCount(0);
});

const refused: readonly (readonly [string, string, string, RegExp])[] = [
  ["hire", "stations", "10; 11", /Stations: numbers from 1 to 14 .*not “10; 11”/],
  ["closure", "until", dayFromNow(1), new RegExp(`Until: not before ${dayFromNow(5)}, not ${dayFromNow(1)}`)],
  ["club-order", "pairs", "40", /Pairs: a whole number from 1 to 24, not 40/],
  ["rework", "factor", "twice", /Rework: a number .*not “twice”/],
  ["drop-mould", "until", "", /Until: a day is needed/],
  ["supplier-lead", "weeks", "60", /Weeks: a whole number from 1 to 26, not 60/],
];

test("a question that cannot be asked is refused at its field, and keeps what was typed", async ({ page }) => {
  await signInAs(page, "owner");
  for (const [kind, name, value, error] of refused) {
    const query = { kind, from: dayFromNow(5), station: "sidewalls", mould: "M95-178", [name]: value };
    await page.goto(`${home}?${new URLSearchParams(query)}`);
    const field = page.locator(`#form [name=${name}]`);
    await expectFieldError(field, error);
    await expect(field).toHaveValue(value);
    await expect(page.getByRole("heading", { name: "Before and after" })).toHaveCount(0);
  }
});
