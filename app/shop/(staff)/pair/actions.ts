"use server";
/** Ticks on the floor. Each: parse, who asks, one use case, words. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { idField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { finishOperation, startOperation, undoOperation } from "#services";

const context = () => staffContext();
const tick = {
  serial: z.string().max(40),
  operationId: idField.transform((id) => idOf("operation", id)),
  version: wholeField,
};
const show = (_value: unknown, { serial }: { readonly serial: string }) => revalidatePath(`/shop/pair/${serial}`);

export const start = formAction({
  name: "start an operation",
  schema: z.strictObject({ ...tick, press: idField.optional() }),
  context,
  run: (ctx, { press, ...operation }) => startOperation(ctx, press === undefined ? operation : { ...operation, press }),
  words: say,
  done: show,
});

export const finish = formAction({
  name: "finish an operation",
  schema: z.strictObject(tick),
  context,
  run: finishOperation,
  words: say,
  done: show,
});

export const undo = formAction({
  name: "undo an operation",
  schema: z.strictObject({ ...tick, reason: z.string().max(500) }),
  context,
  run: undoOperation,
  words: say,
  done: show,
});
