/**
 * Two forms by the keyboard alone: a club's customer orders, a maker tells of a base colour that is short. Wherever the focus
 * stops it is seen and stands further down than before; an error takes it, and nothing typed is lost (look page, "Habits that
 * must hold"; WCAG 2.2, 2.4.3 focus order, 2.4.7 focus visible, 2.4.11 focus not obscured, 3.3.1 error identification).
 */
import type { Locator, Page } from "playwright/test";
import { dayFromNow, rowsOf } from "./support/shop-steps";
import { expectAccessible } from "./support/skier-steps";
import { expect, signInAs, test } from "./support/test";

const mostStops = 80;
/** Neighbours on one line need not stand at the very same height. */
const lineHeightPx = 30;

/** Where the focus is, how far down, and whether a person sees it there. */
function readFocus(page: Page) {
  return page.evaluate(() => {
    const element = document.activeElement ?? document.body;
    const ring = (node: Element | null) => {
      const style = node === null ? null : getComputedStyle(node);
      return style !== null && style.outlineStyle !== "none" && Number.parseFloat(style.outlineWidth) >= 2;
    };
    const box = element.getBoundingClientRect();
    const hit = document.elementFromPoint(
      box.left + box.width / 2,
      Math.min(box.top + box.height / 2, innerHeight - 1),
    );
    return {
      what: `${element.tagName} ${element.id} ${(element.getAttribute("aria-label") ?? element.textContent ?? "").slice(0, 40)}`,
      isInMain: element.closest("main") !== null,
      top: box.top + scrollY,
      isInSight: box.bottom > 0 && box.top < innerHeight,
      isUncovered: hit !== null && (element.contains(hit) || hit.contains(element)),
      // A field of days has stops of its own inside, each with the browser's ring.
      isRinged: ring(element) || ring(element.closest("label")) || element.matches("[type=date]"),
    };
  });
}

/** Tab until the focus is there, looking at every stop on the way. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  let before = Number.NEGATIVE_INFINITY;
  for (let stop = 0; stop < mostStops; stop++) {
    await page.keyboard.press("Tab");
    const { what, isInMain, top, isInSight, isUncovered, isRinged } = await readFocus(page);
    expect({ what, isInSight, isUncovered, isRinged }).toEqual({
      what,
      isInSight: true,
      isUncovered: true,
      isRinged: true,
    });
    if (isInMain) {
      expect(top, `${what} stands above what had the focus before it`).toBeGreaterThan(before - lineHeightPx);
      before = top;
    }
    if (await target.evaluate((element) => element === document.activeElement)) return;
  }
  throw new Error(`no way to ${target} in ${mostStops} stops`);
}

/** Over the links of the frame, as the first stop of every page offers it. */
async function skipToContent(page: Page): Promise<void> {
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the content" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toBeFocused();
}

async function retype(page: Page, text: string): Promise<void> {
  await page.keyboard.press("Control+A");
  await page.keyboard.insertText(text);
}

/** Into a field of days, part by part as the browser's language has them; from its first part on. */
async function typeDay(page: Page, iso: string): Promise<void> {
  const [year = "", month = "", day = ""] = iso.split("-");
  await page.keyboard.type(`${month}${day}${year}`);
}

async function expectErrorInFocus(page: Page, error: RegExp): Promise<void> {
  const summary = page.getByRole("main").getByRole("alert");
  await expect(summary).toBeFocused();
  await expect(summary).toContainText(error);
  await expect(summary).toContainText("Everything you typed is still here.");
}

