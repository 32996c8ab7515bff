import { issueLink, permit } from "#auth";
import { customerByPhone } from "#data/customers";
import { recordEvents } from "#data/events";
import { lockName } from "#data/locks";
import { insertSheet, openSheetByPhone, type SheetFields, updateSheet } from "#data/sheets";
import { transaction } from "#data/transaction";
import { accept, type Outcome } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { eventOf, nameOf } from "#services/record";
import type { OpenedSheet, SheetChannel } from "#services/views";
import { normalisePhone, storedForms } from "#shop/names/phone";
import { leaseFor } from "./lease";
import { sheetView } from "./view";

export interface OpenSheetInput {
  readonly channel: SheetChannel;
  /** As typed; compared in its normalised form. */
  readonly phone?: string;
  readonly name?: string;
}

/**
 * Opens a sheet; for staff on a phone number that already has an open draft, that draft (with who works on it).
 * Burns no quote number. A guest opens online ones and is never shown another's draft.
 */
export async function openSheet(ctx: Context, input: OpenSheetInput): Promise<Outcome<OpenedSheet>> {
  const allowed = permit(ctx.actor, "sheet.start");
  if (!allowed.ok) return allowed;
  const within = await spend(ctx, "sheet");
  if (!within.ok) return within;
  const phone = input.phone === undefined ? null : normalisePhone(input.phone, "contact.phone");
  const forms = input.phone === undefined ? [] : storedForms(input.phone);
  return transaction(ctx.db, async (tx) => {
    const isStaff = ctx.actor.kind !== "guest";
    if (forms[0] !== undefined) await lockName(tx, `phone ${forms[0]}`);
    const customer = isStaff ? await customerByPhone(tx, forms) : null;
    const existing = isStaff ? await openSheetByPhone(tx, forms) : null;
    const knownAs = customer?.name ?? null;
    if (existing !== null) {
      const isFree = existing.leaseUntil === null || existing.leaseUntil <= ctx.now;
      const record = isFree ? await updateSheet(tx, existing.id, leaseFor(ctx)) : existing;
      return accept({ sheet: await sheetView(tx, record, ctx.actor, ctx.now), token: null, wasOpen: true, knownAs });
    }
    if (phone !== null && !phone.ok) return phone;
    const record = await insertSheet(tx, {
      id: idOf("sheet", ctx.newId()),
      channel: ctx.actor.kind === "guest" ? "online" : input.channel,
      fields: firstFields(ctx, input, knownAs),
      phoneNormalised: phone?.value ?? null,
      customerId: customer?.id ?? null,
      ...leaseFor(ctx),
      openedByName: nameOf(ctx.actor),
      now: ctx.now,
    });
    const subject = { kind: "sheet", id: record.id } as const;
    await recordEvents(tx, [eventOf(ctx, "sheet-opened", subject, { channel: record.channel })]);
    const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
    return accept({ sheet: await sheetView(tx, record, ctx.actor, ctx.now), token, wasOpen: false, knownAs });
  });
}

function firstFields(ctx: Context, input: OpenSheetInput, knownAs: string | null): SheetFields {
  const stamp = { version: 1, by: nameOf(ctx.actor), at: ctx.now.toISOString() };
  const name = input.name?.trim() || knownAs;
  return {
    ...(name ? { "contact.name": { value: name, ...stamp } } : {}),
    ...(input.phone === undefined ? {} : { "contact.phone": { value: input.phone.trim(), ...stamp } }),
  };
}
