import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { OpenedSheet, SheetChannel } from "../views";

export interface OpenSheetInput {
  readonly channel: SheetChannel;
  /** As typed; compared in its normalised form. */
  readonly phone?: string;
  readonly name?: string;
}

/** Opens a sheet; on a phone number that already has an open draft, that draft. Burns no quote number. A guest opens online ones, staff either. */
export async function openSheet(ctx: Context, input: OpenSheetInput): Promise<Outcome<OpenedSheet>> {
  throw new Error(`openSheet is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
