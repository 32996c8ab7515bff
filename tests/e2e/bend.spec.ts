/** The ski bends under its skier: drawn by the server without scripts, dragged by keys with them. */
import {
  answerBody,
  expectAccessibleInBoth,
  openSection,
  section,
  startSheet,
  waitForSaved,
} from "./support/skier-steps";
import { expect, test } from "./support/test";

test("a skier tips the ski on edge and sees it bend", { tag: "@phone" }, async ({ page, browser }) => {
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await openSection(page, "ski");
  const part = section(page, "ski");
  const drawing = part.getByRole("img", { name: /The ski from the side on its snow line/ });
  await expect(drawing).toBeVisible();
  const turn = part
    .getByRole("row", { name: /Turn of the pressed edge/ })
    .getByRole("cell")
    .first();
  const before = await turn.textContent();
  const edge = part.getByRole("slider", { name: "Tipped on edge" });
  await edge.focus();
  for (let i = 0; i < 10; i++) await page.keyboard.press("ArrowRight");
  await expect(part.getByText(/Tipped to 50°/)).toBeVisible();
  const metres = (text: string | null) => Number.parseFloat(text ?? "");
  await expect.poll(async () => metres(await turn.textContent())).toBeLessThan(metres(before));
  await expectAccessibleInBoth(page);
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(sideways).toBeLessThanOrEqual(0);

  await waitForSaved(page);
  const still = await browser.newContext({ javaScriptEnabled: false });
  const plain = await still.newPage();
  await plain.goto(page.url());
  await plain.locator("#ski > summary").click();
  await expect(plain.getByRole("img", { name: /The ski from the side on its snow line/ })).toBeVisible();
  await expect(plain.getByText(/Tipped to 40°/)).toBeVisible();
  await still.close();
});
