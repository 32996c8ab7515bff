"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { forgetTyped, showTicked } from "#app/_server/club-choice.ts";
import { linkField, withTicks } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { type FormState, readForm, typedValues } from "#app/_server/form-state.ts";
import { linkContext } from "#app/_server/request.ts";
import refusalWords from "#content/copy/refusals.json";
import { acceptQuoteSchema, idListField, idsField, wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { acceptClub, type QuoteId } from "#services";

const pageOf = (token: string) => `/club/${encodeURIComponent(token)}`;

/** The customer asks for price and day of some of the offer, or takes them. */
export async function accept(previous: FormState, form: FormData): Promise<FormState> {
  if (form.has("ask")) return showTicked(pageOf(String(form.get("token"))), typedValues(readForm(form)));
  return take(previous, form);
}

const take = formAction({
  name: "accept a club's offer",
  schema: withTicks(
    ["acceptsTerms", "sawWithdrawalNotice"],
    z.object({ ...acceptQuoteSchema.shape, ...linkField, quoteIds: idsField, priced: idListField }),
  ),
  context: async ({ token }) => (await linkContext(token, "club")).ctx,
  run: async (ctx, { token, name, quoteIds, priced }) => {
    const { subject } = await linkContext(token, "club");
    return acceptClub(ctx, {
      clubId: idOf("club", subject.id),
      how: "online",
      name,
      quoteIds: quoteIds as readonly string[] as readonly QuoteId[],
      pricedIds: priced,
    });
  },
  words: (refusal) => wordsFor(refusal, refusalWords),
  refused: async ({ code }, values, { token }) => {
    if (code === "other-pairs-priced") await showTicked(pageOf(token), values, "changed");
  },
  done: async (order, { token }) => {
    await forgetTyped(pageOf(token));
    redirect(`/pair/${order.token}`);
  },
});
