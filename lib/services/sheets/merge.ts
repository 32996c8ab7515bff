/** Field by field merge: what was typed over an older version is kept unless the very same field changed meanwhile. */

import { canonicalJson } from "#catalog";
import type { FieldEntry, SheetFields } from "#data/sheets";
import { heightCm, massKg } from "#engine/units";
import { answerFields, typedHeightSchema, typedMassSchema } from "#schemas/answers";
import type { FieldConflict } from "./views";

export interface Merge {
  readonly fields: SheetFields;
  readonly savedPaths: readonly string[];
  readonly conflicts: readonly FieldConflict[];
}

/** Every saved field is stamped with this. */
export interface Stamp {
  readonly version: number;
  readonly by: string;
  readonly at: string;
}

export function mergeFields(
  fields: SheetFields,
  patch: Readonly<Record<string, unknown>>,
  baseVersion: number,
  stamp: Stamp,
): Merge {
  const merged: Record<string, FieldEntry> = { ...fields };
  const savedPaths: string[] = [];
  const conflicts: FieldConflict[] = [];
  for (const [path, value] of Object.entries(withWords(withBothForms(patch), fields))) {
    const stored = fields[path];
    const changedMeanwhile = stored !== undefined && stored.version > baseVersion;
    if (changedMeanwhile && !isSame(stored.value, value)) {
      conflicts.push({ path, yours: value, theirs: stored.value, by: stored.by });
    } else {
      merged[path] = { value, ...stamp };
      savedPaths.push(path);
    }
  }
  return { fields: merged, savedPaths, conflicts: conflicts.filter((each) => isTold(each, conflicts, fields, patch)) };
}

/** A measure stands in three fields; what became of it is told once, by the one that was typed. */
function isTold(
  { path }: FieldConflict,
  all: readonly FieldConflict[],
  fields: SheetFields,
  patch: Readonly<Record<string, unknown>>,
): boolean {
  const typed = measureOf[path];
  if (typed === undefined || !(typed in patch)) return true;
  const isMeasureTold = all.some((each) => each.path === typed);
  return !isMeasureTold && !(path.startsWith("said.") && isSame(fields[typed]?.value ?? null, patch[typed] ?? null));
}

const measureOf: Readonly<Record<string, string>> = {
  "answers.heightCm": "typed.height",
  "answers.massKg": "typed.mass",
  "said.height": "typed.height",
  "said.mass": "typed.mass",
};

/** A measure is kept as typed and in SI; whichever was sent, the other follows. */
function withBothForms(patch: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const both: Record<string, unknown> = { ...patch };
  const height = typedHeightSchema.nullish().parse(patch["typed.height"]);
  if (height !== undefined) both["answers.heightCm"] = height === null ? null : heightCm(height);
  else if ("answers.heightCm" in patch) {
    const cm = answerFields.heightCm.nullable().parse(patch["answers.heightCm"]);
    both["typed.height"] = cm === null ? null : { unit: "cm", cm };
  }
  const mass = typedMassSchema.nullish().parse(patch["typed.mass"]);
  if (mass !== undefined) both["answers.massKg"] = mass === null ? null : massKg(mass);
  else if ("answers.massKg" in patch) {
    const kg = answerFields.massKg.nullable().parse(patch["answers.massKg"]);
    both["typed.mass"] = kg === null ? null : { unit: "kg", kg };
  }
  return both;
}

/** Words that no longer say the measure they stood for are cleared: it came from elsewhere. */
function withWords(patch: Readonly<Record<string, unknown>>, fields: SheetFields): Readonly<Record<string, unknown>> {
  const cleared = (["height", "mass"] as const)
    .filter((key) => `typed.${key}` in patch && !(`said.${key}` in patch) && fields[`said.${key}`]?.value != null)
    .map((key) => [`said.${key}`, null] as const);
  return { ...patch, ...Object.fromEntries(cleared) };
}

/** Equal as JSON values; the order of an object's members does not matter. */
function isSame(a: unknown, b: unknown): boolean {
  return canonicalJson(a) === canonicalJson(b);
}
