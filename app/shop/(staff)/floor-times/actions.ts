"use server";
/** The owner's yes to what the floor's own record teaches. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { approveFloorBook } from "#services";

export const approve = formAction({
  name: "approve a book for the floor",
  schema: z.strictObject({ fingerprint: z.string().max(80), reason: z.string().max(2000) }),
  context: () => staffContext("/shop/floor-times"),
  run: approveFloorBook,
  words: say,
  done: () => revalidatePath("/shop/floor-times"),
});
