"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { formAction } from "#app/_server/form-action.ts";
import {
  keepSession,
  requestAddress,
  requestContext,
  requestDevice,
  requestHost,
  requestTime,
} from "#app/_server/request.ts";
import { signIn, signInByCode } from "#auth";
import { floorSignInSchema, signInSchema } from "#schemas";
import { say } from "../say";
import { safeBackPath } from "./back-path";

const back = z.string().max(300).optional();

export const enter = formAction({
  name: "sign in",
  schema: signInSchema.extend({ back }),
  context: () => requestContext(),
  run: async (_ctx, { email, password }) => {
    const [address, host, device] = await Promise.all([requestAddress(), requestHost(), requestDevice()]);
    return signIn({ email, password, address, host, device }, requestTime());
  },
  words: say,
  done: async (session, input) => {
    await keepSession(session);
    redirect(safeBackPath(input.back));
  },
});

export const enterOnFloor = formAction({
  name: "sign in on the floor",
  schema: floorSignInSchema.extend({ back }),
  context: () => requestContext(),
  run: async (_ctx, { staffId, passcode }) =>
    signInByCode({ staffId, code: passcode, device: await requestDevice() }, requestTime()),
  words: say,
  done: async (session, input) => {
    await keepSession(session);
    redirect(safeBackPath(input.back));
  },
});
