/** The choices that an edit may change, as the edit's form sends them. */
import { z } from "zod";
import type { SheetChoices } from "#engine/assessment";
import { textForPeople } from "#engine/units";
import { choiceFields } from "#schemas";

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

/** The flex as the form shows it. */
export const flexText = (flexRatio: number) => textForPeople(flexRatio, 3);

/** A flex that was left as shown is the exact one still. */
export function withExactFlex<T extends Pick<EditFields, "flexRatio">>(asked: T, exact: number): T {
  return flexText(asked.flexRatio) === flexText(exact) ? { ...asked, flexRatio: exact } : asked;
}

export function choicesOf({ lengthCm, flexRatio, core, reinforcements }: EditFields): SheetChoices {
  return { lengthCm, flexRatio, core, reinforcements };
}
