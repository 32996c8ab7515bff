"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import { keepSession, requestAddress, requestContext, requestTime } from "#app/_server/request.ts";
import { signIn } from "#auth";
import { signInSchema } from "#schemas";
import { say } from "../say";
import { safeBackPath } from "./back-path";

export const enter = formAction({
  name: "sign in",
  schema: signInSchema.extend({ back: z.string().max(300).optional() }),
  context: () => requestContext(),
  run: async (_ctx, { email, password }) => signIn({ email, password, address: await requestAddress() }, requestTime()),
  words: say,
  done: async (session, { back }) => {
    await keepSession(session);
    redirect(safeBackPath(back));
  },
});
