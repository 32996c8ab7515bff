import { issueLink, permit } from "#auth";
import problems from "#content/copy/problems.json";
import { insertClub } from "#data/clubs";
import { nextNumber } from "#data/counters";
import { customerOf } from "#data/customers";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import type { ClubId } from "#engine/units";
import { accept, fill, type IsoDate, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import { checkSheetField } from "#schemas/sheet-fields";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import type { ClubPalette } from "#services/views";
import { currentCatalog } from "#shop/catalogue/current";
import { clubNumber } from "#shop/names/numbers";
import { normalisePhone, storedForms } from "#shop/names/phone";
import { shopDay } from "#shop/time/shop-time";
import { paletteGraphic } from "./palette";

const w = problems.clubs;

export interface OpenClubInput {
  readonly name: string;
  /** Who buys for all and gives the yes. */
  readonly customer: { readonly name: string; readonly phone: string; readonly email?: string };
  readonly palette: ClubPalette;
  /** The day they want to ski; a wish, no promise. */
  readonly wantedOn?: IsoDate;
}

export interface OpenedClub {
  readonly clubId: ClubId;
  /** Of the customer's private page, told once. */
  readonly token: string;
}

const nameLength = { min: 1, max: 120 } as const;

/** Begins a club order. Refuses `invalid-field` (path, message, value) and what a telephone number is refused for. */
export async function openClub(ctx: Context, input: OpenClubInput): Promise<Outcome<OpenedClub>> {
  const allowed = permit(ctx.actor, "club.work");
  if (!allowed.ok) return allowed;
  const checked = checkClub(ctx, input);
  if (!checked.ok) return checked;
  const phone = normalisePhone(input.customer.phone, "customer.phone");
  if (!phone.ok) return phone;
  return transaction(ctx.db, async (tx) => {
    const contact = {
      name: input.customer.name.trim(),
      phone: input.customer.phone.trim(),
      phoneNormalised: phone.value,
      phoneForms: storedForms(input.customer.phone),
      email: input.customer.email?.trim() || null,
      address: null,
      by: "desk",
    } as const;
    const { customer, before } = await customerOf(tx, ctx.newId(), contact, ctx.now);
    if (before !== null) {
      const whose = { kind: "customer", id: customer.id } as const;
      await recordEvents(tx, [eventOf(ctx, "customer-changed", whose, { before })]);
    }
    const number = await nextNumber(tx, "club");
    const id = idOf("club", ctx.newId());
    await insertClub(tx, {
      id,
      number,
      name: input.name.trim(),
      customerId: customer.id,
      palette: input.palette,
      wantedOn: input.wantedOn ?? null,
      createdAt: ctx.now,
      createdByName: nameOf(ctx.actor),
    });
    const data = { number: clubNumber({ number }), name: input.name.trim() };
    await recordEvents(tx, [eventOf(ctx, "club-opened", { kind: "club", id }, data)]);
    const token = await issueLink(tx, { kind: "club", id }, { id: ctx.newId(), now: ctx.now });
    return accept({ clubId: id, token });
  });
}

function checkClub(ctx: Context, { name, customer, palette, wantedOn }: OpenClubInput): Outcome<void> {
  const names = [
    ["name", "Club", name],
    ["customer.name", w.buyer, customer.name],
  ] as const;
  for (const [path, label, value] of names) {
    const { length } = value.trim();
    if (length < nameLength.min || length > nameLength.max) {
      return invalid(path, fill(w.length, { label, min: nameLength.min, max: nameLength.max, length }));
    }
  }
  const { build, shop } = currentCatalog();
  for (const side of ["left", "right"] as const) {
    const colour = palette.base[side];
    if (!build.baseColours.some(({ id }) => id === colour)) {
      return invalid(`palette.base.${side}`, fill(w.baseColour, { side, colour }));
    }
  }
  if (!build.houseGraphics.some(({ id }) => id === palette.house)) {
    return invalid("palette.house", fill(w.graphic, { house: palette.house }));
  }
  const fields = [
    ["choices.base", palette.base, "palette.base"],
    ["choices.graphic", paletteGraphic(palette, ""), "palette.house"],
    ["choices.destination", palette.destination, "palette.destination"],
  ] as const;
  for (const [field, value, path] of fields) {
    const checked = checkSheetField(field, value);
    if (!checked.ok) return invalid(path, checked.refusal.message);
  }
  const today = shopDay(ctx.now, shop.timeZone);
  if (wantedOn !== undefined && wantedOn < today) {
    return invalid("wantedOn", fill(w.wantedOn, { wantedOn, today }));
  }
  return accept(undefined);
}

function invalid(path: string, message: string) {
  return refuse({ code: "invalid-field", path, message });
}
