"use server";
/** A club order: begun, joined by skiers, ordered. */
import { redirect } from "next/navigation";
import { z } from "zod";
import { forgetTyped, showTicked } from "#app/_server/club-choice.ts";
import { idField, maybeTicked, textField, withoutEmpty } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { type FormState, readForm, typedValues } from "#app/_server/form-state.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { tellLink } from "#app/shop/told-link.ts";
import { isoDate } from "#engine/units";
import { emailSchema } from "#schemas/contact";
import { idListField, idsField, oneOf } from "#schemas/fields";
import { idOf } from "#schemas/ids";
import { acceptClub, addClubSkier, openClub, type QuoteId } from "#services";

const home = "/shop/clubs";
const clubId = idField.transform((id) => idOf("club", id));
const destination = oneOf("Delivery", ["home", "domestic", "abroad", "collect"]);

export const begin = formAction({
  name: "begin a club order",
  schema: withoutEmpty(
    z.strictObject({
      name: textField("Club", 400, "Club: a name is needed"),
      "customer.name": textField("Who orders for all", 400, "Who orders for all: a name is needed"),
      "customer.phone": textField("Telephone", 60, "Telephone: a number is needed"),
      email: emailSchema.optional(),
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
  schema: z.strictObject({ clubId, skierName: textField("Skier's name", 400) }),
  context: ({ clubId: id }) => staffContext(`${home}/${id}`),
  run: addClubSkier,
  words: say,
  done: ({ sheetId }) => redirect(`/shop/call/${sheetId}`),
});

const pageOf = (id: string) => `${home}/${encodeURIComponent(id)}`;

/** Price and day of some of the offer are asked for, or they are ordered. */
export async function order(previous: FormState, form: FormData): Promise<FormState> {
  if (form.has("ask")) return showTicked(pageOf(String(form.get("clubId"))), typedValues(readForm(form)));
  return take(previous, form);
}

const take = formAction({
  name: "order a club's pairs",
  schema: z.strictObject({
    clubId,
    quoteIds: idsField,
    priced: idListField,
    how: z.enum(["phone", "counter"], { error: "How they said yes: choose one" }),
    name: textField("Who says yes", 120),
  }),
  context: ({ clubId: id }) => staffContext(`${home}/${id}`),
  run: (ctx, { quoteIds, priced, ...said }) =>
    acceptClub(ctx, { ...said, quoteIds: quoteIds as readonly string[] as readonly QuoteId[], pricedIds: priced }),
  words: say,
  refused: async ({ code }, values, { clubId: id }) => {
    if (code === "other-pairs-priced") await showTicked(pageOf(id), values, "changed");
  },
  done: async ({ orderId }, { clubId: id }) => {
    await forgetTyped(pageOf(id));
    redirect(`/shop/orders/${orderId}`);
  },
});
