/** What the desk does on the way from a call to an order on the floor, in the words of the pages. */
import type { Locator, Page } from "playwright/test";
import { waitForSaved } from "./skier-steps";
import { expect } from "./test";

export async function openCall(page: Page, phone: string): Promise<void> {
  await page.goto("/shop/call");
  await page.getByLabel("Telephone number").fill(phone);
  await page.getByRole("button", { name: "Open the sheet" }).click();
  await page.waitForURL(/\/shop\/call\/[0-9a-f-]{36}$/);
}

export async function answerImperial(page: Page): Promise<void> {
  const you = page.locator("#you");
  await you.getByRole("group", { name: "Unit of height" }).getByText("ft in").click();
  await you.getByLabel("Height, feet and inches").fill("5 ft 7");
  await you.getByRole("group", { name: "Unit of weight without gear" }).getByText("lb").click();
  await you.getByLabel("Weight without gear").fill("149");
  await you.getByRole("radio", { name: "Improving" }).check();
  await waitForSaved(page);
}

export async function quoteFor(page: Page, name: string): Promise<string> {
  const contact = page.getByRole("group", { name: "Where the quote goes" });
  await contact.getByLabel("Your name").fill(name);
  await waitForSaved(page);
  await page.getByRole("button", { name: "Make my quote" }).click();
  await page.waitForURL(/\/shop\/quotes\/[0-9a-f-]{36}/);
  return new URL(page.url()).pathname;
}

/** An order of the test's own whose clock runs; the page then stands on it. Returns its address. */
export async function releasedOrder(page: Page, { name, phone }: { readonly name: string; readonly phone: string }) {
  await openCall(page, phone);
  await answerImperial(page);
  await quoteFor(page, name);
  await page.getByLabel(/Terms, price and the notice/).check();
  await page.getByRole("button", { name: "Make it an order", exact: true }).click();
  await page.waitForURL(/\/shop\/orders\/[0-9a-f-]{36}/);
  await page.getByText("Final check", { exact: true }).click();
  await page.getByRole("button", { name: "Lock the specification" }).click();
  await expect(page.getByRole("button", { name: "Lock the specification" })).toHaveCount(0);
  await page.getByText("Deposit", { exact: true }).click();
  await page.getByRole("radio", { name: "at the counter" }).check();
  await page.getByLabel("Reference of the transfer or receipt").fill("receipt 88");
  await page.getByRole("button", { name: "Record the deposit" }).click();
  await expect(page.getByText(/^The clock started /)).toBeVisible();
  return new URL(page.url()).pathname;
}

/** The rows of a table, by the words of its caption. */
export const rowsOf = (page: Page, caption: string): Locator =>
  page.getByRole("table", { name: caption }).locator("tbody tr");

/** A day of the shop so many days from now, as a date field takes it. */
export const dayFromNow = (days: number): string =>
  new Intl.DateTimeFormat("sv-SE", { timeZone: "America/Denver" }).format(Date.now() + days * 86_400_000);

/** The field's own error, tied to it by aria-describedby. */
export async function expectFieldError(field: Locator, error: string | RegExp): Promise<void> {
  await expect(field).toHaveAttribute("aria-invalid", "true");
  await expect(field).toHaveAccessibleDescription(error);
}
