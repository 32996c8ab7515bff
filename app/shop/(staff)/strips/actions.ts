"use server";
/** The decision on a pair whose strips are short. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, textField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { decideStrips } from "#services";

export const decide = formAction({
  name: "decide on short strips",
  schema: z.strictObject({
    pairId: idField.transform((id) => idOf("pair", id)),
    version: wholeField,
    option: z.string({ error: "Choose a way out." }).min(1, { error: "Choose a way out." }).max(120),
    expectedOn: z.string().max(10).optional(),
    reason: textField("Reason", 500),
  }),
  context: () => staffContext(),
  run: (ctx, { expectedOn, ...input }) =>
    decideStrips(ctx, { ...input, ...(expectedOn === undefined ? {} : { expectedOn }) }),
  words: say,
  done: ({ serial }) => {
    revalidatePath("/shop/strips");
    redirect(`/shop/pair/${serial}`);
  },
});
