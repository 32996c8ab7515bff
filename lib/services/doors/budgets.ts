/**
 * Budgets of the doors that anybody may use: what one guest and what all of them together may ask for in an hour. Kept in the
 * database by a limiter, so they hold over restarts and over several machines. Staff and the program itself have none.
 */
import { RateLimiterPostgres, RateLimiterRes } from "rate-limiter-flexible";
import { permit } from "#auth";
import type { Db } from "#data/client";
import { budgetKeys, budgetStore, dropBudgets, sweepBudgets } from "#data/door-budgets";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { DoorBudgets } from "#schemas/content/index";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";

/** The shop's own rules (content/catalog/doors.json), as they are in force. */
const budgetOf = (door: Door) => currentCatalog().doors[door];

export type Door = keyof DoorBudgets;
export const doors = [
  "sheet",
  "quote",
  "accept",
  "upload",
  "drawing",
  "question",
  "code",
] as const satisfies readonly Door[];

const windowSeconds = 3600;
const everybody = "all";

interface DoorLimiters {
  readonly each: RateLimiterPostgres;
  readonly all: RateLimiterPostgres;
}

const shelf = new WeakMap<Db, ReadonlyMap<Door, DoorLimiters>>();

function limitersOf(db: Db, door: Door): DoorLimiters {
  const known = shelf.get(db) ?? new Map(doors.map((each) => [each, makeLimiters(db, each)] as const));
  shelf.set(db, known);
  const limiters = known.get(door);
  if (limiters === undefined) throw new RangeError(`there is no door ${door}`);
  return limiters;
}

function makeLimiters(db: Db, door: Door): DoorLimiters {
  const make = (points: number) =>
    new RateLimiterPostgres({
      storeClient: budgetStore(db),
      storeType: "client",
      tableName: "door_budgets",
      tableCreated: true,
      clearExpiredByTimeout: false,
      keyPrefix: door,
      points,
      duration: windowSeconds,
    });
  return { each: make(budgetOf(door).each), all: make(budgetOf(door).all) };
}

/**
 * Counts one use of a door by a guest. Refuses `budget-used` when this guest has used theirs, `budget-all-used` when all
 * guests together have used what there is, each with the time to wait.
 */
export async function spend(ctx: Context, door: Door): Promise<Outcome<void>> {
  if (ctx.actor.kind !== "guest") return accept(undefined);
  const { each, all } = limitersOf(ctx.db, door);
  const share = ctx.visitor?.share ?? null;
  if (share !== null) {
    const waitMs = await consume(each, share);
    if (waitMs !== null) return refuse({ code: "budget-used", door, ...waiting(waitMs) });
  }
  const waitMs = await consume(all, everybody);
  return waitMs === null ? accept(undefined) : refuse({ code: "budget-all-used", door, ...waiting(waitMs) });
}

/** Null when there was something left, else how long until there is again, in ms. */
async function consume(limiter: RateLimiterPostgres, key: string): Promise<number | null> {
  try {
    await limiter.consume(key);
    return null;
  } catch (used) {
    if (used instanceof RateLimiterRes) return used.msBeforeNext;
    throw used;
  }
}

function waiting(ms: number) {
  const retryAfterSeconds = Math.max(1, Math.ceil(ms / 1000));
  return { retryAfterSeconds, minutes: Math.ceil(retryAfterSeconds / 60) };
}

export interface BudgetRow {
  readonly door: Door;
  /** Of everybody together, or how many single guests are at their end. */
  readonly allUsed: number;
  readonly allMost: number;
  readonly guestsAtEnd: number;
  readonly until: string | null;
}

/** What is used of the budgets now. Staff only. */
export async function listBudgets(ctx: Context): Promise<Outcome<readonly BudgetRow[]>> {
  const allowed = permit(ctx.actor, "doors.release");
  if (!allowed.ok) return allowed;
  const keys = await budgetKeys(ctx.db, ctx.now.getTime());
  return accept(
    doors.map((door) => {
      const own = keys.filter(({ key }) => key.startsWith(`${door}:`));
      const all = own.find(({ key }) => key === `${door}:${everybody}`);
      const guests = own.filter((row) => row !== all && row.points > budgetOf(door).each);
      return {
        door,
        allUsed: all?.points ?? 0,
        allMost: budgetOf(door).all,
        guestsAtEnd: guests.length,
        until: all?.until?.toISOString() ?? null,
      };
    }),
  );
}

/** Begins the chosen doors' budgets anew, for everybody and for each. Refuses `nothing-ticked`, `reason-missing`. */
export async function releaseBudgets(
  ctx: Context,
  input: { readonly doors: readonly string[]; readonly reason: string },
): Promise<Outcome<{ readonly released: number }>> {
  const allowed = permit(ctx.actor, "doors.release");
  if (!allowed.ok) return allowed;
  const chosen = doors.filter((door) => input.doors.includes(door));
  if (chosen.length === 0) return refuse({ code: "nothing-ticked", path: "doors" });
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  return transaction(ctx.db, async (tx) => {
    const released = await dropBudgets(
      tx,
      chosen.map((door) => `${door}:`),
    );
    const subject = { kind: "door", id: "budgets" } as const;
    await recordEvents(tx, [eventOf(ctx, "budgets-released", subject, { doors: chosen, reason })]);
    return accept({ released });
  });
}

/** Windows that ended are dropped. Run by the clock. */
export async function sweepDoors(ctx: Context): Promise<void> {
  await sweepBudgets(ctx.db, ctx.now.getTime());
}
