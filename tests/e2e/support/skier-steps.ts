/** What a skier does on the way to a quote, in the words of the pages. */
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright/test";
import { isInSample, isWhole } from "../../support/proof";
import { expect, test } from "./test";

/** On a narrow screen the third answer raises the pair once; whoever tests other things goes on. */
const goOn = (page: Page) => page.getByRole("button", { name: "Go on with the sheet" });

/** For a test of the arrival itself. */
export async function keepArrival(page: Page): Promise<void> {
  await page.removeLocatorHandler(goOn(page));
}

/** Opens a new sheet from the start page; the browser then stands on its private address. */
export async function startSheet(page: Page): Promise<void> {
  await page.addLocatorHandler(goOn(page), (button) => button.click());
  await page.goto("/sheet");
  await page.getByRole("button", { name: "Start a new sheet" }).click();
  await page.waitForURL(/\/sheet\/[\w-]{43}$/);
  await expect(page.getByRole("heading", { name: "Your sheet" })).toBeVisible();
}

export interface Body {
  readonly cm: string;
  readonly kg: string;
  readonly ability: "Learning" | "Improving" | "Confident" | "Expert";
}

export async function answerBody(page: Page, { cm, kg, ability }: Body): Promise<void> {
  await page.getByLabel("Height, centimetres").fill(cm);
  await page.getByLabel("Weight without gear").fill(kg);
  await page.getByRole("radio", { name: ability }).check();
  if ((page.viewportSize()?.width ?? 0) >= 1024) return;
  // What comes next must not be pressed in the moment in which the pair is raised. Not every answer earns one.
  const isRaised = page.waitForFunction(() => document.querySelector("dialog[open]") !== null, null, { timeout: 3000 });
  await isRaised.catch(() => {});
  await page.evaluate(() => [...document.querySelectorAll<HTMLElement>("dialog[open] button")].at(-1)?.click());
  await expect(page.getByRole("dialog", { name: "Your pair" })).toBeHidden();
}

export async function waitForSaved(page: Page): Promise<void> {
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
}

export function section(page: Page, id: string) {
  return page.locator(`#${id}`);
}

export async function openSection(page: Page, id: string): Promise<void> {
  const details = section(page, id);
  if ((await details.getAttribute("open")) === null) await details.locator("> summary").click();
  await expect(details).toHaveAttribute("open", "");
}

/** Name and address, then the button; ends on the quote's own page. */
export async function makeQuote(page: Page, name: string): Promise<void> {
  const contact = page.getByRole("group", { name: "Where the quote goes" });
  await contact.getByLabel("Your name").fill(name);
  await contact.getByLabel("E-mail").fill("skier@fennick.example");
  await waitForSaved(page);
  await page.getByRole("button", { name: "Make my quote" }).click();
  await page.waitForURL(/\/quote\/[\w-]{43}$/);
}

/** How often each test has asked. */
const asked = new Map<string, number>();

/**
 * No violation of WCAG 2.2 A or AA that a machine can see, in this very state of the page. A third of the places that ask
 * for it are looked at; `npm run proofs -- audit` looks at all.
 */
export async function expectAccessible(page: Page): Promise<void> {
  const { testId } = test.info();
  const turn = (asked.get(testId) ?? 0) + 1;
  asked.set(testId, turn);
  if (!isWhole("audit") && !isInSample(testId, turn, 3)) return;
  const found = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"])
    .setLegacyMode(true)
    .analyze();
  const summary = found.violations.map(
    (violation) =>
      `${violation.id}: ${violation.nodes
        .map((node) => node.target.join(" "))
        .slice(0, 4)
        .join(" | ")}`,
  );
  expect(summary).toEqual([]);
}

/** As {@link expectAccessible} on light and on dark paper: the style sheet answers the device, nothing else does. */
export async function expectAccessibleInBoth(page: Page): Promise<void> {
  for (const colorScheme of ["light", "dark"] as const) {
    // Without motion a colour is there at once.
    await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    await expectAccessible(page);
  }
}

/** The page is never wider than the screen. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const { inner, scroll } = await page.evaluate(() => ({
    inner: document.documentElement.clientWidth,
    scroll: document.documentElement.scrollWidth,
  }));
  expect(scroll).toBeLessThanOrEqual(inner);
}
