"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { linkContext } from "@/app/_server/request";
import refusalWords from "@/content/copy/refusals.json";
import { acceptQuoteSchema, idsField, wordsFor } from "@/lib/schemas";
import { acceptClub, type ClubId, type QuoteId } from "@/lib/services";
import { linkField, withTicks } from "../form-schemas";

/** The customer takes some or all of the offer. */
export const accept = formAction({
  name: "accept a club's offer",
  schema: withTicks(
    ["acceptsTerms", "sawWithdrawalNotice"],
    z.object({ ...acceptQuoteSchema.shape, ...linkField, quoteIds: idsField }),
  ),
  context: async ({ token }) => (await linkContext(token, "club")).ctx,
  run: async (ctx, { token, name, quoteIds }) => {
    const { subject } = await linkContext(token, "club");
    return acceptClub(ctx, {
      clubId: subject.id as ClubId,
      how: "online",
      name,
      quoteIds: quoteIds as readonly string[] as readonly QuoteId[],
    });
  },
  words: (refusal) => wordsFor(refusal, refusalWords),
  done: (order) => redirect(`/pair/${order.token}`),
});
