/** One ski is void and goes again alone; a pair without its wood gets a way out. Both are cases of tests/services/scenarios, 19 and 20. */
import { dayFromNow, expectFieldError, rowsOf } from "./support/shop-steps";
import { expectAccessible, expectNoSidewaysScroll } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

test("one ski is void: it alone goes again, the other waits where it is parked, the promise stays", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await signInAs(page, "maker");
  // A pair at its last station, so that the ski has been through the press.
  await page.goto("/shop/queue?view=promises");
  const row = rowsOf(page, "Promises").filter({ hasText: "14 QC" }).first();
  const serial = (await row.getByRole("link").textContent()) ?? "";
  const promised = (await row.locator("td[data-head=Promised]").textContent()) ?? "";
  await page.goto(`/shop/pair/${serial}`);
  const skis = page.locator("#serials");
  const left = (await skis.getByText(new RegExp(`^${serial}-L-\\d$`)).textContent()) ?? "";
  const right = (await skis.getByText(new RegExp(`^${serial}-R-\\d$`)).textContent()) ?? "";
  const operations = rowsOf(page, "Operations");
  const visits = await operations.count();

  const form = page.locator("#rework");
  await form.getByLabel("Which ski").selectOption("Left");
  await form.getByLabel("What is wrong").selectOption("Void or blister after the press");
  await form.getByLabel("Do again from station").selectOption({ value: "strips" });
  await form.getByRole("button", { name: "Show what it takes" }).click();
  const answer = form.locator("section");
  await expect(answer).toContainText(`Scrapped${left}`);
  await expect(answer).toContainText(`Waits${right}`);
  await expect(answer).toContainText(/within [\d.]+ % of the other ski's own/);
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSidewaysScroll(page);
  await page.setViewportSize({ width: 1440, height: 900 });

  const start = page.getByRole("button", { name: "Scrap it and build it again" });
  await page.getByLabel("What was found").fill("void under the heel, 4 cm");
  await start.click();
  await expectFieldError(page.getByLabel("Where the other ski is parked"), /is missing/);
  await expect(page.getByLabel("What was found")).toHaveValue("void under the heel, 4 cm");
  await expect(skis.getByText("scrapped")).toHaveCount(0);
  await page.getByLabel("Where the other ski is parked").fill("rack 3, top");
  await start.click();
  await expect(skis.getByText("scrapped")).toBeVisible();
  await expect(skis.getByText("parked: rack 3, top")).toBeVisible();
  await expect(skis.getByText(new RegExp(`^${serial}-L2-\\d$`))).toBeVisible();

  // Only stations from 2 on are gone through again, and for the left ski alone where it was done with.
  const again = operations.filter({ hasText: "left ski again" });
  expect(await again.count()).toBeGreaterThan(8);
  expect(await operations.count()).toBeGreaterThan(visits);
  await expect(operations.filter({ hasText: "right ski again" })).toHaveCount(0);
  await expect(again.filter({ hasText: /^1 Release/ })).toHaveCount(0);
  await expect(page.locator("#history")).toContainText("Ski scrapped: note void under the heel, 4 cm");
  await page.goto("/shop/queue?view=promises");
  await expect(rowsOf(page, "Promises").filter({ hasText: serial }).locator("td[data-head=Promised]")).toHaveText(
    promised,
  );
  await page.goto(`/shop/pair/${left}`);
  await expect(page.getByRole("alert").filter({ hasText: "This serial is a scrapped ski's." })).toBeVisible();
  // A second rebuild at the same time is refused, and nothing happens.
  await page.goto(`/shop/pair/${serial}?side=R&fault=edge-wrong&from=edges`);
  await expect(page.getByText(`One ski of ${serial} is being built again already.`)).toBeVisible();
  await expect(start).toHaveCount(0);
});

test("a ski cannot be done again from where it has never been", async ({ page }) => {
  await signInAs(page, "maker");
  await page.goto("/shop/queue?view=promises");
  const row = rowsOf(page, "Promises").filter({ hasText: "3 Core lay-up" }).first();
  const serial = (await row.getByRole("link").textContent()) ?? "";
  await page.goto(`/shop/pair/${serial}?side=L&fault=topsheet-nicked&from=finish`);
  await expect(page.getByText("Nothing has been done at station 13 yet")).toBeVisible();
  await expect(page.getByLabel("Do again from station")).toHaveValue("finish");
  await expect(page.getByRole("button", { name: "Scrap it and build it again" })).toHaveCount(0);
});

