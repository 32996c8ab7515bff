import { permit } from "#auth";
import { artworkById } from "#data/artwork";
import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { lockOpenSheet, sheetById, updateSheet } from "#data/sheets";
import { transaction } from "#data/transaction";
import type { GraphicSpec } from "#engine/configuration";
import { findHealthWords } from "#engine/fit";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import { discountRequestSchema } from "#schemas/choices";
import { checkSheetField } from "#schemas/sheet-fields";
import { storedGraphic } from "#schemas/stored/index";
import type { Context } from "#services/context";
import { eventOf, isOwner, nameOf } from "#services/record";
import { currentCatalog, engineOn } from "#shop/catalogue/current";
import { normalisePhone } from "#shop/names/phone";
import { leaseFor, mayHold } from "./lease";
import { mergeFields } from "./merge";
import { sheetView } from "./view";
import type { SavedSheet, SheetView } from "./views";

export interface SaveSheetInput {
  readonly sheetId: SheetId;
  /**
   * Path → value; null clears. Paths: answers.KEY, typed.height, typed.mass, said.height, said.mass, choices.KEY, contact.name|phone|email|address,
   * asked.KEY ("not asked" | "refused"), notes.
   */
  readonly patch: Readonly<Record<string, unknown>>;
  /** The version the values were typed over. */
  readonly baseVersion: number;
}

/**
 * Saves field by field: two fields from two desks both stay; the same field changed since `baseVersion` is told, not
 * overwritten. Refuses `invalid-field` (path, message, value), `health-words` (words) and `sheet-closed`.
 */
export async function saveSheet(ctx: Context, input: SaveSheetInput): Promise<Outcome<SavedSheet>> {
  const allowed = permit(ctx.actor, "sheet.change", { kind: "sheet", id: input.sheetId });
  if (!allowed.ok) return allowed;
  return saveFields(ctx, input);
}

/** The same for an actor who has been found to be allowed. */
export async function saveFields(ctx: Context, input: SaveSheetInput): Promise<Outcome<SavedSheet>> {
  const checked = await checkPatch(ctx, input);
  if (!checked.ok) return checked;
  return transaction(ctx.db, async (tx) => {
    const locked = await lockOpenSheet(tx, input.sheetId, ctx.now);
    if (locked === null) return refuse(await whyClosed(tx, input.sheetId));
    const merge = mergeFields(locked.fields, checked.value, input.baseVersion, {
      version: locked.version,
      by: nameOf(ctx.actor),
      at: ctx.now.toISOString(),
    });
    const record = await updateSheet(tx, locked.id, {
      fields: merge.fields,
      ...phoneChange(merge.savedPaths, checked.value),
      ...(mayHold(ctx, locked) ? leaseFor(ctx) : {}),
    });
    const sheet = await sheetView(tx, record, ctx.actor, ctx.now);
    return accept({ sheet, savedPaths: merge.savedPaths, conflicts: merge.conflicts });
  });
}

/**
 * Staff write why a flag does not stop them; a sale-blocking flag counts only from an owner.
 * Refuses `reason-missing`, `sheet-closed`.
 */
export async function acknowledgeFlag(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly code: string; readonly reason: string },
): Promise<Outcome<SheetView>> {
  const allowed = permit(ctx.actor, "call.work");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  return transaction(ctx.db, async (tx) => {
    const locked = await lockOpenSheet(tx, input.sheetId, ctx.now);
    if (locked === null) return refuse(await whyClosed(tx, input.sheetId));
    const byOwner = isOwner(ctx.actor);
    const stamp = { version: locked.version, by: nameOf(ctx.actor), at: ctx.now.toISOString() };
    const entry = { value: { reason, byOwner }, ...stamp };
    const record = await updateSheet(tx, locked.id, {
      fields: { ...locked.fields, [`acks.${input.code}`]: entry },
      ...(byOwner ? { reviewAskedAt: null, reviewNote: null } : {}),
    });
    const subject = { kind: "sheet", id: locked.id } as const;
    await recordEvents(tx, [eventOf(ctx, "flag-acknowledged", subject, { code: input.code, reason, byOwner })]);
    return accept(await sheetView(tx, record, ctx.actor, ctx.now));
  });
}

