/** The floor on a phone: one station, one pair, one tick at a time; undo instead of a question. */
import { expectAccessible, expectNoSidewaysScroll } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

/** 48 px, for cold hands (the look page's own bar). */
const leastTargetPx = 48;

test("a maker finds a pair at a station, makes room for it, starts it, takes it back, and loses nothing", async ({
  page,
}) => {
  await signInAs(page, "maker");
  await page.waitForURL(/\/shop\/queue$/);
  await page.getByRole("link", { name: /^9 Cut composites/ }).click();
  const ready = page.getByRole("region", { name: /^9 / }).getByRole("link", { name: /ready/ });
  const box = await ready.first().boundingBox();
  expect(box?.height ?? 0).toBeGreaterThanOrEqual(leastTargetPx);
  await ready.first().click();
  await expect(page.getByRole("heading", { name: /^Pair TY-\d{4}/ })).toBeVisible();

  const work = page.getByRole("listitem").filter({ has: page.getByRole("heading", { name: /^9 Cut composites/ }) });
  const start = work.getByRole("button", { name: "Start" });
  expect((await start.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(leastTargetPx);
  await start.click();
  // One kitting table, and the demo has a pair on it: its number is in the answer.
  const taken = /There now: (TY-\d{4})/;
  await expect(page.getByText(taken)).toBeVisible();
  const [, serial = ""] = taken.exec((await page.getByText(taken).textContent()) ?? "") ?? [];
  const here = page.url();
  await page.goto(`/shop/pair/${serial}`);
  await page
    .getByRole("listitem")
    .filter({ has: page.getByRole("heading", { name: /^9 Cut composites/ }) })
    .getByRole("button", { name: "Finish" })
    .click();
  await expect(page.getByText(/^Undo the last tick: Cut composites/)).toBeVisible();
  await page.goto(here);
  await start.click();
  await expect(work.getByRole("button", { name: "Finish" })).toBeVisible();
  await page.getByText(/^Undo the last tick: Cut composites/).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect(work.getByRole("button", { name: "Start" })).toBeVisible();
  await expect(page.getByText(/Tapped by mistake/).first()).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});

test("the code on a build sheet leads to its pair, and the paper can be printed again", async ({ page }) => {
  await signInAs(page, "maker");
  // What stands on a ski: the pair's number, the side, the check digit (Luhn over 04120 for the left: 2).
  await page.goto("/shop/pair/TY-0412-L-2");
  await expect(page.getByText("Scanned: left ski")).toBeVisible();
  const sheet = page.getByRole("link", { name: "Build sheet, A4" });
  const pdf = await page.request.get((await sheet.getAttribute("href")) ?? "");
  expect(pdf.headers()["content-type"]).toBe("application/pdf");
  await page.goto("/shop/pair/TY-0412-L-3");
  await expect(page.getByText(/Is it TY-0412-L-2\?/)).toBeVisible();
});
