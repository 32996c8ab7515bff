"use server";
/** A drafted letter is sent or dropped by a person. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { idField, textField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { dropNotice, sendLetterAgain, sendNotice } from "#services";

const noticeId = idField.transform((id) => idOf("notice", id));
const context = () => staffContext("/shop/notices");
const show = () => revalidatePath("/shop/notices");

export const send = formAction({
  name: "send a letter",
  schema: z.strictObject({ noticeId, version: wholeField, body: textField("Letter", 10_000) }),
  context,
  run: sendNotice,
  words: say,
  done: show,
});

export const drop = formAction({
  name: "drop a letter",
  schema: z.strictObject({ noticeId, version: wholeField, reason: textField("Reason", 2000) }),
  context,
  run: dropNotice,
  words: say,
  done: show,
});

export const again = formAction({
  name: "send a letter again",
  schema: z.strictObject({ letterId: idField }),
  context,
  run: sendLetterAgain,
  words: say,
  done: show,
});
