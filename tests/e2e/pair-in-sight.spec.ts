/** The pair in sight: it arrives once, every choice shows on it, and it can be turned. */
import {
  expectNoSidewaysScroll,
  keepArrival,
  openSection,
  section,
  startSheet,
  waitForSaved,
} from "./support/skier-steps";
import { expect, test } from "./support/test";

const third = async (page: import("playwright/test").Page) => {
  await startSheet(page);
  await keepArrival(page);
  await page.getByLabel("Height, centimetres").fill("182");
  await page.getByLabel("Weight without gear").fill("82");
  await page.getByRole("radio", { name: "Confident" }).check();
};

test("on a phone the third answer raises the pair once; then it lies in the bar and is raised by a tap", {
  tag: "@phone",
}, async ({ page }) => {
  await third(page);
  const raised = page.getByRole("dialog", { name: "Your pair" });
  await expect(raised.getByRole("heading", { name: "This is the pair we would build for you" })).toBeVisible();
  await expect(raised.getByRole("img", { name: "Your pair: Midlow 84, 174 cm" })).toBeVisible();
  await expect(raised.getByText(/^Likes medium turns, at home on most snow; .* It bends as your weight/)).toBeVisible();
  await raised.getByRole("button", { name: "Go on with the sheet" }).click();
  await expect(raised).toBeHidden();

  const bar = page.getByRole("complementary", { name: "Price, date" });
  await expect(bar.getByText("Midlow 84, 174 cm")).toBeVisible();
  await expect(bar.getByText("$1,697.40")).toBeVisible();
  await openSection(page, "core");
  await section(page, "core")
    .getByRole("radio", { name: /Poplar with much maple/ })
    .check();
  await expect(bar.getByText(/stiffness, \+\d+ g a ski, /)).toBeVisible();
  await waitForSaved(page);
  await bar.getByRole("button", { name: "Show the pair: Midlow 84, 174 cm" }).click();
  await expect(raised.getByRole("button", { name: "Back to the sheet" })).toBeVisible();
  await expect(raised.getByRole("heading")).toHaveCount(0);
  await raised.getByRole("button", { name: "Back to the sheet" }).click();

  // It came once: the same sheet opened again raises nothing.
  await page.reload();
  await expect(bar.getByText("Midlow 84, 174 cm")).toBeVisible();
  await expect(raised).toBeHidden();
  for (const width of [320, 390]) {
    await page.setViewportSize({ width, height: 800 });
    await expectNoSidewaysScroll(page);
  }
  await page.evaluate(() => {
    document.documentElement.style.fontSize = "200%";
  });
  await expectNoSidewaysScroll(page);
});

test("on a wide screen the pair stands beside the sheet, stays there, and is turned in space", {
  tag: "@desktop",
}, async ({ page }) => {
  await third(page);
  const column = page.getByRole("complementary", { name: "Your pair" });
  const pair = column.getByRole("img", { name: "Your pair: Midlow 84, 174 cm" });
  await expect(pair).toBeInViewport();
  await openSection(page, "graphic");
  await section(page, "graphic").getByRole("radio", { name: "Rock strata" }).scrollIntoViewIfNeeded();
  await expect(pair).toBeInViewport();

  await column.getByRole("button", { name: "Turn it in your hands" }).click();
  // A machine without any 3-D says so in words; one that has it shows a picture that the arrow keys turn.
  const space = column.getByRole("application", { name: /^The pair in space/ });
  await expect(space.or(column.getByText(/cannot show the pair in space/))).toBeVisible();
  if (await space.isVisible()) {
    await expect(column.getByRole("button", { name: "Its base" })).toBeVisible();
    const before = await space.screenshot();
    await space.focus();
    for (let i = 0; i < 6; i++) await page.keyboard.press("ArrowRight");
    await expect.poll(async () => (await space.screenshot()).equals(before)).toBe(false);
  }
  await column.getByRole("button", { name: "Stand it up again" }).click();
  await expect(pair).toBeVisible();
});

test("a core of one's own is laid strip by strip in the drawing", { tag: "@desktop" }, async ({ page }) => {
  await third(page);
  await openSection(page, "core");
  const core = section(page, "core");
  await core.getByRole("radio", { name: /A core of your own/ }).check();
  // Seven strips a ski: the two beside the middle are one pair of twins.
  await expect(core.getByRole("button", { name: /^Beside it, under the binding's screws/ })).toHaveCount(2);
  await core.getByRole("button", { name: /^Middle/ }).focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  const lay = core.getByRole("group", { name: /^Lay here: beside it/ });
  await lay.getByRole("radio", { name: /Paulownia/ }).check();
  await expect(lay.getByText(/^Paulownia is too soft here: .* at least \d+ kg\/m³, it has 317\.$/)).toBeVisible();
  await lay.getByRole("radio", { name: /Yellow birch/ }).check();
  await expect(lay.getByText(/too soft here/)).toHaveCount(0);
  await waitForSaved(page);
});
