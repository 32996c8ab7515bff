"use server";
/** What the bench read of one ski. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { idField, wholeField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { readingFields, readingsIn } from "#app/shop/(staff)/measured/reading-fields.ts";
import { say } from "#app/shop/say.ts";
import { idOf } from "#schemas/ids";
import { recordBenchValues } from "#services";

export const measure = formAction({
  name: "record what the bench read",
  schema: z.strictObject({
    serial: z.string().max(40),
    pairId: idField.transform((id) => idOf("pair", id)),
    side: z.enum(["L", "R"]),
    version: wholeField,
    ...readingFields(""),
  }),
  context: () => staffContext(),
  run: async (ctx, fields) => {
    const { pairId, side, version } = fields;
    const kept = await recordBenchValues(ctx, { pairId, side, version, values: readingsIn(fields, "") });
    if (kept.ok) return kept;
    // Beside the field it is about: the use case speaks of "values.massKg".
    const { path, ...refusal } = kept.refusal;
    return { ok: false, refusal: { ...refusal, ...(path ? { path: path.replace(/^values\.?/, "") } : {}) } };
  },
  words: say,
  done: (_value, { serial }) => revalidatePath(`/shop/pair/${serial}`),
});
