/** Learning from measured pairs: a reading that cannot be right is named, and nothing is approved while it waits. */
import { expectAccessible, expectNoSidewaysScroll } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

test("the owner sees the reading that does not fit, cannot approve past it, and leaves it out with a reason", async ({
  page,
}) => {
  await signInAs(page, "owner");
  await page.goto("/shop/measured");
  await expect(page.getByRole("heading", { name: "Measured pairs" })).toBeVisible();
  const suspects = page.locator("#suspects").getByRole("listitem");
  await expect(suspects).toHaveCount(1);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  await page.getByRole("button", { name: "Approve CB-1" }).click();
  await expect(page.locator("#approve").getByRole("alert")).toBeVisible();

  // Without a reason nothing is left out, and the choice stays.
  await suspects.getByRole("button", { name: "Decide" }).click();
  await expect(suspects.getByLabel("Reason")).toHaveAttribute("aria-invalid", "true");
  await suspects.getByLabel("Reason").fill("typed with two digits swapped, the ski is gone");
  await suspects.getByRole("button", { name: "Decide" }).click();
  await expect(page.getByText("Every reading fits the others.")).toBeVisible();
  await expect(page.locator("#decisions")).toContainText("typed with two digits swapped");
});

test("the owner sees what the floor took, what was left out, and approves nothing without a reason", async ({
  page,
}) => {
  await signInAs(page, "owner");
  await page.goto("/shop/floor-times");
  await expect(page.getByRole("heading", { name: "What the floor took", level: 1 })).toBeVisible();
  const edges = page.locator("#stations").getByRole("row").filter({ hasText: "Edge bend and set" });
  expect(Number(await edges.locator('td[data-head="Visits counted"]').textContent())).toBeGreaterThan(10);
  await expect(page.locator("#left-out")).toContainText("finish forgotten");
  await expect(page.locator("#left-out")).toContainText("too short for work");
  await expectAccessible(page);
  for (const width of [390, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    await expectNoSidewaysScroll(page);
  }
  await page.getByRole("button", { name: "Approve FB-1" }).click();
  await expect(page.locator("#approve").getByLabel("Reason")).toHaveAttribute("aria-invalid", "true");
});

test("the desk sees how many promises fail together", async ({ page }) => {
  await signInAs(page, "desk");
  await page.goto("/shop/promises");
  await expect(page.locator("#together")).toContainText(/In one of ten futures \d+ % or more of them fail/);
  await expect(page.getByRole("img", { name: /^Futures by the share of promises that fail/ })).toBeVisible();
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSidewaysScroll(page);
});

test("a desk reads what pairs teach but decides nothing", async ({ page }) => {
  await signInAs(page, "desk");
  await page.goto("/shop/measured");
  await expect(page.getByText("Only the owner approves a book.")).toBeVisible();
  await expect(page.getByRole("button", { name: /Approve CB-/ })).toHaveCount(0);
});

test("the Method page shows computed against measured and the results of its checks, without scripts", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto("/method");
  await expect(page.locator("#learning")).toContainText(/measured/i);
  await expect(page.locator("#learning").getByRole("table").first()).toBeAttached();
  await page.locator("#laminate details > summary").first().click();
  await expect(page.locator("#laminate").getByText("CLT-KAW42").first()).toBeVisible();
  await context.close();
});
