/** Nothing on a page moves while it arrives: layout shift as browsers count it, at most 0.02 where 0.1 is called good. */
import type { Page } from "playwright/test";
import { expect } from "./test";

/** The page's address once more, on a phone whose faces come late, as on a slow line. */
export async function expectStill(page: Page, path: string = page.url()): Promise<void> {
  const again = await page.context().newPage();
  await again.setViewportSize({ width: 390, height: 844 });
  await again.addInitScript(() => {
    const seen = { shift: 0 };
    Object.assign(window, { seen });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) seen.shift += (entry as unknown as { value: number }).value;
    }).observe({ type: "layout-shift", buffered: true });
  });
  await again.route(/\.woff2/, async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 400));
    await route.continue();
  });
  await again.goto(path);
  await again.evaluate(() => document.fonts.ready);
  // Two frames: what the faces changed has been laid out and counted.
  await again.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
  const shift = await again.evaluate(() => (window as unknown as { seen: { shift: number } }).seen.shift);
  expect(shift, new URL(again.url()).pathname.split("/")[1]).toBeLessThanOrEqual(0.02);
  await again.close();
}