/** Every value checked before any is kept, so that a refusal leaves the sheet as it was. */
async function checkPatch(ctx: Context, input: SaveSheetInput): Promise<Outcome<Record<string, unknown>>> {
  const values: Record<string, unknown> = {};
  for (const [path, value] of Object.entries(input.patch)) {
    const field = checkSheetField(path, value);
    if (!field.ok) return field;
    const refusal = field.value === null ? null : await refuseValue(ctx, input.sheetId, path, field.value);
    if (refusal !== null) return refuse(refusal);
    values[path] = path === discountsPath ? signedDiscounts(ctx, field.value) : field.value;
  }
  return accept(values);
}

const discountsPath = "choices.discounts";

/** Who gives a discount is who saves it. */
function signedDiscounts(ctx: Context, value: unknown): unknown {
  if (!Array.isArray(value)) return value;
  return value.map((discount: object) => ({ ...discount, approvedBy: nameOf(ctx.actor) }));
}

async function refuseValue(ctx: Context, sheetId: SheetId, path: string, value: unknown): Promise<Refusal | null> {
  switch (path) {
    case discountsPath:
      return refuseDiscounts(ctx, discountRequestSchema.array().parse(value));
    case "contact.phone": {
      const phone = normalisePhone(String(value), path);
      return phone.ok ? null : phone.refusal;
    }
    case "notes": {
      const words = findHealthWords(String(value), currentCatalog().fit.healthWords);
      return words.length > 0 ? { code: "health-words", path, words } : null;
    }
    case "choices.graphic":
      return refuseGraphic(ctx, sheetId, storedGraphic.parse(value));
    default:
      return null;
  }
}

async function refuseDiscounts(ctx: Context, discounts: readonly { readonly code: string }[]): Promise<Refusal | null> {
  const allowed = permit(ctx.actor, "quote.discount");
  if (!allowed.ok) return allowed.refusal;
  const { priceBook } = engineOn(ctx.now);
  const reserved = discounts.find((given) =>
    priceBook.discounts.some((rule) => rule.code === given.code && rule.needsOwner),
  );
  if (reserved === undefined || isOwner(ctx.actor)) return null;
  return { code: "owner-needed", path: discountsPath, action: "discount", discount: reserved.code };
}

/** A picture must be this sheet's own, at the size that was measured when it was taken in. */
async function refuseGraphic(ctx: Context, sheetId: SheetId, graphic: GraphicSpec): Promise<Refusal | null> {
  if (graphic.artwork === undefined) return null;
  const path = "choices.graphic.artwork.id";
  const artwork = await artworkById(ctx.db, graphic.artwork.id);
  if (artwork === null || artwork.sheetId !== sheetId)
    return { code: "artwork-unknown", path, value: graphic.artwork.id };
  const { widthPx, heightPx, sha256 } = graphic.artwork;
  const isSame = artwork.widthPx === widthPx && artwork.heightPx === heightPx && artwork.sha256 === sha256;
  return isSame ? null : { code: "artwork-changed", path, value: graphic.artwork.id };
}

function phoneChange(savedPaths: readonly string[], values: Record<string, unknown>) {
  if (!savedPaths.includes("contact.phone")) return {};
  const typed = values["contact.phone"];
  const phone = typed === null ? null : normalisePhone(String(typed), "contact.phone");
  return { phoneNormalised: phone?.ok ? phone.value : null };
}

export async function whyClosed(tx: Tx, sheetId: string): Promise<Refusal> {
  const record = await sheetById(tx, sheetId);
  if (record === null) return { code: "not-found", what: "sheet", path: "sheetId" };
  return { code: "sheet-closed", state: record.state };
}
