/**
 * What a change of the skier or of the length does to the ski. Length, flex ratio and class are fitted anew; springs follow
 * from the ski on the sheet by what its core is solved for, EI ∝ k·L² and so spring ∝ k/L, without solving seven cores at
 * every keystroke. Within 1 % of solved skis (tests) unless a core reaches its limits, which the sheet says by itself.
 */
import { flexClassOf, type Model, type PairSpec, type SolvedSpec } from "#engine/configuration";
import {
  type Ability,
  abilityThatCounts,
  type FitAnswers,
  fitToModel,
  gearKg,
  packKg,
  relativeDeflection,
  STANDARD_GRAVITY,
  springForSameFeel,
} from "#engine/fit";
import { springTestOf } from "#engine/flex";
import type { EngineCatalog } from "./types";

export type WhatIfChange =
  | "now"
  | "mass-up"
  | "mass-down"
  | "ability-up"
  | "ability-down"
  | "length-up"
  | "length-down";

export interface WhatIf {
  readonly change: WhatIfChange;
  readonly lengthCm: number;
  readonly flexRatio: number;
  readonly flexClass: number | null;
  /** Of the bare ski. */
  readonly springCentreNPerMm: number;
  /** At the mount line under the changed skier with gear. */
  readonly bendMm: number;
  readonly bendPercent: number;
}

export const MASS_STEP_KG = 5;

/** From softest to stiffest. */
const ABILITIES: readonly Ability[] = ["learning", "improving", "confident", "expert"];

interface Case {
  readonly change: WhatIfChange;
  readonly answers: FitAnswers;
  readonly spec: PairSpec;
}

/** The ski on the sheet, worked out. */
export interface Standing {
  readonly answers: FitAnswers;
  readonly spec: PairSpec;
  readonly model: Model;
  readonly solved: SolvedSpec;
}

/** The sheet as it stands, told as a row. */
export function rowNow(standing: Standing, catalog: EngineCatalog): WhatIf {
  return rowOf({ change: "now", ...standing }, standing, catalog);
}

/** Every change that is possible: no step beyond the last ability, no length that the model is not built in. */
export function whatIfs(standing: Standing, catalog: EngineCatalog): readonly WhatIf[] {
  const { answers, spec, model } = standing;
  const changedSkier = (change: WhatIfChange, then: FitAnswers): Case => ({
    change,
    answers: then,
    spec: refitted(answers, then, spec, catalog),
  });
  const ability = ABILITIES.indexOf(abilityThatCounts(answers, catalog.fit));
  const abilityRow = (change: WhatIfChange, step: -1 | 1): Case[] => {
    const next = ABILITIES[ability + step];
    return next === undefined ? [] : [changedSkier(change, withAbility(answers, next))];
  };
  const massRow = (change: WhatIfChange, stepKg: number): Case[] => {
    const massKg = answers.massKg + stepKg;
    return massKg > 0 ? [changedSkier(change, { ...answers, massKg })] : [];
  };
  const lengths = model.lengths.map((each) => each.lengthCm).toSorted((a, b) => a - b);
  const lengthRow = (change: WhatIfChange, lengthCm: number | undefined): Case[] =>
    lengthCm === undefined ? [] : [{ change, answers, spec: { ...spec, lengthCm } }];
  return [
    ...massRow("mass-up", MASS_STEP_KG),
    ...massRow("mass-down", -MASS_STEP_KG),
    ...abilityRow("ability-up", 1),
    ...abilityRow("ability-down", -1),
    ...lengthRow(
      "length-up",
      lengths.find((each) => each > spec.lengthCm),
    ),
    ...lengthRow(
      "length-down",
      lengths.findLast((each) => each < spec.lengthCm),
    ),
  ].map((each) => rowOf(each, standing, catalog));
}

/** Days on skis that would count the skier as learning say nothing of another ability. */
function withAbility(answers: FitAnswers, ability: Ability): FitAnswers {
  const { daysTotal: _days, ...rest } = answers;
  return { ...rest, ability };
}

/** A flex or length chosen by hand keeps its distance from the recommended one: the same proportion, the chosen length. */
function refitted(before: FitAnswers, then: FitAnswers, spec: PairSpec, { build, fit }: EngineCatalog): PairSpec {
  const choiceOf = (answers: FitAnswers) => fitToModel(answers, { model: spec.model }, build, fit).choice;
  const [was, is] = [choiceOf(before), choiceOf(then)];
  return {
    ...spec,
    lengthCm: was.lengthCm === spec.lengthCm ? is.lengthCm : spec.lengthCm,
    flexRatio: (spec.flexRatio * is.flexRatio) / was.flexRatio,
  };
}

function rowOf({ change, answers, spec }: Case, standing: Standing, catalog: EngineCatalog): WhatIf {
  const { model, solved } = standing;
  const on = (lengthCm: number) => ({ massKg: answers.massKg, lengthMm: 10 * lengthCm });
  const byLength = springForSameFeel(on(spec.lengthCm), on(standing.spec.lengthCm));
  const byFlex = spec.flexRatio / standing.spec.flexRatio;
  const springCentreNPerMm = solved.flex.springCentreNPerMm * byFlex * byLength;
  const span = (spanMm(solved) * spec.lengthCm) / standing.spec.lengthCm;
  const bend = relativeDeflection(weightN(answers, model, catalog), springCentreNPerMm, span);
  return {
    change,
    lengthCm: spec.lengthCm,
    flexRatio: spec.flexRatio,
    flexClass: flexClassOf(spec.flexRatio, catalog.build.flexClasses)?.number ?? null,
    springCentreNPerMm,
    bendMm: bend * span,
    bendPercent: 100 * bend,
  };
}

/** Weight of the skier with gear and pack, N. */
export function weightN(answers: Pick<FitAnswers, "massKg" | "packKg">, model: Model, { fit }: EngineCatalog): number {
  return (answers.massKg + carriedKg(answers, model, fit)) * STANDARD_GRAVITY;
}

/** Gear and what of the pack counts, kg. */
export function carriedKg(answers: Pick<FitAnswers, "packKg">, model: Model, fit: EngineCatalog["fit"]): number {
  return gearKg(model.use, fit) + packKg(answers, fit);
}

/** Between the two supports that springs are read on. */
export function spanMm({ build }: Pick<SolvedSpec, "build">): number {
  const { frontSupportMm, rearSupportMm } = springTestOf(build);
  return rearSupportMm - frontSupportMm;
}
