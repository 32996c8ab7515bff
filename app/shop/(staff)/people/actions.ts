"use server";
/** What an owner does about people, devices and screens. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, textField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { requestDevice, staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { tellLink } from "#app/shop/told-link.ts";
import { newStaffSchema, placeNameSchema } from "#schemas";
import {
  endSignIn,
  endSignInsOf,
  endWall,
  enrolDevice,
  giveFloorCode,
  givePassword,
  letGo,
  openWall,
  releaseDevice,
  takeOn,
} from "#services";

const home = "/shop/people";
const context = () => staffContext(home);
const anew = () => revalidatePath("/shop", "layout");
const person = { staffId: idField };

export const takeSomebodyOn = formAction({
  name: "take somebody on",
  schema: newStaffSchema,
  context,
  run: takeOn,
  words: say,
  done: anew,
});

export const setPassword = formAction({
  name: "set somebody's password",
  schema: z.strictObject({ ...person, password: newStaffSchema.shape.password }),
  context,
  run: givePassword,
  words: say,
  done: anew,
});

export const setCode = formAction({
  name: "set a short code",
  schema: z.strictObject({ ...person, passcode: textField("Short code", 20) }),
  context,
  run: (ctx, { staffId, passcode }) => giveFloorCode(ctx, { staffId, code: passcode }),
  words: say,
  done: anew,
});

export const takeCode = formAction({
  name: "take a short code away",
  schema: z.strictObject(person),
  context,
  run: (ctx, { staffId }) => giveFloorCode(ctx, { staffId, code: null }),
  words: say,
  done: anew,
});

export const letSomebodyGo = formAction({
  name: "let somebody go",
  schema: z.strictObject({ ...person, sure: z.literal("on", { error: "Please tick, it cannot be taken back" }) }),
  context,
  run: letGo,
  words: say,
  done: () => {
    anew();
    redirect(home);
  },
});

export const endOne = formAction({
  name: "end a sign-in",
  schema: z.strictObject({ sessionId: idField }),
  context,
  run: endSignIn,
  words: say,
  done: anew,
});

export const endAll = formAction({
  name: "end somebody's sign-ins",
  schema: z.strictObject(person),
  context,
  run: endSignInsOf,
  words: say,
  done: anew,
});

export const enrolThisDevice = formAction({
  name: "enrol a device",
  schema: z.strictObject({ name: placeNameSchema }),
  context,
  run: async (ctx, { name }) => enrolDevice(ctx, { name, deviceToken: (await requestDevice()).token }),
  words: say,
  done: anew,
});

export const giveDeviceBack = formAction({
  name: "give a device back",
  schema: z.strictObject({ deviceId: idField }),
  context,
  run: releaseDevice,
  words: say,
  done: anew,
});

export const openScreen = formAction({
  name: "open a screen",
  schema: z.strictObject({ name: placeNameSchema }),
  context,
  run: openWall,
  words: say,
  done: async ({ wallId, token }) => {
    await tellLink("wall", wallId, token);
    anew();
  },
});

export const endScreen = formAction({
  name: "end a screen",
  schema: z.strictObject({ wallId: idField }),
  context,
  run: endWall,
  words: say,
  done: anew,
});
