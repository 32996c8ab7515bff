import type { Assessment } from "../../engine/assessment";
import type { Outcome, Refusal } from "../../engine/units";
import type { Context } from "../context";
import type { DateRange, SheetId } from "../views";

export interface SheetAssessment {
  readonly assessment: Assessment;
  /** Null until a spec is complete enough to schedule. */
  readonly dateRange: DateRange | null;
  readonly releaseHash: string;
  /** Flags that still stop the sale after what staff acknowledged. */
  readonly stoppedBy: readonly Refusal[];
}

/** The server's answer to a sheet: the browser's function on the saved sheet, with dates from the live queue. */
export async function assess(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetAssessment>> {
  throw new Error(`assess is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
