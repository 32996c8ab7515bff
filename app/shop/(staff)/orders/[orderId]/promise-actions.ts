"use server";
/** Moving a promised day, fixing a hard date, taking a press slot away. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, textField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { isoDate } from "#engine/units";
import { idOf } from "#schemas/ids";
import { approveHardDate, changePromise, releasePressSlot } from "#services";

const order = { orderId: idField.transform((id) => idOf("order", id)), version: wholeField };
const day = (label: string) =>
  z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, { error: `${label}: a day is needed` })
    .transform((text) => isoDate(text));
const text = (label: string) => textField(label, 500);

export const movePromise = formAction({
  name: "move a promise",
  schema: z.strictObject({ ...order, on: day("New day"), reason: text("Reason") }),
  context: () => staffContext(),
  run: changePromise,
  words: say,
  done: (_value, { orderId }) => revalidatePath(`/shop/orders/${orderId}`),
});

export const fixHardDate = formAction({
  name: "approve a hard date",
  schema: z.strictObject({
    ...order,
    revision: wholeField,
    on: day("The day"),
    planB: text("Plan B"),
    overrideReason: text("Reason")
      .optional()
      .transform((reason) => reason ?? ""),
  }),
  context: () => staffContext(),
  run: approveHardDate,
  words: say,
  done: (_value, { orderId }) => redirect(`/shop/orders/${orderId}`),
});

export const takePressSlot = formAction({
  name: "take a press slot away",
  schema: z.strictObject({
    orderId: order.orderId,
    pairId: idField.transform((id) => idOf("pair", id)),
    version: wholeField,
    reason: text("Reason"),
  }),
  context: () => staffContext(),
  run: releasePressSlot,
  words: say,
  done: (_value, { orderId }) => revalidatePath(`/shop/orders/${orderId}`),
});
