"use server";
/** A flood's orders are called off at once, and the doors' budgets begun anew. */
import { revalidatePath } from "next/cache";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { cancelOrderSchema, idsField, releaseBudgetsSchema } from "#schemas";
import { idOf } from "#schemas/ids";
import { releaseBudgets, releaseUnconfirmed } from "#services";

const page = "/shop/confirmations";
const context = () => staffContext(page);
const show = () => revalidatePath(page);

export const release = formAction({
  name: "call off orders nobody stands behind",
  schema: cancelOrderSchema.extend({ orderIds: idsField }),
  context,
  run: (ctx, { orderIds, reason }) =>
    releaseUnconfirmed(ctx, { reason, orderIds: orderIds.map((id) => idOf("order", id)) }),
  words: say,
  done: show,
});

export const beginAnew = formAction({
  name: "begin budgets anew",
  schema: releaseBudgetsSchema.extend({ doors: idsField }),
  context,
  run: (ctx, { doors, reason }) => releaseBudgets(ctx, { doors, reason }),
  words: say,
  done: show,
});
