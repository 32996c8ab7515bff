import { artworkById } from "#data/artwork";
import type { Tx } from "#data/client";
import type { SheetRecord } from "#data/sheets";
import { type Assessment, assessSheet, type SheetInput } from "#engine/assessment";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, type Refusal } from "#engine/units";
import { isFlagCode } from "#schemas/stored/index";
import type { Context } from "#services/context";
import { currentCatalog, engineOn } from "#shop/catalogue/current";
import type { DateRange } from "#shop/names/views";
import { rangeOf } from "#shop/queue/range";
import { findSheet } from "./find-sheet";
import { sheetInputOf } from "./view";
import type { FlagAck } from "./views";

export interface SheetAssessment {
  readonly assessment: Assessment;
  /** Null until a spec is complete enough to schedule. */
  readonly dateRange: DateRange | null;
  readonly releaseHash: string;
  /** Flags that still stop the sale after what staff acknowledged. */
  readonly stoppedBy: readonly Refusal[];
  /** Codes of those that an owner's word would lift. */
  readonly liftable: readonly string[];
}

/** The server's answer to a sheet: the browser's function on the saved sheet, with dates from the live queue. */
export async function assess(ctx: Context, input: { readonly sheetId: SheetId }): Promise<Outcome<SheetAssessment>> {
  const found = await findSheet(ctx, ctx.db, "sheet.read", input.sheetId);
  if (!found.ok) return found;
  const assessment = assessSheet(await inputOf(ctx.db, found.value), engineOn(ctx.now));
  const { spec } = assessment;
  const stops = stoppedBy(assessment, found.value.content.flagAcks);
  return accept({
    assessment,
    dateRange: spec === null ? null : await rangeOf(ctx, spec),
    releaseHash: currentCatalog().hash,
    stoppedBy: stops,
    liftable: stops.filter(mayBeLifted).map(({ code }) => code),
  });
}

/** The engine's input in a sheet; only the server knows whether the rights were stated. */
export async function inputOf(client: Tx, sheet: SheetRecord): Promise<SheetInput> {
  const input = sheetInputOf(sheet.content);
  const artworkId = input.choices.graphic?.artwork?.id;
  const artwork = artworkId === undefined ? null : await artworkById(client, artworkId);
  return { ...input, rightsConfirmed: artwork?.rightsAt != null };
}

/** What an owner's word has not lifted. */
export function stoppedBy(assessment: Assessment, acks: readonly FlagAck[]): readonly Refusal[] {
  const lifted = new Set(acks.filter((ack) => ack.byOwner).map((ack) => ack.code));
  return assessment.saleBlockedBy.filter((refusal) => !(mayBeLifted(refusal) && lifted.has(refusal.code)));
}

/** A flag that blocks the sale is lifted by an owner's word; a missing answer or a clash by nobody's. */
export function mayBeLifted({ code }: Refusal): boolean {
  return isFlagCode(code);
}
