"use server";
/** Something broke: said, decided, over. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { idField, textField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { chooseOption, closeIncident, reportBreakdown } from "#services";
import { breakdownSchema } from "./read-input";

const home = "/shop/queue/breakdown";
const incidentId = idField.transform((id) => idOf("incident", id));

export const report = formAction({
  name: "report a breakdown",
  schema: z.intersection(breakdownSchema, z.object({ reportId: idField, note: textField("Note", 2000) })),
  context: () => staffContext(home),
  run: (ctx, { reportId, note, ...breakdown }) => reportBreakdown(ctx, { reportId, note, breakdown }),
  words: say,
  done: (incident) => redirect(`${home}/${incident.incidentId}`),
});

export const choose = formAction({
  name: "choose a way on",
  schema: z.strictObject({
    incidentId,
    version: wholeField,
    option: z.string().max(60),
    reason: textField("Reason", 2000),
  }),
  context: ({ incidentId: id }) => staffContext(`${home}/${id}`),
  run: chooseOption,
  words: say,
  done: (incident) => revalidatePath(`${home}/${incident.incidentId}`),
});

export const close = formAction({
  name: "close an incident",
  schema: z.strictObject({ incidentId, version: wholeField }),
  context: ({ incidentId: id }) => staffContext(`${home}/${id}`),
  run: closeIncident,
  words: say,
  done: (incident) => revalidatePath(`${home}/${incident.incidentId}`),
});
