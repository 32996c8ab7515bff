/**
 * The test function of every browser test: an error in the browser's console, an uncaught exception or a refused script
 * fails the test. A test that provokes one on purpose says so: `allowConsole(/404/)`.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { test as base, expect, type Page } from "playwright/test";

interface Fixtures {
  /** Names console errors this test brings about itself. */
  readonly allowConsole: (pattern: RegExp) => void;
}

export const test = base.extend<Fixtures>({
  allowConsole: [
    async ({ page }, use) => {
      const allowed: RegExp[] = [];
      const errors: string[] = [];
      page.on("console", (message) => {
        if (message.type() === "error") errors.push(`${message.text()} (${message.location().url})`);
      });
      page.on("pageerror", (error) => errors.push(`uncaught: ${error.message}`));
      await use((pattern) => allowed.push(pattern));
      expect(
        errors.filter((error) => !allowed.some((pattern) => pattern.test(error))),
        "errors in the browser's console",
      ).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };

interface SignIn {
  readonly role: "desk" | "maker" | "owner";
  readonly email: string;
  readonly password: string;
}

/** The demo shop's people, as the start prints them. */
export function demoSignIn(role: SignIn["role"]): SignIn {
  const file = path.resolve(import.meta.dirname, "../../../.cache/e2e-data/demo-sign-ins.json");
  const all = JSON.parse(readFileSync(file, "utf8")) as readonly SignIn[];
  const found = all.find((one) => one.role === role);
  if (!found) throw new Error(`the demo has nobody with the role ${role}`);
  return found;
}

type Cookie = Awaited<ReturnType<ReturnType<Page["context"]>["cookies"]>>[number];

/** One session a role: an address may sign in thirty times in a quarter of an hour, and all tests come from one. */
const sessions = new Map<SignIn["role"], { readonly cookies: readonly Cookie[]; readonly home: string }>();

/** Signs in on the page people use, the first time; then the same person comes back with the session. */
export async function signInAs(page: Page, role: SignIn["role"]): Promise<void> {
  const known = sessions.get(role);
  if (known !== undefined) {
    await page.context().addCookies([...known.cookies]);
    await page.goto(known.home);
    if (isInside(new URL(page.url()))) return;
  }
  const { email, password } = demoSignIn(role);
  await page.goto("/shop/sign-in");
  await page.getByLabel(/e-?mail/i).fill(email);
  await page.getByLabel(/password/i).fill(password);
  await page.getByRole("button", { name: /sign in/i }).click();
  await page.waitForURL(isInside);
  const all = await page.context().cookies();
  const cookies = all.filter(({ name }) => name === "pairwright-session");
  sessions.set(role, { cookies, home: new URL(page.url()).pathname });
}

function isInside({ pathname }: URL): boolean {
  return pathname.startsWith("/shop") && !pathname.startsWith("/shop/sign-in");
}
