"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { linkContext } from "@/app/_server/request";
import { pickedIn } from "@/app/_ui/picks";
import refusalWords from "@/content/copy/refusals.json";
import { acceptQuoteSchema, wordsFor } from "@/lib/schemas";
import { acceptClub, type ClubId, type QuoteId } from "@/lib/services";
import { linkField, withTicks } from "../form-schemas";

/** The customer takes some or all of the offer. */
export const accept = formAction({
  name: "accept a club's offer",
  schema: withTicks(
    ["acceptsTerms", "sawWithdrawalNotice"],
    z.looseObject({ ...acceptQuoteSchema.shape, ...linkField }),
  ),
  context: async ({ token }) => (await linkContext(token, "club")).ctx,
  run: async (ctx, { token, name, ...ticks }) => {
    const { subject } = await linkContext(token, "club");
    return acceptClub(ctx, {
      clubId: subject.id as ClubId,
      how: "online",
      name,
      quoteIds: pickedIn<QuoteId>(ticks),
    });
  },
  words: (refusal) => wordsFor(refusal, refusalWords),
  done: (order) => redirect(`/pair/${order.token}`),
});
