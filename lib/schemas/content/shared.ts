/** Pieces that the content files share. Every file says what it is in `about`; a row may name its own `source`. */
import { z } from "zod";
import { type ModelUse, modelUses } from "#engine/configuration";
import { type IsoDate, isoDate } from "#engine/units";
import { catalogId, oneOf, textIn } from "../fields";

export const about = textIn("about", 10, 2000);
export const source = textIn("source", 3, 500);
export const label = textIn("label", 1, 120);
export const sentence = textIn("text", 1, 600);
export const id = catalogId("id");

export const positive = z.number().positive();
export const notNegative = z.number().nonnegative();
export const wholeCents = z.int().nonnegative();
export const basisPoints = z.int().min(0).max(10_000);

export const modelUseSchema = oneOf("use", modelUses) satisfies z.ZodType<ModelUse>;

/** A calendar day, `YYYY-MM-DD`. */
export const isoDateSchema = z.iso.date().transform((text): IsoDate => isoDate(text));

/** Refuses a list in which two rows have the same key. */
export function distinctBy<T>(key: (row: T) => string | number) {
  return (rows: readonly T[], context: z.RefinementCtx) => {
    const seen = new Set<string | number>();
    for (const [index, row] of rows.entries()) {
      const own = key(row);
      if (seen.has(own)) context.addIssue({ code: "custom", path: [index], message: `"${own}" stands twice` });
      seen.add(own);
    }
  };
}
