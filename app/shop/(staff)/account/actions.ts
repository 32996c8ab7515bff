"use server";
/** One's own password. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { newStaffSchema, signInSchema } from "#schemas";
import { changeMyPassword } from "#services";

export const changePassword = formAction({
  name: "change one's own password",
  schema: z.strictObject({
    currentPassword: signInSchema.shape.password,
    password: newStaffSchema.shape.password,
  }),
  context: () => staffContext("/shop/account"),
  run: (ctx, { currentPassword, password }) => changeMyPassword(ctx, { current: currentPassword, password }),
  words: say,
  done: () => revalidatePath("/shop", "layout"),
});
