/** The choices that an edit may change, as the edit's form sends them. */
import { z } from "zod";
import type { SheetChoices } from "@/lib/engine/assessment";
import { choiceFields } from "@/lib/schemas";

/** Reinforcements travel as one text, separated by commas. */
export const editFields = {
  lengthCm: z.string().transform(Number).pipe(choiceFields.lengthCm),
  flexRatio: z
    .string()
    .transform((text) => Number(text.replace(",", ".")))
    .pipe(choiceFields.flexRatio),
  core: choiceFields.core,
  reinforcements: z
    .union([z.string(), z.array(z.string())])
    .optional()
    .transform((sent): readonly string[] => (typeof sent === "string" ? sent.split(",").filter(Boolean) : (sent ?? [])))
    .pipe(choiceFields.reinforcements),
};

export const editQuery = z.object({ ...editFields, approve: z.string().optional() });

type EditFields = Pick<z.output<typeof editQuery>, keyof typeof editFields>;

export function choicesOf({ lengthCm, flexRatio, core, reinforcements }: EditFields): SheetChoices {
  return { lengthCm, flexRatio, core, reinforcements };
}