test("a club's customer leaves one out and orders, by keyboard alone", async ({ page, browser }) => {
  await signInAs(page, "desk");
  await page.goto("/shop/clubs");
  await rowsOf(page, "Clubs so far").filter({ hasText: "Lower Fennick Ski Club" }).getByRole("link").click();
  await page.getByRole("button", { name: "Make a new private link" }).click();
  const link = (await page.getByRole("link", { name: /\/club\// }).getAttribute("href")) ?? "";

  const customer = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  await customer.goto(new URL(link).pathname);
  await expect(customer.getByText(/open until the end of \d+ \w+ \d{4}/)).toBeVisible();
  await expect(customer.getByText(/or is not clear\? Call \+1 303 555 0142 and name C-\d+\./)).toBeVisible();
  const picks = customer.getByRole("group", { name: "Pairs ordered now" });
  const ticks = picks.getByRole("checkbox");
  const count = await ticks.count();
  expect(count).toBeGreaterThan(1);
  const name = customer.getByLabel("Your name");
  const accepts = customer.getByRole("checkbox", { name: /I accept the terms/ });
  const saw = customer.getByRole("checkbox", { name: /right to withdraw/ });

  // Nobody is left: the error has the focus, leads to the ticks, and all else stays as it was.
  await skipToContent(customer);
  for (const tick of await ticks.all()) {
    await tabTo(customer, tick);
    await customer.keyboard.press("Space");
  }
  await tabTo(customer, name);
  await retype(customer, "R. Umber");
  await tabTo(customer, accepts);
  await customer.keyboard.press("Space");
  await tabTo(customer, saw);
  await customer.keyboard.press("Space");
  await tabTo(customer, customer.getByRole("button", { name: "Accept and order" }));
  await customer.keyboard.press("Enter");
  await expectErrorInFocus(customer, /tick at least one quote/);
  await expect(picks).toHaveAccessibleDescription(/Error: Nothing is chosen/);
  await expectAccessible(customer);
  await expect(picks.getByRole("checkbox", { checked: true })).toHaveCount(0);
  await expect(name).toHaveValue("R. Umber");
  await expect(accepts).toBeChecked();
  await tabTo(customer, customer.getByRole("link", { name: /tick at least one quote/ }));
  await customer.keyboard.press("Enter");
  await expect(ticks.first()).toBeFocused();
  await customer.keyboard.press("Space");

  // Sent from within a field, which is a new one afterwards: the focus is not lost with it.
  await tabTo(customer, name);
  await retype(customer, " ");
  await customer.keyboard.press("Enter");
  await expectErrorInFocus(customer, /Name is missing/);
  await expect(ticks.first()).toBeChecked();
  await expect(picks.getByRole("checkbox", { checked: true })).toHaveCount(1);
  await expect(saw).toBeChecked();
  await tabTo(customer, customer.getByRole("link", { name: "Name is missing" }));
  await customer.keyboard.press("Enter");
  await expect(name).toBeFocused();
  await retype(customer, "R. Umber");
  // All were priced, so the one that is ticked is priced first, and then taken.
  await customer.keyboard.press("Enter");
  await expectErrorInFocus(customer, /Nothing is ordered yet/);
  await expect(picks.getByRole("checkbox", { checked: true })).toHaveCount(1);
  await tabTo(customer, customer.getByRole("button", { name: "Price and day of the ticked" }));
  await customer.keyboard.press("Enter");
  await expect(customer.getByRole("status")).toBeFocused();
  await expect(customer.getByRole("status")).toContainText(/in all\. Ready \d/);
  await tabTo(customer, name);
  await expect(name).toHaveValue("R. Umber");
  await customer.keyboard.press("Enter");
  await customer.waitForURL(/\/pair\//);
  await expect(customer.getByText(/TY-\d{4}/).first()).toBeVisible();
  await page.reload();
  await expect(rowsOf(page, "Skiers").filter({ hasText: "to be made" })).toHaveCount(1);
});

test("a maker tells of a base colour that is short, by keyboard alone", async ({ page }) => {
  test.setTimeout(120_000);
  await signInAs(page, "maker");
  await page.goto("/shop/queue/breakdown");
  await skipToContent(page);
  await tabTo(page, page.getByRole("link", { name: "A base colour is short" }));
  await page.keyboard.press("Enter");
  const colour = page.getByLabel("Base colour", { exact: true });
  const left = page.getByLabel("Left on the roll, in metres");
  const expected = page.getByLabel("Expected on", { exact: true });
  await expect(colour).toBeVisible();

  // All wrong: the first has the focus, each has its words, what was typed is there.
  await skipToContent(page);
  await tabTo(page, left);
  await page.keyboard.type("two");
  await page.keyboard.press("Enter");
  await expect(colour).toBeFocused();
  await expect(colour).toHaveAccessibleDescription(/Base colour: choose one/);
  await expect(left).toHaveAccessibleDescription(/a number of metres is needed, such as 12\.5, not “two”/);
  await expect(left).toHaveValue("two");
  await expect(expected).toHaveAccessibleDescription(/a day is needed/);

  // The arrows choose; a day too far off is named with its limit.
  await page.keyboard.press("ArrowDown");
  await expect(colour.locator("option:checked")).toHaveText("Graphite black");
  await tabTo(page, left);
  await retype(page, "1");
  await tabTo(page, expected);
  await typeDay(page, dayFromNow(800));
  await page.keyboard.press("Enter");
  await expect(expected).toBeFocused();
  await expect(expected).toHaveAccessibleDescription(
    `Error: Expected on: ${dayFromNow(800)} is more than 366 days after today, ${dayFromNow(0)}`,
  );
  await expect(left).toHaveValue("1");
  await expect(colour.locator("option:checked")).toHaveText("Graphite black");

  await typeDay(page, dayFromNow(30));
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Who gets what is left" })).toBeFocused();
  await expect(page.getByText(/^Graphite black: \d+\.\d\d m are to be cut, 1\.00 m are left/)).toBeVisible();

  // A note that is too long comes back whole; then it is reported, and over.
  const note = page.getByRole("textbox", { name: /^Note/ });
  await tabTo(page, note);
  await page.keyboard.insertText("x".repeat(2001));
  await tabTo(page, page.getByRole("button", { name: "Report it" }));
  await page.keyboard.press("Enter");
  await expectErrorInFocus(page, /Note: at most 2000 characters, not 2001/);
  await tabTo(page, page.getByRole("link", { name: /at most 2000 characters/ }));
  await page.keyboard.press("Enter");
  await expect(note).toBeFocused();
  await expect(note).toHaveValue("x".repeat(2001));
  await retype(page, "The roll ends sooner than it said");
  await tabTo(page, page.getByRole("button", { name: "Report it" }));
  await page.keyboard.press("Enter");
  const title = page.getByRole("heading", { level: 1, name: /^INC-\d+: A base colour is short$/ });
  await expect(title).toBeVisible({ timeout: 20_000 });
  await expect(page.getByText("The roll ends sooner than it said")).toBeVisible();
  // The form is gone with its answer, but not the focus.
  await tabTo(page, page.getByRole("button", { name: "It is over" }));
  await page.keyboard.press("Enter");
  await expect(page.getByText(/^Over since /)).toBeVisible();
  await expect(title).toBeFocused();
});
