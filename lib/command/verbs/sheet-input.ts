/** A sheet as the pages keep it, assessed: what `price` and `parts` are made of. */
import { z } from "zod";
import { type Assessment, assessSheet } from "#engine/assessment";
import { accept, type IsoDate, type Outcome, refuse } from "#engine/units";
import { partialAnswersSchema, sheetChoicesSchema } from "#schemas";
import { pricedCatalogue } from "../catalogue";

export const sheetInput = z.strictObject({
  answers: partialAnswersSchema.default({}),
  choices: sheetChoicesSchema,
  priceBook: z.string().min(1).exactOptional(),
});

export function assessed(input: z.infer<typeof sheetInput>, today: IsoDate): Outcome<Assessment> {
  const catalog = pricedCatalogue(input.priceBook, today);
  if (!catalog.ok) return catalog;
  const assessment = assessSheet({ answers: input.answers, choices: input.choices }, catalog.value);
  if (assessment.spec !== null) return accept(assessment);
  const last = assessment.saleBlockedBy.find(({ code }) => code !== "missing-answer") ?? assessment.saleBlockedBy[0];
  return refuse(last ?? { code: "missing-answer", path: "choices.model" });
}
