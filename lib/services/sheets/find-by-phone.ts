import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { PhoneMatch } from "../views";

/** Who this number is: the customer, open drafts, quotes and orders. Staff only. Refuses `invalid-phone`. */
export async function findByPhone(ctx: Context, input: { readonly phone: string }): Promise<Outcome<PhoneMatch>> {
  throw new Error(`findByPhone is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
