"use server";
/** Actions of every page of the shop: leaving, and a new private link. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { endSession, signInPath, staffContext } from "#app/_server/request.ts";
import { reissueLink, renewLink, revokeLink } from "#services";
import { say } from "./say";
import { tellLink } from "./told-link";

export async function leave(): Promise<void> {
  await endSession();
  redirect(`${signInPath}?left=yes`);
}

const linked = z.strictObject({ kind: z.enum(["sheet", "answers", "quote", "club", "order"]), id: idField });

export const newPrivateLink = formAction({
  name: "make a new private link",
  schema: linked,
  context: () => staffContext(),
  run: reissueLink,
  words: say,
  done: async ({ token }, { kind, id }) => {
    await tellLink(kind, id, token);
    revalidatePath("/shop", "layout");
  },
});

export const closePrivateLinks = formAction({
  name: "close private links",
  schema: linked,
  context: () => staffContext(),
  run: revokeLink,
  words: say,
  done: () => revalidatePath("/shop", "layout"),
});

export const renewPrivateLinks = formAction({
  name: "renew private links",
  schema: linked,
  context: () => staffContext(),
  run: renewLink,
  words: say,
  done: () => revalidatePath("/shop", "layout"),
});
