"use server";
/** A club order: begun, joined by skiers, ordered. */
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { staffContext } from "@/app/_server/request";
import { pickedIn } from "@/app/_ui/picks";
import { isoDate } from "@/lib/engine/units";
import { oneOf } from "@/lib/schemas/fields";
import { acceptClub, addClubSkier, type ClubId, openClub, type QuoteId } from "@/lib/services";
import { idField, maybeTicked, withoutEmpty } from "../../fields";
import { say } from "../../say";
import { tellLink } from "../../told-link";

const home = "/shop/clubs";
const clubId = idField.transform((id) => id as ClubId);
const destination = oneOf("Delivery", ["home", "domestic", "abroad", "collect"]);

export const begin = formAction({
  name: "begin a club order",
  schema: withoutEmpty(
    z.strictObject({
      name: z.string({ error: "Club: a name is needed" }).max(400),
      "customer.name": z.string({ error: "Who orders for all: a name is needed" }).max(400),
      "customer.phone": z.string({ error: "Telephone: a number is needed" }).max(60),
      email: z.email({ error: "E-mail: not an address" }).max(200).optional(),
      "palette.base.left": idField,
      "palette.base.right": idField,
      "palette.house": idField,
      isNamed: maybeTicked,
      "palette.destination": destination,
      wantedOn: z.iso.date({ error: "Wanted on: a day is needed" }).transform(isoDate).optional(),
    }),
  ),
  context: () => staffContext(home),
  run: (ctx, { name, email, isNamed, wantedOn, ...given }) =>
    openClub(ctx, {
      name,
      customer: {
        name: given["customer.name"],
        phone: given["customer.phone"],
        ...(email === undefined ? {} : { email }),
      },
      palette: {
        base: { left: given["palette.base.left"], right: given["palette.base.right"], inlay: "none" },
        house: given["palette.house"],
        isNamed,
        destination: given["palette.destination"],
      },
      ...(wantedOn === undefined ? {} : { wantedOn }),
    }),
  words: say,
  done: async ({ clubId: id, token }) => {
    await tellLink("club", id, token);
    redirect(`${home}/${id}`);
  },
});

export const addSkier = formAction({
  name: "add a skier to a club",
  schema: z.strictObject({ clubId, skierName: z.string().max(400) }),
  context: ({ clubId: id }) => staffContext(`${home}/${id}`),
  run: addClubSkier,
  words: say,
  done: ({ sheetId }) => redirect(`/shop/call/${sheetId}`),
});

export const order = formAction({
  name: "order a club's pairs",
  schema: z.looseObject({ clubId, how: oneOf("How they said yes", ["phone", "counter"]), name: z.string().max(120) }),
  context: ({ clubId: id }) => staffContext(`${home}/${id}`),
  run: (ctx, { clubId: id, how, name, ...ticks }) =>
    acceptClub(ctx, {
      clubId: id,
      how,
      name,
      quoteIds: pickedIn<QuoteId>(ticks),
    }),
  words: say,
  done: ({ orderId }) => redirect(`/shop/orders/${orderId}`),
});
