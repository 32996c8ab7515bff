/**
 * The skier's journey, in a real browser. Numbers are those of tests/services/scenarios and of price book PB-3,
 * worked out by hand; tax 6 % at home and shipping 65 are the demo's terms.
 */
import sharp from "sharp";
import { expectPdf } from "./support/paper";
import { answerBody, makeQuote, openSection, section, startSheet, waitForSaved } from "./support/skier-steps";
import { expectStill } from "./support/still";
import { expect, test } from "./support/test";

test("a skier goes from the home page to a pair in the queue (scenario 1)", { tag: "@phone" }, async ({ page }) => {
  await page.goto("/");
  await expect(page.getByText("If you ordered an ordinary pair today")).toBeVisible();
  await page.getByRole("link", { name: "Start a sheet" }).first().click();
  await page.getByRole("button", { name: "Start a new sheet" }).click();
  await page.waitForURL(/\/sheet\/[\w-]{43}$/);

  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await page.getByLabel("Share of your days off the groomed runs, in %").fill("40");
  await page.getByRole("radio", { name: "Steady" }).check();

  // L* 173.8 on Midlow 84 (nearest 174), 175.8 on Midlow 95 (nearest 178), k 1.07: class 3, near 4.
  await openSection(page, "ski");
  const ski = section(page, "ski");
  await expect(ski.getByRole("radio", { name: /Midlow 84, 174 cm/ })).toBeChecked();
  await expect(ski.getByText("Midlow 95, 178 cm")).toBeVisible();
  await expect(ski.getByText(/class 3, .*near 4/)).toBeVisible();
  await expect(ski.getByLabel(/^Flex, in/)).toHaveValue("1.07");
  await ski.getByText("Why this one").click();
  await expect(ski.getByText("173.8 cm, on offer 174 cm")).toBeVisible();
  // 82 + 9 kg; 5 kg more: (96/84)^0.8 = 1.113, class 4; L* 173.8 + 1.0 = 174.8, still 174.
  await ski.getByText("Why this stiff?").click();
  await expect(ski.getByText(/91 kg with 9 kg of clothes/)).toBeVisible();
  await expect(ski.getByRole("row", { name: /^5 kg more 174 = 1\.11, 4/ })).toBeVisible();

  // 1,540 + carbon 90 = 1,630 ex tax; 6 % tax 97.80; shipping 65.
  await openSection(page, "reinforcement");
  await page.getByRole("checkbox", { name: /Carbon stringers/ }).check();
  const bar = page.getByRole("complementary", { name: "Price, date" });
  await expect(bar.getByText("$1,792.80")).toBeVisible();
  // The same money as beside the option, and what else the carbon did.
  await expect(bar.getByText(/% stiffness|same stiffness/)).toBeVisible();
  await expect(bar.getByText(/\+\$90 before tax/)).toBeVisible();
  await expect(
    bar.getByText(/\d+.* (January|February|March|April|May|June|July|August|September|October|November|December)/),
  ).toBeVisible();

  await waitForSaved(page);
  await expectStill(page);
  await makeQuote(page, "Ines Halloran");
  await expect(page.getByRole("heading", { name: /Quote Q-\d+/ })).toBeVisible();
  await expect(page.getByText("Carbon stringers").first()).toBeVisible();
  await expect(page.getByText("$1,792.80").first()).toBeVisible();
  await expectPdf(page, page.getByRole("link", { name: /A4/ }));
  await expectStill(page);

  await page.getByLabel(/I accept the terms/).check();
  await page.getByLabel(/right to withdraw$/).check();
  await page.getByRole("button", { name: "Accept and order" }).click();
  await page.waitForURL(/\/pair\/[\w-]{43}$/);
  await expect(page.getByRole("heading", { name: /Your pair TY-\d{4}/ })).toBeVisible();
  await expect(page.getByText(/by the first day, .* by the last|(of ten|of 20|nearly all) by then/)).toBeVisible();

  // Nobody of the shop knows the skier yet: the order has no place before the money is there.
  await expect(page.getByText("To be confirmed")).toBeVisible();
  await expect(page.getByText(/others may come first/)).toBeVisible();

  // Deposit: half of 1,630.
  await expect(page.getByText("$815.00", { exact: false })).toBeVisible();
  await page.getByRole("radio", { name: /Demonstration card/ }).check();
  await page.getByRole("button", { name: "Choose" }).click();
  await expect(page.getByText(/^Received on/)).toBeVisible();
  await expect(page.getByText("To be confirmed")).toHaveCount(0);
  await expectStill(page);

  await expectPdf(page, page.getByRole("link", { name: "Order confirmation, A4" }));
});

