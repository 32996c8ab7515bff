import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { clubById } from "#data/clubs";
import { recordEvents } from "#data/events";
import { insertSheet, type SheetFields } from "#data/sheets";
import { transaction } from "#data/transaction";
import type { ClubId, SheetId } from "#engine/units";
import { accept, fill, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import { leaseFor } from "#services/sheets/lease";
import { paletteGraphic } from "./palette";

const w = problems.clubs;

/** As long as a text on a ski may be. */
const longestName = 60;

/**
 * A sheet for one more skier of a club: the customer's contact, the club's palette and the skier's name are in it; the answers
 * are the skier's own. Refuses `not-found`, `invalid-field`.
 */
export async function addClubSkier(
  ctx: Context,
  input: { readonly clubId: ClubId; readonly skierName: string },
): Promise<Outcome<{ readonly sheetId: SheetId }>> {
  const allowed = permit(ctx.actor, "club.work");
  if (!allowed.ok) return allowed;
  const skierName = input.skierName.trim();
  if (skierName === "" || skierName.length > longestName) {
    const message = fill(w.skierName, { most: longestName, length: skierName.length });
    return refuse({ code: "invalid-field", path: "skierName", message });
  }
  const club = await clubById(ctx.db, input.clubId);
  if (club === null) return refuse({ code: "not-found", what: "club", id: input.clubId });
  const palette = club.palette;
  const { customer } = club;
  const stamp = { version: 1, by: nameOf(ctx.actor), at: ctx.now.toISOString() };
  const given: Readonly<Record<string, unknown>> = {
    "contact.name": customer.name,
    "contact.phone": customer.phone,
    "contact.email": customer.email,
    "choices.base": palette.base,
    "choices.graphic": paletteGraphic(palette, skierName),
    "choices.destination": palette.destination,
  };
  const fields: SheetFields = Object.fromEntries(
    Object.entries(given).flatMap(([path, value]) => (value === null ? [] : [[path, { value, ...stamp }] as const])),
  );
  return transaction(ctx.db, async (tx) => {
    const sheet = await insertSheet(tx, {
      id: idOf("sheet", ctx.newId()),
      channel: "phone",
      fields,
      // The customer's number stays free for a call of their own: a draft is known again by it.
      phoneNormalised: null,
      customerId: customer.id,
      clubId: club.id,
      skierName,
      ...leaseFor(ctx),
      openedByName: nameOf(ctx.actor),
      now: ctx.now,
    });
    await recordEvents(tx, [
      eventOf(ctx, "sheet-opened", { kind: "sheet", id: sheet.id }, { channel: "phone", clubId: club.id }),
      eventOf(ctx, "club-skier-added", { kind: "club", id: club.id }, { skierName, sheetId: sheet.id }),
    ]);
    return accept({ sheetId: sheet.id });
  });
}
