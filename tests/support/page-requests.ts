/**
 * Presses the buttons of our own pages below the browser: an action file is called as a function with its form. Stands in for
 * what the framework gives a request: cookies and headers, and being told that a page is stale. The services project resolves
 * `next/headers` and `next/cache` to this file (vitest.config.ts); tests without a database mock them by it.
 */
import { onTestFinished, vi } from "vitest";
import type { FormState } from "#app/_server/form-state.ts";
import { signIn } from "#auth";
import { must, shopNow } from "./builders/shop";

interface Cookie {
  readonly value: string;
  readonly options: Readonly<Record<string, unknown>>;
}

const jar = new Map<string, Cookie>();
const stale: string[] = [];

export async function cookies() {
  return {
    get: (name: string) => jar.get(name),
    set: (name: string, value: string, options: Readonly<Record<string, unknown>> = {}) => {
      jar.set(name, { value, options });
    },
    delete: (cookie: string | { readonly name: string }) => {
      jar.delete(typeof cookie === "string" ? cookie : cookie.name);
    },
  };
}

export async function headers(): Promise<Headers> {
  return new Headers({ "x-forwarded-for": "192.0.2.7" });
}

export function revalidatePath(path: string): void {
  stale.push(path);
}

/** The cookies of this browser, and the pages that were told to be stale since it was opened. */
export const browser: { readonly cookies: ReadonlyMap<string, Cookie>; readonly stale: readonly string[] } = {
  cookies: jar,
  stale,
};

/** A browser without a cookie, at the shop's instant of the tests; to be called in a test, whose end gives the clock back. */
export function freshBrowser(): void {
  jar.clear();
  stale.length = 0;
  vi.useFakeTimers({ toFake: ["Date"], now: shopNow });
  onTestFinished(() => {
    vi.useRealTimers();
  });
}

/** Signs one of the test shop's people in: "desk1", "maker" or "owner"; null signs out. */
export async function sitDown(who: "desk1" | "maker" | "owner" | null): Promise<void> {
  jar.delete("pairwright-session");
  if (who === null) return;
  const person = { email: `${who}@thistle-yard.example`, password: "larch-board-seven", address: "127.0.0.1" };
  const session = must(await signIn(person, shopNow));
  jar.set("pairwright-session", { value: session.token, options: {} });
}

export type Fields = Readonly<Record<string, string | readonly string[]>>;

/** What came of it: the form as it is shown again, or where the browser was sent ("not-found" is the page that is not there). */
export interface Pressed {
  readonly state: FormState | null;
  readonly to: string | null;
}

export type FormButton = (previous: FormState, form: FormData) => Promise<FormState>;

export function press(action: FormButton, fields: Fields): Promise<Pressed> {
  const form = new FormData();
  for (const [name, sent] of Object.entries(fields)) for (const value of [sent].flat()) form.append(name, value);
  return sent(async () => action({ status: "new", values: {}, refusals: {} }, form));
}

/** The same for an action that takes no form; its answer is the caller's own business. */
export async function called<T>(
  action: () => Promise<T>,
): Promise<{ readonly value: T | null; readonly to: string | null }> {
  try {
    return { value: await action(), to: null };
  } catch (error) {
    return { value: null, to: whereTo(error) };
  }
}

async function sent(action: () => Promise<FormState>): Promise<Pressed> {
  const { value, to } = await called(action);
  return { state: value, to };
}

function whereTo(error: unknown): string {
  const digest = typeof error === "object" && error !== null && "digest" in error ? String(error.digest) : "";
  if (digest.startsWith("NEXT_REDIRECT;")) return digest.split(";")[2] ?? "";
  if (digest.startsWith("NEXT_HTTP_ERROR_FALLBACK;404")) return "not-found";
  throw error;
}