test("feet, inches and pounds stay as they were said (scenario 5)", { tag: "@phone" }, async ({ page }) => {
  await startSheet(page);
  await page.getByRole("group", { name: "Unit of height" }).getByText("ft in").click();
  await page.getByRole("group", { name: "Unit of weight without gear" }).getByText("lb").click();
  await page.getByLabel("Height, feet and inches").fill("5'7");
  await page.getByLabel("Weight without gear").fill("149");
  await page.getByRole("radio", { name: "Improving" }).check();
  await expect(page.getByText("= 170.2 cm")).toBeVisible();
  await expect(page.getByText("= 67.6 kg")).toBeVisible();
  // L* 160.5 → 158, class 2.
  await openSection(page, "ski");
  await expect(section(page, "ski").getByText("recommended").first()).toBeVisible();
  await section(page, "ski").getByText("All models").first().click();
  await page.getByRole("radio", { name: /Midlow 84/ }).check();
  await expect(section(page, "ski").getByText(/ask for 160\.5 cm/)).toBeVisible();
  await expect(page.getByRole("group", { name: "Length" }).getByRole("radio", { name: /158/ })).toBeChecked();
  await expect(
    section(page, "ski")
      .getByText(/^class 2/)
      .last(),
  ).toBeVisible();
  await waitForSaved(page);

  await page.reload();
  await expect(section(page, "you").locator("> summary")).toContainText("5 ft 7 in, 149 lb");
  await openSection(page, "you");
  await expect(page.getByLabel("Height, feet and inches")).toHaveValue("5'7");
  await expect(page.getByLabel("Weight without gear")).toHaveValue("149");
});

test("a weight typed in the wrong unit is put right with one tap (scenario 6)", { tag: "@phone" }, async ({ page }) => {
  await startSheet(page);
  await answerBody(page, { cm: "180", kg: "180", ability: "Confident" });
  await expect(page.getByText("Let us talk before a price").first()).toBeVisible();
  await expect(page.getByRole("button", { name: "Make my quote" })).toHaveCount(0);
  await page.getByRole("button", { name: /180 lb/ }).click();
  await expect(page.getByText("= 81.6 kg")).toBeVisible();
  await expect(page.getByLabel("Height, centimetres")).toHaveValue("180");
  await expect(page.getByRole("button", { name: "Make my quote" })).toBeVisible();
});

test("a very light skier is offered a call, not a price button (scenario 2)", { tag: "@phone" }, async ({ page }) => {
  await startSheet(page);
  await answerBody(page, { cm: "152", kg: "44", ability: "Improving" });
  await page.getByRole("radio", { name: "Calm" }).check();
  await expect(page.getByText("Let us talk before a price").first()).toBeVisible();
  await expect(page.getByRole("button", { name: "Make my quote" })).toHaveCount(0);
  const call = page.getByRole("region", { name: "We call you back" });
  await call.getByLabel("Your name").fill("Ola Brandt");
  await call.getByLabel("Telephone").fill("+1 303 555 0100");
  await waitForSaved(page);
  await call.getByRole("button", { name: "Ask for a call" }).click();
  await expect(page.getByText(/^Asked\./)).toBeVisible();
});

