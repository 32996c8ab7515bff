/**
 * Pages drawn from views made by hand: the use cases answer what a test tells them to, so that a page is held to every state
 * a view can have without a shop in which it has come about. A test file says
 *
 *   vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
 *   vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
 *   vi.mock("next/headers", () => import("../../support/page-requests"));
 */

import type * as requests from "#app/_server/request.ts";
import type { StaffActor } from "#auth";
import { shopNow } from "./builders/shop";

type UseCases = Readonly<Record<string, unknown>>;

/**
 * Unless a test tells otherwise everybody has said yes to the cautions, of which pages of the shop remind who has not; nobody
 * guesses passwords; and nothing has a private link.
 */
const answers = new Map<string, (...asked: readonly unknown[]) => unknown>([
  ["readMyCautions", async () => ({ ok: true, value: { state: "said" } })],
  ["readGuessing", async () => ({ ok: true, value: [] })],
  ["readLinkStanding", async () => ({ ok: true, value: { open: 0, over: 0, until: null } })],
  // As in the demo, behind no proxy, with nobody else of the same number.
  ["offeredMethods", async () => ["pay-later", "bank-transfer", "counter", "demo-card"]],
  ["unnamedProxySeen", async () => null],
  ["listWaitingLetters", async () => ({ ok: true, value: [] })],
  ["readCustomerPage", async () => ({ ok: true, value: { sameNumber: [] } })],
]);

/** From now on the use case of this name answers so; what was asked of it is told to a function. */
export function tell(useCase: string, answer: unknown): void {
  const value = typeof answer === "function" ? (answer as () => unknown) : () => answer;
  answers.set(useCase, async (_ctx, input) => {
    const told = (value as (input: unknown) => unknown)(input);
    return isRefusal(told) ? told : { ok: true, value: told };
  });
}

/** A refusal to answer with. */
export const refusal = (code: string, known: object = {}) => ({ ok: false, refusal: { code, ...known } }) as const;
const isRefusal = (told: unknown) => typeof told === "object" && told !== null && "ok" in told && told.ok === false;

export function asTold(real: UseCases): UseCases {
  const told = (name: string, value: unknown) =>
    typeof value === "function"
      ? (...asked: readonly unknown[]) =>
          (answers.get(name) ?? (value as typeof answers extends Map<string, infer F> ? F : never))(...asked)
      : value;
  return Object.fromEntries(Object.entries(real).map(([name, value]) => [name, told(name, value)]));
}

let actor: StaffActor | null = null;

/** Who sits before the page: somebody of this role, or nobody of the staff. */
export function seeAs(role: StaffActor["role"] | null): void {
  actor = role && ({ kind: "staff", staffId: "s-1", name: "Sam Staff", role } as unknown as StaffActor);
}

let link: { readonly kind: string; readonly id: string } | null = null;

/** The link that the visitor holds. */
export function hold(kind: string, id: string): void {
  link = { kind, id };
}

export function seenBy(real: typeof requests): typeof requests {
  let made = 0;
  const ctx = () =>
    ({
      actor: actor ?? { kind: "visitor" },
      now: shopNow,
      newId: () => `new-${++made}`,
      db: null,
    }) as unknown as Awaited<ReturnType<typeof requests.staffContext>>;
  return {
    ...real,
    requestTime: () => shopNow,
    signedIn: async () => actor,
    requestContext: async () => ctx(),
    staffContext: async () => ctx(),
    linkContext: async () =>
      ({ ctx: ctx(), subject: link }) as unknown as Awaited<ReturnType<typeof requests.linkContext>>,
  };
}
