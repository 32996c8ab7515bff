import type { Outcome } from "../../engine/units";
import type { Context } from "../context";

export interface LinkSubjectInput {
  readonly kind: "sheet" | "quote" | "order" | "pair";
  readonly id: string;
}

/** Revokes the subject's links and makes a new one, told once. Staff only. */
export async function reissueLink(ctx: Context, input: LinkSubjectInput): Promise<Outcome<{ readonly token: string }>> {
  throw new Error(`reissueLink is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Closes the subject's links. */
export async function revokeLink(
  ctx: Context,
  input: LinkSubjectInput,
): Promise<Outcome<{ readonly revoked: number }>> {
  throw new Error(`revokeLink is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
