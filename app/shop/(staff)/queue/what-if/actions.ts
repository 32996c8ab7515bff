"use server";
/** A question is made so, or a change of the floor is taken back. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { idField, textField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { applyWhatIf, withdrawChange } from "#services";
import { whatIfSchema } from "./read-input";

const context = () => staffContext("/shop/queue/what-if");
const show = () => revalidatePath("/shop/queue/what-if");

export const apply = formAction({
  name: "apply a what-if",
  schema: z.intersection(whatIfSchema, z.object({ changeId: idField, reason: textField("Reason", 2000) })),
  context,
  run: (ctx, { changeId, reason, ...whatIf }) => applyWhatIf(ctx, { changeId, reason, whatIf }),
  words: say,
  done: show,
});

export const withdraw = formAction({
  name: "withdraw a change of the floor",
  schema: z.strictObject({
    floorChangeId: idField.transform((id) => idOf("floor-change", id)),
    reason: textField("Reason", 2000),
  }),
  context,
  run: withdrawChange,
  words: say,
  done: show,
});
