"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { linkField, withTicks } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { linkContext } from "#app/_server/request.ts";
import refusalWords from "#content/copy/refusals.json";
import type { Refusal } from "#engine/units";
import { acceptQuoteSchema, requestChangeSchema, wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { acceptQuote, orderLinkOfQuote, repriceQuote, requestChange } from "#services";

const words = (refusal: Refusal) => wordsFor(refusal, refusalWords);

async function quoteBehind(token: string) {
  const { ctx, subject } = await linkContext(token, "quote");
  return { ctx, quoteId: idOf("quote", subject.id) };
}
const context = async ({ token }: { readonly token: string }) => (await quoteBehind(token)).ctx;

export const accept = formAction({
  name: "accept a quote",
  schema: withTicks(["acceptsTerms", "sawWithdrawalNotice"], acceptQuoteSchema.extend(linkField)),
  context,
  run: async (ctx, input) =>
    acceptQuote(ctx, { quoteId: (await quoteBehind(input.token)).quoteId, how: "online", name: input.name }),
  words,
  done: (order) => redirect(`/pair/${order.token}`),
});

export const askChange = formAction({
  name: "ask for a change",
  schema: requestChangeSchema.extend(linkField),
  context,
  run: async (ctx, { token, note }) => requestChange(ctx, { quoteId: (await quoteBehind(token)).quoteId, note }),
  words,
  done: (_quote, { token }) => revalidatePath(`/quote/${token}`),
});

export const reprice = formAction({
  name: "re-price a quote",
  schema: z.strictObject(linkField),
  context,
  run: async (ctx, { token }) => repriceQuote(ctx, { quoteId: (await quoteBehind(token)).quoteId }),
  words,
  done: (made) => redirect(`/quote/${made.token}`),
});

export const toOrder = formAction({
  name: "open the order of a quote",
  schema: z.strictObject(linkField),
  context,
  run: async (ctx, { token }) => orderLinkOfQuote(ctx, { quoteId: (await quoteBehind(token)).quoteId }),
  words,
  done: (link) => redirect(`/pair/${link.token}`),
});