test("a photo is laid out so that it prints, and placed on the true outline with its resolution", {
  tag: "@desktop",
}, async ({ page }) => {
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await openSection(page, "graphic");
  await page.getByRole("radio", { name: /My own picture/ }).check();
  const picture = await sharp({ create: { width: 4000, height: 3000, channels: 3, background: "#2d6f8a" } })
    .jpeg()
    .toBuffer();
  await page.setInputFiles("#picture", { name: "lake.jpg", mimeType: "image/jpeg", buffer: picture });
  // At 150 dpi 4,000 px are 677 mm: enough for shovel and tail, chosen without being asked for.
  await expect(page.getByRole("radio", { name: /^Shovel and tail/ })).toBeChecked();
  await expect(page.getByText(/^150 dpi: sharp/)).toBeVisible();
  // The rim of a picture of one colour is that colour, up to what JPEG makes of it.
  await expect(page.getByLabel("Ground colour", { exact: true })).toHaveValue(/^#2[c-e]6[d-f]8[89ab]$/);
  // 4,000 px over 1,740 mm: 4000 / (1740 / 25.4) = 58.4 dots an inch.
  await page.getByRole("radio", { name: /^Fill/ }).check();
  await expect(page.getByText(/^58 dpi: too coarse/)).toBeVisible();
  await page.getByRole("button", { name: "Repeat it along the ski" }).first().click();
  await expect(page.getByRole("radio", { name: /^Tiles/ })).toBeChecked();
  await page.getByRole("radio", { name: /^Fill/ }).check();
  await page.getByLabel("Centre, from the tip").fill("700");
  await waitForSaved(page);
  await page.reload();
  await openSection(page, "graphic");
  await expect(page.getByLabel("Centre, from the tip")).toHaveValue("700");
});

test("a drawing that asks for another file is refused in words and the sheet is kept", { tag: "@desktop" }, async ({
  page,
  allowConsole,
}) => {
  allowConsole(/422/);
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await openSection(page, "graphic");
  await page.getByRole("radio", { name: /My own picture/ }).check();
  const svg = Buffer.from(
    '<svg xmlns="http://www.w3.org/2000/svg" width="90" height="90"><image href="/b.png"/></svg>',
  );
  await page.setInputFiles("#picture", { name: "crest.svg", mimeType: "image/svg+xml", buffer: svg });
  await expect(page.getByText(/asks for something outside itself: "\/b\.png"/)).toBeVisible();
  await expect(section(page, "you").locator("> summary")).toContainText("182 cm, 82 kg");
});

test("what is typed without a connection is sent when it comes back", { tag: "@phone" }, async ({
  page,
  context,
  allowConsole,
}) => {
  allowConsole(/ERR_INTERNET_DISCONNECTED/);
  await startSheet(page);
  await context.setOffline(true);
  await answerBody(page, { cm: "176", kg: "71", ability: "Expert" });
  await expect(page.getByText(/Not saved yet: no connection/).first()).toBeVisible();
  await context.setOffline(false);
  await waitForSaved(page);
  await page.reload();
  await expect(section(page, "you").locator("> summary")).toContainText("176 cm, 71 kg, expert");
});

test("the hairline reads every value and follows the arrow keys", { tag: "@desktop" }, async ({ page }) => {
  await startSheet(page);
  await answerBody(page, { cm: "182", kg: "82", ability: "Confident" });
  await page.getByRole("region", { name: "Your ski, station by station" }).getByText("The numbers").click();
  const slider = page.getByRole("slider", { name: "Station along the ski" }).locator("visible=true");
  await slider.focus();
  await page.keyboard.press("Home");
  await expect(slider).toHaveAttribute("aria-valuenow", "0");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("PageDown");
  await expect(slider).toHaveAttribute("aria-valuenow", "110");
  await expect(slider).toHaveAttribute("aria-valuetext", /110 mm from the tip.*mm wide.*N·m².*g\/m/);
});
