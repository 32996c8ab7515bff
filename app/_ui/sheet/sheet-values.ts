/** What a sheet holds by meaning, with the changes of this page laid over what the server said. */
import type { PartialAnswers, SheetChoices } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { TypedMeasures } from "#engine/fit";
import { heightCm, massKg, type TypedHeight, type TypedMass } from "#engine/units";
import type { SaidMeasures, SheetContact, SheetView } from "#services/views";
import type { Patch } from "./unsaved";

export interface SheetValues {
  readonly answers: PartialAnswers;
  readonly typed: TypedMeasures;
  readonly said: SaidMeasures;
  readonly choices: SheetChoices;
  readonly contact: SheetContact;
  readonly asked: SheetView["asked"];
  readonly notes: string | null;
}

export function valuesOf(view: SheetView): SheetValues {
  const { answers, typed, said, choices, contact, asked, notes } = view;
  return { answers, typed, said, choices, contact, asked, notes };
}

/** Puts changes over values. A measure carries its SI value, as on saving; words that no longer say it go. */
export function withPatch(values: SheetValues, patch: Patch): SheetValues {
  const { notes, ...groups } = values;
  const next: Record<string, Record<string, unknown>> = Object.fromEntries(
    Object.entries(groups).map(([key, group]) => [key, { ...group }]),
  );
  for (const [path, value] of Object.entries(patch)) {
    const [group = "", key = ""] = path.split(".");
    setOrDelete(next[group], key, value);
    if (group !== "typed") continue;
    if (key === "height") setOrDelete(next.answers, "heightCm", value && heightCm(value as TypedHeight));
    if (key === "mass") setOrDelete(next.answers, "massKg", value && massKg(value as TypedMass));
    if (!(`said.${key}` in patch)) setOrDelete(next.said, key, null);
  }
  const noted = "notes" in patch ? (patch.notes as string | null) : notes;
  return { ...next, notes: noted } as unknown as SheetValues;
}

function setOrDelete(target: Record<string, unknown> | undefined, key: string, value: unknown): void {
  if (!target) return;
  if (value === null || value === undefined) delete target[key];
  else target[key] = value;
}

/** The assessed spec with the choices made since laid over it, so that a control answers at once. */
export function asChosen(spec: PairSpec | null, choices: SheetChoices): PairSpec | null {
  if (!spec) return null;
  const { destination: _destination, discounts: _discounts, ...chosen } = choices;
  return { ...spec, ...chosen };
}
