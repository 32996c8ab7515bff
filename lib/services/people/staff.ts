/** The people of the shop: an owner takes them on and lets them go; everybody minds their own password and short code. */
import {
  changeOwnPassword,
  changePassword,
  type FirstOwner,
  letStaffGo,
  makeFirstOwner,
  type NewStaff,
  setFloorCode,
  takeOnStaff,
} from "#auth";
import type { Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";

/** What anybody would try in a password here. */
function workshop(): readonly string[] {
  const { name, town } = currentCatalog().shop;
  return [name, town];
}

/** Takes somebody on. Owners only. Refuses `email-taken` and a weak password. */
export function takeOn(
  ctx: Context,
  input: Omit<NewStaff, "isDemoPassword">,
): Promise<Outcome<{ readonly id: string }>> {
  return takeOnStaff(ctx.actor, input, ctx.now, workshop());
}

/** Somebody leaves, and every sign-in of theirs ends at once. Owners only. */
export function letGo(ctx: Context, input: { readonly staffId: string }): Promise<Outcome<void>> {
  return letStaffGo(ctx.actor, input.staffId, ctx.now);
}

/** An owner gives somebody a new password; every sign-in of theirs ends. */
export function givePassword(
  ctx: Context,
  input: { readonly staffId: string; readonly password: string },
): Promise<Outcome<void>> {
  return changePassword(ctx.actor, input.staffId, input.password, ctx.now, workshop());
}

/** One's own new password, by the present one; one's other sign-ins end. */
export function changeMyPassword(
  ctx: Context,
  input: { readonly current: string; readonly password: string },
): Promise<Outcome<void>> {
  return changeOwnPassword(ctx.actor, input, ctx.now, workshop());
}

/** A short code for the floor: an owner's for anybody, or one's own. Null takes it away. */
export function giveFloorCode(
  ctx: Context,
  input: { readonly staffId: string; readonly code: string | null },
): Promise<Outcome<void>> {
  return setFloorCode(ctx.actor, input, ctx.now);
}

/** The first owner of a shop that has nobody yet, by the code from the terminal. */
export function becomeFirstOwner(ctx: Context, input: FirstOwner): Promise<Outcome<void>> {
  return makeFirstOwner(ctx.actor, input, ctx.now, workshop());
}
