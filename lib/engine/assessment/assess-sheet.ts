/** From answers and choices to everything a skier, a seller or a maker is shown. Pure: the same sheet gives the same answer. */
import {
  conflictsOf,
  type FlexRefusal,
  flexClassOf,
  letteringWarnings,
  type SpecConflict,
  type SpecDefaults,
  type SpecWay,
  spreadOf,
} from "#engine/configuration";
import type { FitFlag } from "#engine/fit";
import { partsFor } from "#engine/parts";
import type { Refusal } from "#engine/units";
import { artworkFindings } from "./artwork";
import { type Fitting, fittingOf } from "./fitting";
import type { Assessment, Conflict, EngineCatalog, SheetInput } from "./types";
import { effectOf, reachesFlex, type WorkedOut, workOut } from "./working-out";

/**
 * Assesses a sheet as it stands, complete or not. A flagged skier is never fitted into a sale: the numbers stay what the
 * formulas want, and `saleBlockedBy` says why no quote may be made until a person decided.
 */
export function assessSheet(input: SheetInput, catalog: EngineCatalog): Assessment {
  const fitting = fittingOf(input, catalog);
  if (!fitting.defaults) return withoutSpec(fitting, [{ code: "missing-answer", path: "choices.model" }]);
  const worked = workOut(input.choices, fitting.defaults, catalog);
  if (!worked.ok) return withoutSpec(fitting, [worked.refusal]);
  return withSpec(input, fitting, fitting.defaults, worked.value, catalog);
}

function withoutSpec(fitting: Fitting, refusals: readonly Refusal[]): Assessment {
  const { recommendation, missing, flags } = fitting;
  return {
    recommendation,
    spec: null,
    flex: null,
    finishedFlex: null,
    spread: null,
    core: null,
    parts: null,
    price: null,
    conflicts: [],
    warnings: [],
    saleBlockedBy: [...missing, ...refusals, ...blockedBy(flags, "sale")],
    buildBlockedBy: blockedBy(flags, "build"),
  };
}

function withSpec(
  input: SheetInput,
  fitting: Fitting,
  defaults: SpecDefaults,
  worked: WorkedOut,
  catalog: EngineCatalog,
): Assessment {
  const { spec, resolved, solved, price } = worked;
  const { shape } = solved.build;
  const { print } = catalog.build.rules;
  const withEffect = (conflict: SpecConflict) => withEffects(conflict, input, defaults, worked, catalog);
  const clashes = [...conflictsOf(spec, resolved, catalog.build), ...unreachableFlex(worked, catalog)];
  const conflicts = clashes.map(withEffect);
  const artwork = artworkFindings(spec, shape, input.rightsConfirmed ?? false, catalog);
  return {
    recommendation: fitting.recommendation,
    spec,
    flex: solved.flex,
    finishedFlex: solved.flexWithPlate,
    spread: spreadOf(solved, catalog.build),
    core: solved.core,
    parts: partsFor(spec, solved, catalog.build, catalog.parts),
    price: price.ok ? price.value : null,
    conflicts,
    warnings: [...letteringWarnings(spec, shape, print), ...artwork.warnings],
    saleBlockedBy: [
      ...fitting.missing,
      ...blockedBy(fitting.flags, "sale"),
      ...flexOutsideClasses(worked, fitting, catalog),
      ...clashes.map(withoutWays),
      ...(price.ok ? [] : [price.refusal]),
    ],
    buildBlockedBy: [...blockedBy(fitting.flags, "build"), ...artwork.blocks],
  };
}

/** Flags as refusals; the words stay with the flag. */
function blockedBy(flags: readonly FitFlag[], what: "sale" | "build"): readonly Refusal[] {
  return flags
    .filter((flag) => flag.blocks === what)
    .map((flag) => ({
      code: flag.code,
      path: "answers",
      message: flag.message,
      ...(flag.model ? { model: flag.model } : {}),
    }));
}

/** A flex chosen by hand outside every class needs a person as much as a recommended one does. */
function flexOutsideClasses({ spec }: WorkedOut, { flags }: Fitting, { build }: EngineCatalog): readonly Refusal[] {
  if (flexClassOf(spec.flexRatio, build.flexClasses) || flags.some((flag) => flag.code === "flex-out-of-range"))
    return [];
  const softest = Math.min(...build.flexClasses.map((each) => each.from));
  const stiffest = Math.max(...build.flexClasses.map((each) => each.below));
  return [{ code: "flex-out-of-range", path: "choices.flexRatio", flexRatio: spec.flexRatio, softest, stiffest }];
}

/** A flex that the shop does not build, with what it builds beside it: the nearest flexes, and lengths that bend as asked. */
function unreachableFlex(worked: WorkedOut, catalog: EngineCatalog): SpecConflict[] {
  if (worked.whyNot) return [unbuildableFlex(worked.whyNot())];
  if (reachesFlex(worked, catalog)) return [];
  const { achievedRatio, limitedBy } = worked.solved.core;
  const reachable = Math.round(achievedRatio * 100) / 100;
  const { flexRatio } = worked.spec;
  const ways = [flexWay("reachable-flex", reachable)];
  return [{ code: "flex-not-reachable", path: "choices.flexRatio", flexRatio, achievedRatio, limitedBy, ways }];
}

function unbuildableFlex(refusal: FlexRefusal): SpecConflict {
  const { softer, stiffer, shorterCm, longerCm } = refusal;
  const lengthWay = (code: string, lengthCm: number): SpecWay => ({
    code,
    label: `${lengthCm} cm`,
    choices: { lengthCm },
  });
  return {
    ...refusal,
    path: "choices.flexRatio",
    ways: [
      ...(softer ? [flexWay("softer-flex", softer.flexRatio)] : []),
      ...(stiffer ? [flexWay("stiffer-flex", stiffer.flexRatio)] : []),
      ...(shorterCm === null ? [] : [lengthWay("shorter-ski", shorterCm)]),
      ...(longerCm === null ? [] : [lengthWay("longer-ski", longerCm)]),
    ],
  };
}

function flexWay(code: string, flexRatio: number): SpecWay {
  return { code, label: `Flex ratio ${flexRatio}`, choices: { flexRatio } };
}

function withoutWays({ ways: _, ...refusal }: SpecConflict): Refusal {
  return refusal;
}

function withEffects(
  { ways, ...refusal }: SpecConflict,
  input: SheetInput,
  defaults: SpecDefaults,
  now: WorkedOut,
  catalog: EngineCatalog,
): Conflict {
  return {
    ...refusal,
    ways: ways.map((way) => {
      const then = workOut({ ...input.choices, ...way.choices }, defaults, catalog);
      const effect = then.ok ? effectOf(now, then.value) : undefined;
      return effect ? { ...way, effect } : way;
    }),
  } as Conflict;
}
