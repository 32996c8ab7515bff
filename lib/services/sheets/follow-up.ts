import { type Action, endLinksSoon, permit, revokeLinks } from "#auth";
import { recordEvents } from "#data/events";
import { queueMessages } from "#data/outbox";
import { lockOpenSheet, moveSheet, type SheetChange, updateSheet } from "#data/sheets";
import { transaction } from "#data/transaction";
import { findHealthWords } from "#engine/fit";
import type { SheetState } from "#engine/floor";
import type { SheetId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { moveState } from "#services/move";
import { eventWith, messageOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { normalisePhone } from "#shop/names/phone";
import { noLease } from "./lease";
import { whyClosed } from "./save-sheet";
import { sheetView } from "./view";
import type { SheetView } from "./views";

const reasonLength = { min: 1, max: 500 } as const;

export interface CallBackInput {
  readonly sheetId: SheetId;
  readonly at: Date;
  readonly reason: string;
  /** A number to call, or an address to write to. */
  readonly phone: string;
}

/** The call goes on later: when, why, on what number or by mail. Refuses `invalid-phone`, `reason-length`, `call-back-past`. */
export async function setCallBack(ctx: Context, input: CallBackInput): Promise<Outcome<SheetView>> {
  const phone = input.phone.includes("@") ? null : normalisePhone(input.phone);
  if (phone?.ok === false) return phone;
  const reason = checkReason(input.reason, "reason");
  if (!reason.ok) return reason;
  if (input.at <= ctx.now) return refuse({ code: "call-back-past", path: "at", value: input.at.toISOString() });
  const at = input.at.toISOString();
  return follow(
    ctx,
    "sheet.change",
    input.sheetId,
    { kind: "call-back-set", data: { at, reason: reason.value } },
    {
      callBackAt: input.at,
      callBackReason: reason.value,
      callBackPhone: input.phone.trim(),
      ...(phone === null ? {} : { phoneNormalised: phone.value }),
      ...noLease,
    },
  );
}

/** Puts the sheet before the owner; also the skier's own way to ask a person. */
export async function askReview(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly note: string },
): Promise<Outcome<SheetView>> {
  const note = checkReason(input.note, "note");
  if (!note.ok) return note;
  const within = await spend(ctx, "question");
  if (!within.ok) return within;
  return follow(
    ctx,
    "sheet.change",
    input.sheetId,
    { kind: "review-asked", data: { note: note.value } },
    {
      reviewAskedAt: ctx.now,
      reviewNote: note.value,
    },
  );
}

/** Closes the sheet without a quote, with the reason. */
export async function turnDown(
  ctx: Context,
  input: { readonly sheetId: SheetId; readonly reason: string },
): Promise<Outcome<SheetView>> {
  const reason = checkReason(input.reason, "reason");
  if (!reason.ok) return reason;
  return follow(
    ctx,
    "call.work",
    input.sheetId,
    { kind: "sheet-turned-down", data: { reason: reason.value } },
    {
      turnedDownReason: reason.value,
      reviewAskedAt: null,
      callBackAt: null,
      ...noLease,
    },
    "turned-down",
  );
}

async function follow(
  ctx: Context,
  action: Action,
  sheetId: SheetId,
  facts: EventFacts,
  change: SheetChange,
  to: SheetState | null = null,
): Promise<Outcome<SheetView>> {
  const subject = { kind: "sheet", id: sheetId } as const;
  const allowed = permit(ctx.actor, action, subject);
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    const locked = await lockOpenSheet(tx, sheetId, ctx.now);
    if (locked === null) return refuse(await whyClosed(tx, sheetId));
    const record = await updateSheet(tx, sheetId, change);
    if (to !== null) {
      await moveState(tx, { kind: "sheet", from: locked.state, to, reason: change.turnedDownReason ?? null }, () =>
        moveSheet(tx, sheetId, locked.state, to),
      );
    }
    await recordEvents(tx, [eventWith(ctx, subject, facts)]);
    if (facts.kind === "sheet-turned-down") {
      await endLinksSoon(tx, subject, ctx.now);
      await revokeLinks(tx, { kind: "answers", id: sheetId }, ctx.now);
    }
    if (facts.kind === "review-asked") {
      await queueMessages(tx, [messageOf(ctx, facts.kind, "desk", subject, facts.data)]);
    }
    return accept(await sheetView(tx, to === null ? record : { ...record, state: to }, ctx.actor, ctx.now));
  });
}

/** Words for the record: some, not too many, and nothing medical. */
export function checkReason(text: string, path: string): Outcome<string> {
  const trimmed = text.trim();
  if (trimmed.length < reasonLength.min || trimmed.length > reasonLength.max) {
    return refuse({ code: "reason-length", path, length: trimmed.length, ...reasonLength });
  }
  const words = findHealthWords(trimmed, currentCatalog().fit.healthWords);
  return words.length > 0 ? refuse({ code: "health-words", path, words }) : accept(trimmed);
}
