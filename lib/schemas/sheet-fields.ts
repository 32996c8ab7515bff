/**
 * A sheet is saved field by field. Every field has a path and a schema of its own: answers.KEY, typed.height, typed.mass,
 * said.height, said.mass (the very words in the box, also those that nobody could read), choices.KEY, contact.KEY, asked.KEY,
 * notes. Null clears a field.
 */
import { z } from "zod";
import { accept, type Outcome, refuse } from "#engine/units";
import { answerFields, typedHeightSchema, typedMassSchema } from "./answers";
import { choiceFields, discountRequestSchema } from "./choices";
import { contactFields } from "./contact";
import { oneOf, textIn } from "./fields";

const { typed: _typed, ...answersAsked } = answerFields;
/** Characters of a measure in its own words. */
const SAID_LENGTH = 60;

const asked = oneOf("Question", ["not asked", "refused"]);

const byPath: ReadonlyMap<string, z.ZodType> = new Map<string, z.ZodType>([
  ...Object.entries(answersAsked).map(([key, schema]) => [`answers.${key}`, schema] as const),
  ...Object.keys(answersAsked).map((key) => [`asked.${key}`, asked] as const),
  ...Object.entries(choiceFields).map(([key, schema]) => [`choices.${key}`, schema] as const),
  ...Object.entries(contactFields).map(([key, schema]) => [`contact.${key}`, schema] as const),
  // Who approved a discount is whoever saves it: not a field that anybody types.
  ["choices.discounts", z.array(discountRequestSchema).max(1, { error: "Discounts do not stack: at most 1" })],
  ["typed.height", typedHeightSchema],
  ["typed.mass", typedMassSchema],
  ["said.height", textIn("Height", 1, SAID_LENGTH)],
  ["said.mass", textIn("Mass", 1, SAID_LENGTH)],
  ["notes", textIn("Notes", 0, 4000)],
]);

/** Paths of the answers, in the order in which they are asked. */
export const answerPaths: readonly string[] = Object.keys(answersAsked).map((key) => `answers.${key}`);

export type InvalidField = {
  readonly code: "invalid-field";
  readonly path: string;
  readonly value: unknown;
  readonly message: string;
};

/** The value as it will be kept, or which field is wrong, what was given and what is allowed. */
export function checkSheetField(path: string, value: unknown): Outcome<unknown, InvalidField> {
  const schema = byPath.get(path);
  if (schema === undefined)
    return refuse({ code: "invalid-field", path, value, message: `there is no field "${path}"` });
  if (value === null) return accept(null);
  const parsed = schema.safeParse(value);
  if (parsed.success) return accept(parsed.data);
  const issue = parsed.error.issues[0];
  const inner = [path, ...(issue?.path ?? []).map(String)].join(".");
  return refuse({ code: "invalid-field", path: inner, value, message: issue?.message ?? "not a value for this field" });
}

/** A whole patch at once: every value is checked before any is kept. */
export const sheetPatchSchema = z
  .strictObject({
    patch: z.record(z.string().max(60), z.unknown()),
    baseVersion: z.int({ error: "baseVersion must be a whole number" }).min(0),
  })
  .superRefine(({ patch }, context) => {
    for (const [path, value] of Object.entries(patch)) {
      const checked = checkSheetField(path, value);
      if (checked.ok) continue;
      context.addIssue({ code: "custom", path: ["patch", checked.refusal.path], message: checked.refusal.message });
    }
  });
