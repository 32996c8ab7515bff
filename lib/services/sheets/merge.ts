/** Field by field merge: what was typed over an older version is kept unless the very same field changed meanwhile. */

import { canonicalJson } from "#catalog";
import type { FieldEntry, SheetFields } from "#data/sheets";
import { heightCm, massKg, type TypedHeight, type TypedMass } from "#engine/units";
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
  for (const [path, value] of Object.entries(withBothForms(patch))) {
    const stored = fields[path];
    const changedMeanwhile = stored !== undefined && stored.version > baseVersion;
    if (changedMeanwhile && !isSame(stored.value, value)) {
      conflicts.push({ path, yours: value, theirs: stored.value, by: stored.by });
    } else {
      merged[path] = { value, ...stamp };
      savedPaths.push(path);
    }
  }
  return { fields: merged, savedPaths, conflicts };
}

/** A measure is kept as typed and in SI; whichever was sent, the other follows. */
function withBothForms(patch: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const both: Record<string, unknown> = { ...patch };
  const height = patch["typed.height"] as TypedHeight | null | undefined;
  if (height !== undefined) both["answers.heightCm"] = height === null ? null : heightCm(height);
  else if ("answers.heightCm" in patch) {
    const cm = patch["answers.heightCm"] as number | null;
    both["typed.height"] = cm === null ? null : { unit: "cm", cm };
  }
  const mass = patch["typed.mass"] as TypedMass | null | undefined;
  if (mass !== undefined) both["answers.massKg"] = mass === null ? null : massKg(mass);
  else if ("answers.massKg" in patch) {
    const kg = patch["answers.massKg"] as number | null;
    both["typed.mass"] = kg === null ? null : { unit: "kg", kg };
  }
  return both;
}

/** Equal as JSON values; the order of an object's members does not matter. */
function isSame(a: unknown, b: unknown): boolean {
  return canonicalJson(a) === canonicalJson(b);
}
