/**
 * Another build of the same flex. Metal costs 180 in price book PB-3, 190.80 with 6 % tax at home:
 * what is given back when it is left out.
 */
import { answerBody, expectAccessible, openSection, section, startSheet, waitForSaved } from "./support/skier-steps";
import { expect, test } from "./support/test";

test("a skier takes a lighter build of the same flex, by keyboard", { tag: "@desktop" }, async ({ page }) => {
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await openSection(page, "reinforcement");
  const metal = page.getByRole("checkbox", { name: /Metal above and below/ });
  await metal.check();
  await waitForSaved(page);

  const panel = section(page, "reinforcement");
  await panel.getByText("Same flex, other build").focus();
  await page.keyboard.press("Enter");
  const answer = panel.getByRole("status").filter({ hasText: "The cheapest build at least 150 g lighter" });
  await expect(answer).toContainText("$190.80", { timeout: 30_000 });
  const row = panel.getByRole("row", { name: /metal above and below/ });
  await expect(row.getByRole("button", { name: /On the sheet now/ })).toBeVisible();
  await expectAccessible(page);

  await panel
    .getByRole("row", { name: /glass only/ })
    .getByRole("button", { name: /Take this/ })
    .focus();
  await page.keyboard.press("Enter");
  await expect(metal).not.toBeChecked();
  await expect(page.locator(":focus")).toContainText("On the sheet now");
  await waitForSaved(page);

  await page.getByLabel("Lighter by").fill("light");
  await expect(panel.getByText(/Write the grams as a number/)).toBeVisible();
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(sideways).toBeLessThanOrEqual(0);
});
