import type { Locator, Page } from "playwright/test";
import { expect } from "./test";

/** What the link leads to, asked for as this page's own visitor, is a PDF. */
export async function expectPdf(page: Page, link: Locator): Promise<void> {
  const paper = await page.request.get((await link.getAttribute("href")) ?? "");
  expect(paper.headers()["content-type"]).toBe("application/pdf");
  expect((await paper.body()).subarray(0, 5).toString()).toBe("%PDF-");
}
