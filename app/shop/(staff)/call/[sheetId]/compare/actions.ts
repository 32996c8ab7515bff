"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { staffContext } from "@/app/_server/request";
import { takePair } from "@/app/_server/take-pair";
import type { SheetId } from "@/lib/services";
import { idField } from "../../../../fields";
import { say } from "../../../../say";

const schema = z.strictObject({
  sheetId: idField.transform((id) => id as SheetId),
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
