import { answerBody, makeQuote, startSheet } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

test("look", async ({ page }) => {
  test.setTimeout(240_000);
  const shots = async (name: string) => {
    for (const width of [390, 1440]) {
      for (const scheme of ["light", "dark"] as const) {
        await page.setViewportSize({ width, height: 900 });
        await page.emulateMedia({ colorScheme: scheme });
        await page.waitForTimeout(150);
        await page.screenshot({ path: `/tmp/shots/${name}-${width}-${scheme}.png`, fullPage: true });
      }
    }
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.emulateMedia({ colorScheme: "light" });
  };
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await page.getByRole("radio", { name: "Steady" }).check();
  await makeQuote(page, "Robin Alder-Heath");
  await page.getByLabel(/I accept the terms/).check();
  await page.getByLabel(/right to withdraw$/).check();
  await page.getByRole("button", { name: "Accept and order" }).click();
  await page.waitForURL(/\/pair\/[\w-]{43}$/);
  await shots("pair");
  await signInAs(page, "owner");
  await page.goto("/shop");
  await shots("desk");
  await page.goto("/shop/confirmations");
  await shots("confirmations");
  await page
    .getByRole("link", { name: /Robin Alder-Heath/ })
    .first()
    .click();
  await page.waitForURL(/\/shop\/orders\//);
  await shots("order");
  await page.goto("/shop/customers");
  await shots("customers");
  await page.getByRole("link", { name: "Robin Alder-Heath" }).first().click();
  await page.waitForURL(/\/shop\/customers\//);
  await shots("customer");
  await page.goto("/shop/retention?drafts=30&askers=60&unconfirmed=10&letters=&buyers=3650");
  await shots("retention");
  await page.goto("/shop/orders");
  await shots("orders");
  expect(1).toBe(1);
});
