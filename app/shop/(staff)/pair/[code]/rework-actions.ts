"use server";
/** Scraps one ski and begins the one in its place. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, textField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { type ReworkFault, reworkFaults } from "#engine/floor";
import { idOf } from "#schemas/ids";
import { startRework } from "#services";

export const startAgain = formAction({
  name: "build one ski again",
  schema: z.strictObject({
    serial: z.string().max(40),
    pairId: idField.transform((id) => idOf("pair", id)),
    version: wholeField,
    side: z.enum(["L", "R"]),
    fault: z.enum(reworkFaults.map(({ id }) => id) as [ReworkFault, ...ReworkFault[]]),
    fromStation: idField,
    location: textField("Where the other ski is parked", 80).refine((text) => text.trim() !== "", {
      error: "Where the other ski is parked is missing.",
    }),
    note: textField("What was found", 500),
  }),
  context: () => staffContext(),
  run: (ctx, { serial: _serial, ...input }) => startRework(ctx, input),
  words: say,
  done: (_value, { serial }) => {
    revalidatePath(`/shop/pair/${serial}`);
    redirect(`/shop/pair/${serial}`);
  },
});
