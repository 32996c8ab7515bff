/** What somebody typed is there: before the scripts, without them, and beside another device. */
import { answerBody, expectAccessible, openSection, section, startSheet, waitForSaved } from "./support/skier-steps";
import { expect, test } from "./support/test";

test("what is typed before the scripts arrive is kept, and saved", { tag: "@phone" }, async ({ page }) => {
  await startSheet(page);
  let arrive = () => {};
  const arrived = new Promise<void>((resolve) => {
    arrive = resolve;
  });
  await page.route(/\/_next\/static\/.*\.js/, async (route) => {
    await arrived;
    await route.continue();
  });
  await page.goto(page.url(), { waitUntil: "commit" });
  await page.getByLabel("Height, centimetres").fill("5'10");
  await page.getByRole("radio", { name: "Expert" }).check();
  await page.getByRole("checkbox", { name: "Quiet", exact: true }).check();
  await page.getByRole("checkbox", { name: "Light", exact: true }).check();
  await page.getByText("More about your skiing").click();
  await page.getByLabel("Their flex is").selectOption("right");
  await page.getByLabel("Weight without gear").fill("12 st 3");
  await expect(page.getByText("Saved", { exact: true })).toHaveCount(0);
  arrive();
  await waitForSaved(page);
  await expect(page.getByLabel("Height, centimetres")).toHaveValue("5'10");
  await expect(page.getByLabel("Weight without gear")).toBeFocused();
  // 70 in × 2.54; 12 × 14 + 3 = 171 lb.
  await expect(page.getByText("5 ft 10 in = 177.8 cm")).toBeVisible();
  await expect(page.getByText("171 lb = 77.6 kg")).toBeVisible();

  await page.unroute(/\/_next\/static\/.*\.js/);
  await page.reload();
  await openSection(page, "you");
  await expect(section(page, "you").locator("> summary")).toContainText("5 ft 10 in, 171 lb, expert");
  await expect(page.getByRole("checkbox", { name: "Quiet", exact: true })).toBeChecked();
  await expect(page.getByRole("checkbox", { name: "Light", exact: true })).toBeChecked();
  await page.getByText("More about your skiing").click();
  await expect(page.getByLabel("Their flex is")).toHaveValue("right");
  await expect(page.getByLabel("Weight without gear")).toHaveValue("12 st 3");
});

test("the sheet is a form without scripts, up to the quote", { tag: "@phone" }, async ({ page, browser }) => {
  await startSheet(page);
  const plain = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 390, height: 844 } });
  const bare = await plain.newPage();
  await bare.goto(page.url());
  const you = section(bare, "you");
  await you.getByLabel("Height, centimetres").fill("1,82 m");
  await you.getByLabel("Weight without gear").fill("20 stone x");
  await you.getByRole("radio", { name: "Confident" }).check();
  await you.getByText("More about your skiing").click();
  await you.getByLabel("What you usually carry on your back").fill("a lot");
  await you.getByRole("button", { name: "Save this part" }).click();
  await expect(bare.getByText("Not all of it could be saved", { exact: false })).toBeVisible();
  await expect(you.getByLabel("Height, centimetres")).toHaveValue("1,82 m");
  await expect(you.getByLabel("Weight without gear")).toHaveValue("20 stone x");
  await expect(you.getByText("What is “20 stone x”?").last()).toBeVisible();
  await you.getByText("More about your skiing").click();
  await expect(you.getByLabel("What you usually carry on your back")).toHaveValue("a lot");
  await expect(you.getByText("“a lot” is not a number.").last()).toBeVisible();
  await you.getByLabel("What you usually carry on your back").fill("");
  await you.getByLabel("Weight without gear").fill("82 kg");
  await you.getByRole("button", { name: "Save this part" }).click();
  await expect(bare.getByText("Saved: You")).toBeVisible();
  await expect(section(bare, "ski").locator("> summary")).toContainText("Midlow 84, 174 cm");

  await bare.getByLabel("Your name").fill("Robin Alder");
  await bare.getByLabel("E-mail").fill("robin at alder");
  const contact = bare.locator("form", { has: bare.getByLabel("E-mail") });
  await contact.getByRole("button", { name: "Save this part" }).click();
  await expect(contact.getByText(/is not an address/).last()).toBeVisible();
  await expect(bare.getByLabel("E-mail")).toHaveValue("robin at alder");
  await bare.getByLabel("E-mail").fill("robin@alder.example");
  await contact.getByRole("button", { name: "Save this part" }).click();
  await bare.getByRole("button", { name: "Make my quote" }).click();
  await expect(bare.getByRole("heading", { name: /Quote Q-\d+/ })).toBeVisible();
  await plain.close();
});

test("two devices see each other's changes, and decide where both changed the same", { tag: "@desktop" }, async ({
  page,
  context,
  allowConsole,
}) => {
  allowConsole(/ERR_INTERNET_DISCONNECTED/);
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await waitForSaved(page);
  // A browser of its own: only then one of them is without a connection.
  const away = await context.browser()?.newContext({ viewport: page.viewportSize() });
  const other = await away?.newPage();
  if (!away || !other) throw new Error("no second browser");
  await other.goto(page.url());
  await openSection(other, "you");
  await other.getByRole("radio", { name: "Calm" }).check();
  await expect(page.getByRole("radio", { name: "Calm" })).toBeChecked();
  await page.getByRole("radio", { name: "Icy" }).check();
  await expect(other.getByRole("radio", { name: "Icy" })).toBeChecked();

  // An unfinished choice costs and shows the same on both.
  await openSection(page, "graphic");
  await page.getByRole("radio", { name: /Counterchange/ }).check();
  await waitForSaved(page);
  const price = (from: typeof page) =>
    from.getByRole("complementary", { name: "Price, date" }).locator("output").first();
  const withLetters = (await price(page).textContent()) ?? "";
  await expect(price(other)).toHaveText(withLetters);

  await away.setOffline(true);
  await openSection(other, "core");
  await section(other, "core")
    .getByRole("radio", { name: /^Poplar with ash/ })
    .check();
  await openSection(page, "core");
  await section(page, "core")
    .getByRole("radio", { name: /^Aspen with maple/ })
    .check();
  await waitForSaved(page);
  await away.setOffline(false);
  const asked = section(other, "core").locator("[data-conflict]");
  await expect(asked).toBeVisible();
  await expect(asked).not.toContainText(/[a-z]+-[a-z]+/);
  await expectAccessible(other);
  await asked.getByRole("button", { name: /Take theirs/ }).click();
  await expect(section(other, "core").getByRole("radio", { name: /^Aspen with maple/ })).toBeChecked();
  await away.close();
});
