/** Slows guessing down. Counted in the database, so it holds over restarts and several processes. Only failures stay counted. */
import { countEvent, forgetEvents, uncountEvent } from "#data/access";
import type { Db } from "#data/client";
import { accept, type Outcome, refuse } from "#engine/units";

export interface Limit {
  /** Stable name of what is limited. */
  readonly name: string;
  readonly allowed: number;
  readonly windowMinutes: number;
}

export interface TooMany {
  readonly code: "too-many-attempts";
  readonly limit: string;
  readonly retryAfterMinutes: number;
  /** In this window, the refused one included. */
  readonly tries: number;
  readonly [parameter: string]: unknown;
}

/** Shop practice, no source: a person who has forgotten a password gives up before ten tries, a short code before five. */
export const signInLimits = {
  account: { name: "sign-in account", allowed: 10, windowMinutes: 15 },
  address: { name: "sign-in address", allowed: 30, windowMinutes: 15 },
  /** One person on a device that knows them: others' guesses elsewhere do not count here. */
  knownDevice: { name: "sign-in known device", allowed: 10, windowMinutes: 15 },
  floorPerson: { name: "sign-in floor person", allowed: 5, windowMinutes: 15 },
  floorDevice: { name: "sign-in floor device", allowed: 20, windowMinutes: 15 },
  firstOwner: { name: "first owner", allowed: 10, windowMinutes: 15 },
} as const satisfies Readonly<Record<string, Limit>>;

/** Counts this attempt and refuses it when the window already held `allowed`. */
export async function countAttempt(db: Db, limit: Limit, who: string, now: Date): Promise<Outcome<void, TooMany>> {
  const { count, windowStartedAt } = await countEvent(db, keyOf(limit, who), now, limit.windowMinutes);
  if (count <= limit.allowed) return accept(undefined);
  const endsAt = windowStartedAt.getTime() + limit.windowMinutes * 60_000;
  const retryAfterMinutes = Math.max(1, Math.ceil((endsAt - now.getTime()) / 60_000));
  return refuse({ code: "too-many-attempts", limit: limit.name, retryAfterMinutes, tries: count });
}

/** An attempt that was none: it succeeded. */
export function giveBack(db: Db, limit: Limit, who: string): Promise<void> {
  return uncountEvent(db, keyOf(limit, who));
}

export function forgetAttempts(db: Db, limit: Limit, who: string): Promise<void> {
  return forgetEvents(db, keyOf(limit, who));
}

function keyOf(limit: Limit, who: string): string {
  return `${limit.name} ${who}`;
}
