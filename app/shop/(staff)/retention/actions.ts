"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { type FormState, readForm } from "#app/_server/form-state.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { retentionSchema } from "#schemas";
import { retentionKinds } from "#schemas/stored/index";
import { applyRetention, setRetention } from "#services";

const page = "/shop/retention";

/** Looks at what typed rules would do, or sets them. */
export async function keep(previous: FormState, form: FormData): Promise<FormState> {
  if (!form.has("ask")) return set(previous, form);
  const typed = readForm(form);
  redirect(`${page}?${new URLSearchParams(retentionKinds.map((kind) => [kind, String(typed[kind] ?? "")]))}`);
}

const set = formAction({
  name: "set how long what is kept",
  schema: retentionSchema,
  context: () => staffContext(page),
  run: (ctx, { reason, ...rules }) => setRetention(ctx, { rules, reason }),
  words: say,
  done: () => redirect(page),
});

export const apply = formAction({
  name: "forget what is due",
  schema: z.strictObject({}),
  context: () => staffContext(page),
  run: (ctx) => applyRetention(ctx),
  words: say,
  done: () => revalidatePath(page),
});
