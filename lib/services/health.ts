/** Whether the shop can work right now. */
import { findStaffForSignIn } from "#data/access";
import { translated } from "#data/transaction";
import type { Context } from "./context";

/** Asks the database a real question. @throws Unavailable */
export async function checkHealth(ctx: Context): Promise<void> {
  await translated(findStaffForSignIn(ctx.db, { email: "" }));
}
