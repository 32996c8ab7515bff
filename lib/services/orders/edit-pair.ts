import type { SheetChoices } from "../../engine/assessment";
import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { EditPreview, PairId } from "../views";

export interface EditPairInput {
  readonly pairId: PairId;
  /** What changes; the rest of the spec stays. */
  readonly choices: SheetChoices;
  readonly reason: string;
  /** An owner agrees that work already done is lost. */
  readonly ownerApproves?: boolean;
  /** The revision the change was made over. */
  readonly revision: number;
}

/** What the edit would do. Refuses `edit-too-late` (part, station, lostCents) and says what an owner could still approve. */
export async function previewEdit(
  ctx: Context,
  input: Pick<EditPairInput, "pairId" | "choices">,
): Promise<Outcome<EditPreview>> {
  throw new Error(`previewEdit is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Does it: new revision, price, strips and promise; proof and older prints void. */
export async function editPair(ctx: Context, input: EditPairInput): Promise<Outcome<EditPreview>> {
  throw new Error(`editPair is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
