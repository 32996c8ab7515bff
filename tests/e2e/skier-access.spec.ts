/** The skier's pages for everybody: no violation, no mouse, no script, narrow, dark. */
import {
  answerBody,
  expectAccessibleInBoth,
  expectNoSidewaysScroll,
  makeQuote,
  openSection,
  startSheet,
  waitForSaved,
} from "./support/skier-steps";
import { expect, test } from "./support/test";

const sections = ["you", "ski", "core", "reinforcement", "graphic", "price", "date"];

test("home, method and start have no accessibility violation in light or dark", async ({ page }) => {
  for (const address of ["/", "/method", "/sheet"]) {
    await page.goto(address);
    await expectAccessibleInBoth(page);
  }
});

test("the sheet has none with every section open, nor the quote, nor the pair", async ({ page }) => {
  test.setTimeout(120_000);
  await startSheet(page);
  await expectAccessibleInBoth(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  for (const id of sections) await openSection(page, id);
  await waitForSaved(page);
  await expectAccessibleInBoth(page);
  await makeQuote(page, "Ines Halloran");
  await expectAccessibleInBoth(page);
  await page.getByLabel(/I accept the terms/).check();
  await page.getByLabel(/right to withdraw$/).check();
  await page.getByRole("button", { name: "Accept and order" }).click();
  await page.waitForURL(/\/pair\//);
  await expectAccessibleInBoth(page);
});

test("nothing is wider than a screen of 320 px", { tag: "@phone" }, async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  for (const address of ["/", "/method", "/sheet"]) {
    await page.goto(address);
    await expectNoSidewaysScroll(page);
  }
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  for (const id of sections) await openSection(page, id);
  await expectNoSidewaysScroll(page);
  await makeQuote(page, "Ines Halloran");
  await expectNoSidewaysScroll(page);
});

test("the sheet is filled in with the keyboard alone", { tag: "@desktop" }, async ({ page }) => {
  await startSheet(page);
  await page.getByLabel("Height, centimetres").focus();
  await page.keyboard.type("182");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.type("82");
  await expect(page.getByLabel("Weight without gear")).toHaveValue("82");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await expect(page.getByRole("radio", { name: "Confident" })).toBeChecked();
  const next = page.getByRole("button", { name: "Next: Ski" });
  await next.focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("#ski")).toHaveAttribute("open", "");
  await expect(page.locator("#ski > summary")).toBeFocused();
});

test("a quote is read and accepted without JavaScript", { tag: "@phone" }, async ({ page, browser }) => {
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await makeQuote(page, "Ines Halloran");
  const plain = await browser.newContext({ javaScriptEnabled: false });
  const quiet = await plain.newPage();
  await quiet.goto(page.url());
  await expect(quiet.getByRole("heading", { name: /Quote Q-/ })).toBeVisible();
  await expect(quiet.getByText(/by the first day, .* by the last|(of ten|of 20|nearly all) by then/)).toBeVisible();
  // Unticked: refused in words, the name still there.
  await quiet.getByRole("button", { name: "Accept and order" }).click();
  await expect(quiet.getByText(/please tick/).first()).toBeVisible();
  await expect(quiet.locator("#accept-name")).toHaveValue("Ines Halloran");
  await quiet.getByLabel(/I accept the terms/).check();
  await quiet.getByLabel(/right to withdraw$/).check();
  await quiet.getByRole("button", { name: "Accept and order" }).click();
  await expect(quiet.getByRole("heading", { name: /Your pair TY-/ })).toBeVisible();
  await plain.close();
});
