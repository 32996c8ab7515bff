/** The two queues of the house: pictures are decoded one at a time, and papers drawn one at a time. */
import type { Context } from "./context";
import { type Turn, Turnstile } from "./turnstile";

const shelf = globalThis as typeof globalThis & {
  pairwrightTurns?: { readonly pictures: Turnstile; readonly papers: Turnstile };
};

/** Page bundles may hold several copies of this module; each queue is one per process all the same. */
export function turns() {
  shelf.pairwrightTurns ??= { pictures: new Turnstile(8, 4), papers: new Turnstile(16, 0.7) };
  return shelf.pairwrightTurns;
}

/** Staff were verified when their session was read; a guest is known by what the link is for. Who has gone waits no longer. */
export function turnOf({ actor, signal }: Pick<Context, "actor" | "signal">): Turn {
  const grant = actor.kind === "guest" ? actor.grants[0] : undefined;
  return { isStaff: actor.kind !== "guest", whose: grant === undefined ? null : `${grant.kind} ${grant.id}`, signal };
}
