/**
 * Fields that every form and file shares. A message names the field, the value and the limit, so that it can stand beside
 * the field as it is.
 */
import { z } from "zod";
import { ownCoreOf } from "#engine/configuration";

/** A value as it may stand in a message. */
function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  return typeof value === "string" ? `"${value.slice(0, 60)}"` : JSON.stringify(value);
}

export interface NumberField {
  readonly label: string;
  readonly unit?: string;
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
}

/** A finite number within limits, in the unit of the field's name. */
export function numberIn({ label, unit = "", min, max, whole = false }: NumberField) {
  const withUnit = (value: number) => (unit === "" ? `${value}` : `${value} ${unit}`);
  const base = z
    .number({
      error: (issue) => `${label} must be a number from ${min} to ${withUnit(max)}, not ${shown(issue.input)}`,
    })
    .min(min, { error: (issue) => `${label} ${withUnit(Number(issue.input))} is below ${withUnit(min)}` })
    .max(max, { error: (issue) => `${label} ${withUnit(Number(issue.input))} is above ${withUnit(max)}` });
  if (!whole) return base;
  return base.refine(Number.isInteger, { error: (issue) => `${label} ${shown(issue.input)} must be a whole number` });
}

/** A line of text without leading or trailing space. */
export function textIn(label: string, min: number, max: number) {
  return z
    .string({ error: (issue) => `${label} must be text, not ${shown(issue.input)}` })
    .trim()
    .min(min, { error: () => (min === 1 ? `${label} is missing` : `${label} needs at least ${min} characters`) })
    .max(max, { error: (issue) => `${label} has ${String(issue.input).length} characters; at most ${max} fit` });
}

/** One of a few words. */
export function oneOf<const T extends readonly [string, ...string[]]>(label: string, values: T) {
  return z.enum(values, { error: (issue) => `${label} ${shown(issue.input)} is not one of ${values.join(", ")}` });
}

export function yesOrNo(label: string) {
  return z.boolean({ error: (issue) => `${label} must be true or false, not ${shown(issue.input)}` });
}

/** A word that names a thing of the catalogue: lower case, digits and hyphens. */
/** A blend of the catalogue, or a core of one's own that says its woods: "own:aspen.ash.aspen.aspen". */
export function coreId(label: string) {
  return z.union(
    [
      catalogId(label),
      z
        .string()
        .max(120)
        .refine((text) => ownCoreOf(text) !== null),
    ],
    {
      error: (issue) => `${label} ${shown(issue.input)} is no core: a name of the list, or own: and four woods`,
    },
  );
}

export function catalogId(label: string) {
  return z
    .string({ error: (issue) => `${label} must be a word, not ${shown(issue.input)}` })
    .max(60, { error: () => `${label} is longer than 60 characters` })
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, {
      error: (issue) => `${label} ${shown(issue.input)} must be lower-case letters, digits and single hyphens`,
    });
}

export const percent = (label: string) => numberIn({ label, unit: "%", min: 0, max: 100 });

/** Ids of ticked rows, as a form sends them: no field, one text, or several under one name. */
export const idsField = z
  .union([z.string().max(60), z.array(z.string().max(60)).max(200)])
  .optional()
  .transform((sent) => (typeof sent === "string" ? [sent] : (sent ?? [])));

/** Ids in one hidden field, with commas between them. */
export const idListField = z
  .string()
  .max(200 * 61)
  .transform((sent) => sent.split(",").filter((id) => id !== ""));
