"use client";
/** A core of one's own: what is said of it beside the drawing where it is laid, and what the ski then weighs and how lively it is. */
import type { EngineCatalog } from "#engine/assessment";
import { blendById, coreIdFor, type OwnCore, type OwnCoreRules, type PairSpec, solveSpec } from "#engine/configuration";
import { skiBehaviour } from "#engine/flex";
import { textForPeople } from "#engine/units";
import { CheckboxField } from "../field";
import { fill } from "../words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly spec: PairSpec;
  readonly rules: OwnCoreRules;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

/** The woods that the pair has now, whoever chose them: changing one starts from there. */
export function woodsOf(spec: PairSpec, catalog: EngineCatalog): OwnCore | null {
  const blend = blendById(catalog.build, spec.core);
  return blend.ok ? { strips: blend.value.strips, isWindowGrade: blend.value.isWindowGrade } : null;
}

export function OwnCoreFields({ sheet, spec, rules, catalog, words }: Props) {
  const now = woodsOf(spec, catalog);
  if (now === null) return null;
  const w = words.core.own;
  const take = (core: OwnCore) => sheet.setChoices({ core: coreIdFor(core, catalog.build) });
  return (
    <fieldset className="mt-4 grid max-w-measure gap-3 border border-rule p-4">
      <legend className="px-1 font-medium">{w.legend}</legend>
      <p className="text-sm text-pencil">{w.lead}</p>
      <CheckboxField
        name="core-window"
        label={w.window}
        checked={now.isWindowGrade}
        onChange={(event) => take({ ...now, isWindowGrade: event.currentTarget.checked })}
      />
      <p className="text-sm text-pencil">{fill(w.rule, { density: rules.leastScrewDensityKgM3 })}</p>
    </fieldset>
  );
}

/** Mass and liveliness of the build on the sheet; the price stands beside the choice, price and date in the bar. */
export function CoreFigures({ spec, catalog, words }: Pick<Props, "spec" | "catalog" | "words">) {
  const solved = solveSpec(spec, catalog.build);
  if (!solved.ok) return null;
  const { build, flexWithPlate } = solved.value;
  const { bendingHz } = skiBehaviour(build, flexWithPlate);
  return (
    <p className="measure max-w-measure text-sm" aria-live="polite">
      {fill(words.core.figures, {
        mass: textForPeople(flexWithPlate.massKg * 2, 2),
        lively: textForPeople(flexWithPlate.springCentreNPerMm / flexWithPlate.massKg, 2),
        tone: textForPeople(bendingHz, 1),
      })}
    </p>
  );
}
