"use server";
/** The yes to the cautions. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { sayCautionsRead } from "#services";

export const sayYes = formAction({
  name: "say yes to the cautions",
  schema: z.strictObject({ textsHash: z.string().max(64) }),
  context: () => staffContext(),
  run: sayCautionsRead,
  words: say,
  done: () => revalidatePath("/shop", "layout"),
});
