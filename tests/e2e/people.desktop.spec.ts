/** An owner's page about people, and a sign-in by short code on a device of the floor, without a mouse. */
import type { Page } from "playwright/test";
import { expectAccessible } from "./support/skier-steps";
import { demoSignIn, expect, test } from "./support/test";

/** Of this test's own: another sign-in of the owner goes on being used by other tests. */
async function enter(page: Page): Promise<void> {
  const { email, password } = demoSignIn("owner");
  await page.goto("/shop/people");
  await page.getByLabel(/e-?mail/i).fill(email);
  await page.getByLabel(/password/i).fill(password);
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/shop\/people$/);
}

test("an owner enrols a device, and a maker works on it by short code", async ({ page, allowConsole }) => {
  // Makers are told that what is not theirs is not there.
  allowConsole(/404/);
  await enter(page);
  await expectAccessible(page);
  await page.getByLabel("What it is called here").focus();
  await page.keyboard.type("Tablet at the press");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Give back: Tablet at the press" })).toBeVisible();

  const maker = page.getByRole("link", { name: "Mo Tarrant" });
  await maker.focus();
  await page.keyboard.press("Enter");
  await page.getByLabel("Short code", { exact: true }).focus();
  await page.keyboard.type("480917");
  await page.keyboard.press("Enter");
  await expect(page.getByText("The code counts now.")).toBeVisible();

  await page.getByRole("button", { name: "Sign out" }).press("Enter");
  await page.waitForURL(/sign-in/);
  await expectAccessible(page);
  await page.getByLabel("Name").selectOption({ label: "Mo Tarrant" });
  await page.getByLabel("Short code").focus();
  await page.keyboard.type("480917");
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/shop\/queue/);
  await page.goto("/shop/people");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("There is nothing here");
});

test("what was typed comes back after the sign-in had ended", async ({ page }) => {
  await enter(page);
  await page.locator("#new-name").fill("Ada Fell");
  await page.locator("#new-email").fill("ada@moor.example");
  await page.locator("#new-password").fill("kettle gravel moth");
  await page.waitForTimeout(500);
  // Somebody ends this sign-in: here the browser loses it.
  await page.context().clearCookies({ name: "pairwright-session" });
  await page.getByRole("button", { name: "Take on" }).click();
  await page.waitForURL(/sign-in\?back=%2Fshop%2Fpeople$/);
  const { email, password } = demoSignIn("owner");
  await page.getByLabel(/e-?mail/i).fill(email);
  await page.getByLabel(/password/i).fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(/\/shop\/people$/);
  await expect(page.getByText("What you had typed is back in its fields")).toBeVisible();
  await expect(page.locator("#new-name")).toHaveValue("Ada Fell");
  await expect(page.locator("#new-password")).toHaveValue("");
});
