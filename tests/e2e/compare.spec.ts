/**
 * Up to three pairs on one axis. Models and lengths are those of tests/services/scenarios/01: Midlow 84 in 182,
 * Midlow 95 in 186.
 */
import type { Page } from "playwright/test";
import { answerBody, expectAccessible, expectNoSidewaysScroll, startSheet, waitForSaved } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

async function answerScenarioOne(page: Page): Promise<void> {
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await page.getByLabel("Share of your days off the groomed runs, in %").fill("40");
  await page.getByRole("radio", { name: "Steady", exact: true }).check();
  await waitForSaved(page);
}

async function filledSheet(page: Page): Promise<string> {
  await startSheet(page);
  await answerScenarioOne(page);
  return page.url();
}

async function toCompare(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Compare this pair with others on one axis" }).click();
  await page.waitForURL(/\/compare$/);
  await expect(page.getByRole("heading", { name: "Compare", exact: true })).toBeVisible();
}

test("three pairs share one axis and one line", async ({ page }) => {
  await filledSheet(page);
  await toCompare(page);
  await expect(page.getByRole("checkbox", { name: /The sheet as it stands/ })).toBeChecked();
  await expect(page.getByRole("checkbox", { name: /Midlow 95, 178 cm/ })).toBeChecked();
  const lines = page.getByRole("list", { name: "Lines" });
  await expect(lines.getByText("The sheet: Midlow 84, 174 cm")).toBeVisible();
  await expect(lines.getByText("As an option: Midlow 95, 178 cm")).toBeVisible();

  const slider = page.getByRole("slider", { name: "Station along the skis" }).locator("visible=true");
  await slider.focus();
  await expect(slider).toHaveAttribute("aria-valuenow", "0");
  await page.keyboard.press("ArrowRight");
  await expect(slider).toHaveAttribute("aria-valuenow", "10");
  await expect(slider).toHaveAttribute("aria-valuetext", /10 mm behind the mount line: A, .*mm wide.*; B, .*; C, /);
  // At the far end the longest ski alone is left: two columns say that theirs has ended.
  await page.keyboard.press("Home");
  await expect(page.getByRole("row", { name: /EI/ }).filter({ hasText: "ended" }).first()).toBeVisible();

  const numbers = page.getByRole("group", { name: "The pairs in numbers" });
  await expect(numbers.getByRole("row", { name: /^Length, cm/ })).toContainText(/174.*178/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});

test("a fourth pair is refused in words and nothing chosen is lost", { tag: "@desktop" }, async ({ page }) => {
  await filledSheet(page);
  await toCompare(page);
  const boxes = page.getByRole("checkbox");
  for (const box of await boxes.all()) await box.check();
  const asked = await boxes.count();
  expect(asked).toBeGreaterThan(3);
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  await expect(page.getByText(`${asked} are chosen; 3 fit on one axis`)).toBeVisible();
  for (const box of await page.getByRole("checkbox").all()) await expect(box).toBeChecked();
  await expect(page.getByRole("list", { name: "Lines" }).getByRole("listitem")).toHaveCount(4);
  await expectAccessible(page);
});

test("another sheet joins by its link, and its pair can be taken", { tag: "@desktop" }, async ({ page }) => {
  const first = await filledSheet(page);
  await startSheet(page);
  await answerBody(page, { cm: "165", kg: "58", ability: "Improving" });
  await waitForSaved(page);
  await toCompare(page);

  await page.getByLabel(/Another sheet, by its private link/).fill("not a link");
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  await expect(page.getByText(/does not look like the private link/)).toBeVisible();
  await expect(page.getByLabel(/Another sheet, by its private link/)).toHaveValue("not a link");

  await page.getByLabel(/Another sheet, by its private link/).fill(`https://skis.example/sheet/${"x".repeat(43)}`);
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  await expect(page.getByText(/No sheet is behind this link/)).toBeVisible();
  await expectAccessible(page);

  await page.getByLabel(/Another sheet, by its private link/).fill(first);
  for (const box of await page.getByRole("checkbox").all()) await box.uncheck();
  await page.getByRole("checkbox", { name: /The sheet as it stands/ }).check();
  await page.getByRole("button", { name: "Compare", exact: true }).click();
  const lines = page.getByRole("list", { name: "Lines" });
  await expect(lines.getByText("The other sheet: Midlow 84, 174 cm")).toBeVisible();

  await page.getByRole("button", { name: "Take this one onto my sheet" }).click();
  await page.waitForURL(/\/sheet\/[\w-]{43}$/);
  await expect(page.locator("#ski > summary")).toContainText("Midlow 84, 174 cm");
});

test("choosing and taking work without scripts", { tag: "@phone" }, async ({ page, browser }) => {
  const sheet = await filledSheet(page);
  const plain = await browser.newContext({ javaScriptEnabled: false });
  const still = await plain.newPage();
  await still.goto(`${sheet}/compare`);
  await still.getByRole("checkbox", { name: /Midlow 84, 174 cm.*recommended/ }).check();
  await still.getByRole("button", { name: "Compare", exact: true }).click();
  await expect(still.getByText("4 are chosen; 3 fit on one axis")).toBeVisible();
  await still.getByRole("checkbox", { name: /Midlow 84, 174 cm.*recommended/ }).uncheck();
  await still.getByRole("button", { name: "Compare", exact: true }).click();
  await expect(still.getByText("4 are chosen")).toHaveCount(0);

  const taken = still.getByRole("listitem").filter({ hasText: "Midlow 95, 178 cm" });
  await taken.getByRole("button", { name: "Take this one onto my sheet" }).click();
  await still.waitForURL(sheet);
  await plain.close();
  await page.reload();
  await expect(page.locator("#ski > summary")).toContainText("Midlow 95, 178 cm");
});

test("the desk compares a caller's sheet with the same page", { tag: "@desktop" }, async ({ page }, { project }) => {
  await signInAs(page, "desk");
  await page.goto("/shop/call");
  await page.getByLabel("Telephone number").fill(project.name === "phone" ? "303 555 0177" : "303 555 0178");
  await page.getByRole("button", { name: "Open the sheet" }).click();
  await page.waitForURL(/\/shop\/call\/[\w-]+$/);
  await answerScenarioOne(page);
  await toCompare(page);
  await expect(page.getByRole("list", { name: "Lines" }).getByRole("listitem")).toHaveCount(4);
  await page.getByRole("button", { name: "Put this one on the sheet" }).first().click();
  await page.waitForURL(/\/shop\/call\/[\w-]+$/);
  await expect(page.locator("#ski > summary")).toContainText("Midlow 95, 178 cm");
});
