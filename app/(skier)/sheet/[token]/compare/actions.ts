"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { linkField, takenPairFields } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { linkContext } from "#app/_server/request.ts";
import { takePair } from "#app/_server/take-pair.ts";
import refusalWords from "#content/copy/refusals.json";
import { wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";

/** Takes a compared pair onto the sheet and goes back to it. */
export const takeOntoSheet = formAction({
  name: "take a compared pair",
  schema: z.strictObject({ ...linkField, ...takenPairFields }),
  context: async ({ token }) => (await linkContext(token, "sheet")).ctx,
  run: async (ctx, { token, ...input }) => {
    const { subject } = await linkContext(token, "sheet");
    return takePair(ctx, { ...input, sheetId: idOf("sheet", subject.id) });
  },
  words: (refusal) => wordsFor(refusal, refusalWords),
  done: (_saved, { token }) => redirect(`/sheet/${token}`),
});
