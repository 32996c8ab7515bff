"use server";
/** What staff do with a quote. Each: parse, who asks, one use case, words. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, tickedField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { tellLink } from "#app/shop/told-link.ts";
import { acceptQuoteSchema, honourOldPriceSchema, withdrawSchema } from "#schemas";
import { idOf } from "#schemas/ids";
import { acceptQuote, honourOldPrice, type QuoteId, repriceQuote, withdrawQuote } from "#services";

const context = () => staffContext();
const quoteField = { quoteId: idField.transform((id) => idOf("quote", id)) };
const show = (_value: unknown, { quoteId }: { readonly quoteId: QuoteId }) => revalidatePath(`/shop/quotes/${quoteId}`);

export const makeOrder = formAction({
  name: "make a quote an order",
  schema: z.strictObject({
    ...quoteField,
    name: acceptQuoteSchema.shape.name,
    how: z.enum(["phone", "counter"], { error: "How: on the telephone or at the counter" }),
    told: tickedField("Terms and price"),
  }),
  context,
  run: async (ctx, { quoteId, name, how }) => {
    const made = await acceptQuote(ctx, { quoteId, name, how });
    // Somebody was first: the page shows the one order there is.
    if (!made.ok && made.refusal.code === "quote-already-accepted") redirect(`/shop/quotes/${quoteId}?late=yes`);
    return made;
  },
  words: say,
  done: async ({ orderId, token }) => {
    await tellLink("order", orderId, token);
    redirect(`/shop/orders/${orderId}`);
  },
});

export const priceAnew = formAction({
  name: "price a quote anew",
  schema: z.strictObject(quoteField),
  context,
  run: repriceQuote,
  words: say,
  done: async ({ quote, token }) => {
    await tellLink("quote", quote.quoteId, token);
    redirect(`/shop/quotes/${quote.quoteId}`);
  },
});

export const honour = formAction({
  name: "honour an old price",
  schema: honourOldPriceSchema.extend(quoteField),
  context,
  run: honourOldPrice,
  words: say,
  done: show,
});

export const withdraw = formAction({
  name: "withdraw a quote",
  schema: withdrawSchema.extend(quoteField),
  context,
  run: withdrawQuote,
  words: say,
  done: show,
});
