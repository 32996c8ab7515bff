/** Who works on a draft: a courtesy between desks, never a lock. Saving works without it. */
import type { SheetRecord } from "#data/sheets";
import type { Context } from "#services/context";

/** A desk that has not saved for this long has put the draft down. Shop practice, no source. */
export const leaseMinutes = 15;

type Lease = Pick<SheetRecord, "leaseHolderId" | "leaseHolderName" | "leaseUntil">;

export const noLease: Lease = { leaseHolderId: null, leaseHolderName: null, leaseUntil: null };

/** The lease the actor would hold from now on; guests and tasks hold none. */
export function leaseFor(ctx: Context): Lease {
  if (ctx.actor.kind !== "staff") return noLease;
  return {
    leaseHolderId: ctx.actor.staffId,
    leaseHolderName: ctx.actor.name,
    leaseUntil: new Date(ctx.now.getTime() + leaseMinutes * 60_000),
  };
}

/** May the actor renew or take the lease without asking: it is free, over, or theirs. */
export function mayHold(ctx: Context, record: SheetRecord): boolean {
  if (ctx.actor.kind !== "staff") return false;
  const isOver = record.leaseUntil === null || record.leaseUntil <= ctx.now;
  return isOver || record.leaseHolderId === ctx.actor.staffId;
}
