"use server";
import { redirect } from "next/navigation";
import { formAction } from "#app/_server/form-action.ts";
import { requestAddress, requestContext, signInPath } from "#app/_server/request.ts";
import { firstOwnerSchema } from "#schemas";
import { becomeFirstOwner } from "#services";
import { say } from "../say";

/** The code from the terminal makes the first owner, who then signs in like everybody. */
export const becomeOwner = formAction({
  name: "make the first owner",
  schema: firstOwnerSchema,
  context: () => requestContext(),
  run: async (ctx, { passcode, ...person }) =>
    becomeFirstOwner(ctx, { ...person, code: passcode, address: await requestAddress() }),
  words: say,
  done: () => redirect(`${signInPath}?first=yes`),
});
