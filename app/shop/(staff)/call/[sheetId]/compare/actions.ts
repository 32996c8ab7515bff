"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { takePair } from "#app/_server/take-pair.ts";
import { idField } from "#app/shop/fields.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";

const schema = z.strictObject({
  sheetId: idField.transform((id) => idOf("sheet", id)),
  candidate: z.string().min(1).max(60),
  other: z.string().max(400),
  version: z
    .string()
    .regex(/^\d{1,9}$/)
    .transform(Number),
});

/** Puts a compared pair onto the caller's sheet and goes back to the call. */
export const putOnSheet = formAction({
  name: "put a compared pair on a sheet",
  schema,
  context: () => staffContext(),
  run: takePair,
  words: say,
  done: (_saved, { sheetId }) => redirect(`/shop/call/${sheetId}`),
});
