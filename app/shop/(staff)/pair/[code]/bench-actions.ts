"use server";
/** What the bench read of one ski. */
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { formAction } from "@/app/_server/form-action";
import { staffContext } from "@/app/_server/request";
import { type PairId, recordBenchValues } from "@/lib/services";
import { idField, wholeField } from "../../../fields";
import { say } from "../../../say";
import { readingFields, readingsIn } from "../../measured/reading-fields";

export const measure = formAction({
  name: "record what the bench read",
  schema: z.strictObject({
    serial: z.string().max(40),
    pairId: idField.transform((id) => id as PairId),
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
