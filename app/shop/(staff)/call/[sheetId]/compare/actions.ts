"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, takenPairFields } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { takePair } from "#app/_server/take-pair.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";

const schema = z.strictObject({ sheetId: idField.transform((id) => idOf("sheet", id)), ...takenPairFields });

/** Puts a compared pair onto the caller's sheet and goes back to the call. */
export const putOnSheet = formAction({
  name: "put a compared pair on a sheet",
  schema,
  context: () => staffContext(),
  run: takePair,
  words: say,
  done: (_saved, { sheetId }) => redirect(`/shop/call/${sheetId}`),
});