test("strips are short: the ways out are real, the choice is logged with its reason, and the rack agrees", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await signInAs(page, "maker");
  await page.goto("/shop/strips");
  const beech = rowsOf(page, "In the rack").filter({ hasText: "beech" });
  // Two sticks are left, and a core of beech takes four.
  await expect(beech.locator("td").first()).toHaveText("2");
  await page
    .locator("summary")
    .filter({ hasText: /^ash, bins: \d+$/ })
    .click();
  const bins = page.getByRole("table", { name: /^ash, bins/ }).locator("tbody tr");
  const inBins = (await bins.locator("td:nth-child(2)").allTextContents()).reduce((sum, free) => sum + Number(free), 0);
  await expect(rowsOf(page, "In the rack").filter({ hasText: "ash" }).locator("td").first()).toHaveText(String(inBins));
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSidewaysScroll(page);
  await page.setViewportSize({ width: 1440, height: 900 });

  // Others may be short as well, for want of stiffness: a ski that is built again takes wood too.
  const shortPairs = await page.getByRole("table", { name: "Short" }).getByRole("link").allTextContents();
  const wantsBeech = async (candidate: string) => {
    await page.goto(`/shop/strips/${candidate}`);
    await expect(page.getByRole("heading", { name: `Strips for ${candidate}` })).toBeVisible();
    return (await page.getByText("I: 2 strips where 4 are needed").count()) === 1;
  };
  let serial = "";
  for (const candidate of shortPairs) if (serial === "" && (await wantsBeech(candidate))) serial = candidate;
  await page.goto(`/shop/strips/${serial}`);
  await expect(page.getByText("I: 2 strips where 4 are needed")).toBeVisible();
  await expectAccessible(page);

  await page.getByLabel("Batch expected on").first().fill(dayFromNow(-1));
  await page.getByRole("button", { name: "Show what waiting does" }).click();
  await expectFieldError(
    page.getByLabel("Batch expected on").first(),
    `Error: ${dayFromNow(-1)} is no day from ${dayFromNow(0)} on.`,
  );
  await page.getByLabel("Batch expected on").first().fill(dayFromNow(90));
  await page.getByRole("button", { name: "Show what waiting does" }).click();
  await expect(page.getByText(/^Waiting until then: [\d.]+ working days later, its promise late\.$/)).toBeVisible();

  const options = page.locator("#options");
  const take = options.getByRole("button", { name: "Take this way" });
  await options.getByLabel("Reason").fill("the customer agreed to ash");
  await take.click();
  await expect(options.getByText("Choose a way out.").first()).toBeVisible();
  await expect(options.getByLabel("Reason")).toHaveValue("the customer agreed to ash");
  await options.getByRole("radio", { name: "Wait for a batch" }).check();
  await options.getByLabel("Batch expected on").fill("");
  await take.click();
  await expectFieldError(options.getByLabel("Batch expected on"), /A day is needed: when is the batch expected\?/);
  const ash = options.getByRole("radio", { name: /^ash instead of beech at I/ });
  await expect(
    options.getByText(/% flex as milled, or [+−-]?[\d.]+ mm of core for the same flex/).first(),
  ).toBeVisible();
  await ash.check();
  await take.click();
  await expect(page.getByRole("heading", { name: `Pair ${serial}` })).toBeVisible();
  const logged = rowsOf(page, "History").filter({ hasText: "Strips decided" });
  await expect(logged).toContainText("ash instead of beech at I, reason the customer agreed to ash");
  await expect(rowsOf(page, "Strips").filter({ hasText: "ash" })).toHaveCount(4);
  await page.goto("/shop/strips");
  await expect(page.getByRole("heading", { name: "Short", exact: true })).toBeVisible();
  await expect(page.getByRole("table", { name: "Short" }).getByRole("link", { name: serial })).toHaveCount(0);
});
