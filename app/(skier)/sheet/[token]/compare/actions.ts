"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { linkContext } from "@/app/_server/request";
import { takePair } from "@/app/_server/take-pair";
import refusalWords from "@/content/copy/refusals.json";
import { wordsFor } from "@/lib/schemas";
import type { SheetId } from "@/lib/services";
import { linkField, withNumbers } from "../../../form-schemas";

const schema = withNumbers(
  ["version"],
  z.strictObject({
    ...linkField,
    candidate: z.string().min(1).max(60),
    other: z.string().max(400),
    version: z.number().int().min(0),
  }),
);

/** Takes a compared pair onto the sheet and goes back to it. */
export const takeOntoSheet = formAction({
  name: "take a compared pair",
  schema,
  context: async ({ token }) => (await linkContext(token, "sheet")).ctx,
  run: async (ctx, { token, ...input }) => {
    const { subject } = await linkContext(token, "sheet");
    return takePair(ctx, { ...input, sheetId: subject.id as SheetId });
  },
  words: (refusal) => wordsFor(refusal, refusalWords),
  done: (_saved, { token }) => redirect(`/sheet/${token}`),
});
