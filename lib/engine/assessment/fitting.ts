/** The fit part of a sheet: the ranking, and the fit of the model that stands on the sheet, with every flag that holds. */
import { modelById, type PairSpec, type SpecDefaults } from "#engine/configuration";
import {
  type FitAnswers,
  type FitFlag,
  fitToModel,
  isAboutRanking,
  type ModelFit,
  type Recommendation,
  recommend,
  recommendFinish,
} from "#engine/fit";
import type { Refusal } from "#engine/units";
import type { EngineCatalog, PartialAnswers, SheetChoices, SheetInput } from "./types";

export interface Fitting {
  readonly answers: FitAnswers | null;
  readonly missing: readonly Refusal[];
  readonly recommendation: Recommendation | null;
  /** Flags of the skier and of the model on the sheet. */
  readonly flags: readonly FitFlag[];
  /** Null until a model is chosen or recommended. */
  readonly defaults: SpecDefaults | null;
}

export function fittingOf({ answers: given, choices }: SheetInput, catalog: EngineCatalog): Fitting {
  const answers = completeAnswers(given);
  const missing = missingAnswers(given);
  const ranked = answers ? recommend(answers, catalog.build, catalog.fit) : null;
  const model = choices.model ?? ranked?.choices[0]?.model;
  const known = model === undefined ? null : modelById(catalog.build, model);
  if (model === undefined || !known?.ok) {
    // An unknown model still has to be refused by name, so it stays on the sheet.
    const defaults = model === undefined ? null : defaultsFor(model, null, given, catalog);
    return { answers, missing, recommendation: ranked, flags: ranked?.flags ?? [], defaults };
  }
  const fit = answers ? fitToModel(answers, selectionOf(model, choices, catalog), catalog.build, catalog.fit) : null;
  const recommendation = ranked && fit ? { ...ranked, flags: mergedFlags(ranked, fit, model) } : ranked;
  return {
    answers,
    missing,
    recommendation,
    flags: fit?.flags ?? [],
    defaults: defaultsFor(model, fit, given, catalog),
  };
}

/** Height, mass and ability make a fit possible. */
export function completeAnswers(given: PartialAnswers): FitAnswers | null {
  if (missingAnswers(given).length > 0) return null;
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as unknown as FitAnswers;
}

function missingAnswers(given: PartialAnswers): Refusal[] {
  const isMeasured = (value: number | undefined) => value !== undefined && Number.isFinite(value) && value > 0;
  return [
    ...(isMeasured(given.heightCm) ? [] : ["answers.heightCm"]),
    ...(isMeasured(given.massKg) ? [] : ["answers.massKg"]),
    ...(given.ability === undefined ? ["answers.ability"] : []),
  ].map((path) => ({ code: "missing-answer", path }));
}

function selectionOf(model: string, choices: SheetChoices, { build }: EngineCatalog) {
  const { mount, reinforcements = [] } = choices;
  const hasMetal = build.models.some((each) => each.id === model && each.hasMetal);
  const ordersMetal = build.reinforcements.some(
    (each) => each.placement.kind === "metal-pair" && reinforcements.includes(each.id),
  );
  const placed = mount === undefined ? {} : { ...mount, mountOffsetMm: mount.offsetMm };
  const { lengthCm } = choices;
  const chosen = lengthCm === undefined ? {} : { lengthCm };
  return { model, addsMetal: ordersMetal && !hasMetal, ...chosen, ...placed };
}

/** Flags of the model on the sheet as it stands there, those of the ranking, and those of the other ranked models. */
function mergedFlags(ranked: Recommendation, fit: ModelFit, model: string): readonly FitFlag[] {
  const isOfOthers = (flag: FitFlag) => flag.model !== undefined && flag.model !== model;
  return [...fit.flags, ...ranked.flags.filter((flag) => isOfOthers(flag) || isAboutRanking(flag))];
}

function defaultsFor(
  modelId: string,
  fit: ModelFit | null,
  given: PartialAnswers,
  catalog: EngineCatalog,
): SpecDefaults {
  const model = catalog.build.models.find((each) => each.id === modelId);
  const { mountOffsetMm = 0, bootSoleMm, bindingTrackMm } = given;
  return {
    model: modelId,
    lengthCm: fit?.choice.lengthCm ?? model?.shape.refLengthCm ?? 0,
    flexRatio: fit?.choice.flexRatio ?? 1,
    finish: finishFor(given, model?.use, catalog),
    mount: {
      offsetMm: mountOffsetMm,
      ...(bootSoleMm === undefined ? {} : { bootSoleMm }),
      ...(bindingTrackMm === undefined ? {} : { bindingTrackMm }),
    },
  };
}

/** From the finish table; before the skier is known, its last row, which holds for all. */
function finishFor(given: PartialAnswers, use: string | undefined, catalog: EngineCatalog): PairSpec["finish"] {
  const answers = completeAnswers(given);
  if (answers && use !== undefined) return recommendFinish(answers, use, catalog.finish, catalog.fit).finish;
  const { bevels, structureBySnow, structureUnanswered } = catalog.finish;
  const row = bevels.at(-1);
  if (!row) throw new RangeError("finish.bevels: the table is empty");
  const { baseBevelDeg, sideAngleDeg, detuneTipMm, detuneTailMm } = row;
  const structure = given.homeSnow === undefined ? structureUnanswered : structureBySnow[given.homeSnow];
  return { baseBevelDeg, sideAngleDeg, detuneTipMm, detuneTailMm, structure };
}
