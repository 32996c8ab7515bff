/**
 * "Same flex, other build": the shop's own blends and reinforcements that reach the same flex at the same model and
 * length, and what each changes. The search is in steps, so that a page can take them one by one: begin, judge every
 * candidate, gather. Errors are those of the core solver and the price book; nothing is estimated here.
 */
import type { PairSpec, SolvedSpec, SpecDefaults } from "#engine/configuration";
import type { FlexStation } from "#engine/flex";
import { interpolate } from "#engine/math";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import { type BuildChoice, buildCandidates } from "./alternatives-candidates";
import { fittingOf } from "./fitting";
import type { EngineCatalog, SheetChoices, SheetInput } from "./types";
import { reachesFlex, type WorkedOut, workOut } from "./working-out";

/** One build worked out. Masses and prices are of the pair as it leaves the shop. */
export interface SameFlexBuild extends BuildChoice {
  /** Finished pair, in whole grams: less than that no scale of a workshop tells apart. */
  readonly massG: number;
  /** Total of the sheet's price: tax and shipping included. */
  readonly priceCents: number;
  readonly achievedRatio: number;
  /** Bare ski: what the flex ratio is about. */
  readonly springCentreNPerMm: number;
  /** Torque over angle between mount line and shoulder, bare ski. Takes longer than all the rest: worked out when read. */
  readonly forebodyTwistNmmPerRad: number;
  /** Days that its reinforcements need to be fetched: the longest of them. */
  readonly leadDays: number;
  /** At the model's mount line. */
  readonly coreMidMm: number;
}

export interface SameFlexOption extends SameFlexBuild {
  /** The build on the sheet. */
  readonly isCurrent: boolean;
  /** This build less the one on the sheet. */
  readonly change: {
    readonly massG: number;
    readonly priceCents: number;
    readonly springCentrePercent: number;
    readonly twistPercent: number;
    readonly leadDays: number;
    readonly coreMidMm: number;
  };
}

/** A search begun: what is on the sheet, and what is to be judged. */
export interface SameFlexSearch {
  readonly choices: SheetChoices;
  readonly defaults: SpecDefaults;
  readonly flexRatio: number;
  readonly now: SameFlexBuild;
  readonly candidates: readonly BuildChoice[];
  readonly clashing: number;
}

/** One candidate judged. */
export type Judged =
  | { readonly kind: "option"; readonly option: SameFlexOption }
  | { readonly kind: "flex-not-reached"; readonly limitedBy: readonly string[] }
  | { readonly kind: "no-price" };

export interface SameFlexOptions {
  readonly flexRatio: number;
  readonly now: SameFlexBuild;
  /** In the catalogue's order; the build on the sheet is among them when it can be built and reaches its flex. */
  readonly options: readonly SameFlexOption[];
  /** Builds left out, by reason; with the options they are all that the shop's catalogue allows. */
  readonly leftOut: { readonly clashing: number; readonly flexNotReached: number; readonly withoutPrice: number };
  /** Limits of the core that kept builds from the flex. */
  readonly limitedBy: readonly string[];
}

/** @returns the search, or why the sheet has no build to compare with: no model yet, an unknown item, no price */
export function beginSameFlex(input: SheetInput, catalog: EngineCatalog): Outcome<SameFlexSearch, Refusal> {
  const { defaults } = fittingOf(input, catalog);
  if (!defaults) return refuse({ code: "missing-answer", path: "choices.model" });
  const worked = workOut(input.choices, defaults, catalog);
  if (!worked.ok) return worked;
  const { price, spec, resolved } = worked.value;
  if (!price.ok) return price;
  return accept({
    choices: input.choices,
    defaults,
    flexRatio: spec.flexRatio,
    now: buildOf(worked.value, price.value.totalCents),
    ...buildCandidates(spec, resolved.model, catalog.build),
  });
}

/** Solves and prices one candidate at the model, length and flex of the search. */
export function judgeSameFlex(search: SameFlexSearch, choice: BuildChoice, catalog: EngineCatalog): Judged {
  const isCurrent = isSameBuild(choice, search.now);
  // The build on the sheet keeps the order in which its reinforcements were chosen, that is the order of its plies.
  const { core, reinforcements } = isCurrent ? search.now : choice;
  const worked = workOut({ ...search.choices, core, reinforcements }, search.defaults, catalog);
  if (!worked.ok || !worked.value.price.ok) return { kind: "no-price" };
  const { solved, price } = worked.value;
  if (!reachesFlex(worked.value, catalog)) return { kind: "flex-not-reached", limitedBy: solved.core.limitedBy };
  const build = buildOf(worked.value, price.value.totalCents);
  return { kind: "option", option: optionOf(build, search.now, isCurrent) };
}

/** Puts the judged candidates of a search together. */
export function gatherSameFlex(search: SameFlexSearch, judged: readonly Judged[]): SameFlexOptions {
  const { flexRatio, now, clashing } = search;
  const missed = judged.flatMap((each) => (each.kind === "flex-not-reached" ? [each] : []));
  return {
    flexRatio,
    now,
    options: judged.flatMap((each) => (each.kind === "option" ? [each.option] : [])),
    leftOut: {
      clashing,
      flexNotReached: missed.length,
      withoutPrice: judged.filter((each) => each.kind === "no-price").length,
    },
    limitedBy: [...new Set(missed.flatMap((each) => each.limitedBy))],
  };
}

/** The whole search in one go. */
export function sameFlexOptions(input: SheetInput, catalog: EngineCatalog): Outcome<SameFlexOptions, Refusal> {
  const search = beginSameFlex(input, catalog);
  if (!search.ok) return search;
  const { value } = search;
  return accept(
    gatherSameFlex(
      value,
      value.candidates.map((choice) => judgeSameFlex(value, choice, catalog)),
    ),
  );
}

/**
 * The same options compared with another of them, so that taking one needs no new search.
 *
 * @returns null when that build is not among them
 */
export function comparedWith(found: SameFlexOptions, choice: BuildChoice): SameFlexOptions | null {
  if (isSameBuild(found.now, choice)) return found;
  const taken = found.options.find((each) => isSameBuild(each, choice));
  if (!taken) return null;
  const options = found.options.map((each) => optionOf(each, taken, each === taken));
  return { ...found, now: buildWith(taken, () => taken.forebodyTwistNmmPerRad), options };
}

function isSameBuild(a: BuildChoice, b: BuildChoice): boolean {
  const set = (choice: BuildChoice) => choice.reinforcements.toSorted().join();
  return a.core === b.core && set(a) === set(b);
}

function buildOf({ spec, resolved, solved }: WorkedOut, priceCents: number): SameFlexBuild {
  const { core, reinforcements }: PairSpec = spec;
  const known: BuildBeforeTwist = {
    core,
    reinforcements,
    massG: Math.round(2000 * solved.flexWithPlate.massKg),
    priceCents,
    achievedRatio: solved.core.achievedRatio,
    springCentreNPerMm: solved.flex.springCentreNPerMm,
    leadDays: Math.max(0, ...resolved.reinforcements.map((each) => each.leadDays)),
    coreMidMm: coreMid(solved),
  };
  let twist: number | undefined;
  return buildWith(known, () => {
    twist ??= forebodyTwist(solved);
    return twist;
  });
}

type BuildBeforeTwist = Omit<SameFlexBuild, "forebodyTwistNmmPerRad">;

/** Named one by one: to copy a build as a whole would read its twist. */
function buildWith(known: BuildBeforeTwist, twist: () => number): SameFlexBuild {
  const { core, reinforcements, massG, priceCents, achievedRatio, springCentreNPerMm, leadDays, coreMidMm } = known;
  return {
    core,
    reinforcements,
    massG,
    priceCents,
    achievedRatio,
    springCentreNPerMm,
    get forebodyTwistNmmPerRad() {
      return twist();
    },
    leadDays,
    coreMidMm,
  };
}

function optionOf(build: SameFlexBuild, now: SameFlexBuild, isCurrent: boolean): SameFlexOption {
  const plain = buildWith(build, () => build.forebodyTwistNmmPerRad);
  return Object.assign(plain, { isCurrent, change: changeOf(now, build) });
}

function changeOf(now: SameFlexBuild, then: SameFlexBuild): SameFlexOption["change"] {
  const percent = (key: "springCentreNPerMm" | "forebodyTwistNmmPerRad") => 100 * (then[key] / now[key] - 1);
  return {
    massG: then.massG - now.massG,
    priceCents: then.priceCents - now.priceCents,
    springCentrePercent: percent("springCentreNPerMm"),
    get twistPercent() {
      return percent("forebodyTwistNmmPerRad");
    },
    leadDays: then.leadDays - now.leadDays,
    coreMidMm: then.coreMidMm - now.coreMidMm,
  };
}

function coreMid({ build, core }: SolvedSpec): number {
  const { stations } = core.profile;
  return interpolate(
    stations.map((station) => station.xMm),
    stations.map((station) => station.thicknessMm),
    build.shape.mountFromTipMm,
  );
}

function forebodyTwist({ build, flex }: SolvedSpec): number {
  return twistStiffness(flex.stations, build.shape.tipLengthMm, build.shape.mountFromTipMm);
}

/**
 * Torque over angle of twist between two places, N·mm/rad: T/θ = 1 / ∫ dx/GJ (Saint-Venant's torsion; θ = TL/KG of Young &
 * Budynas, Roark's Formulas, ch. 10, from memory, piece by piece). GJ is linear between stations: each piece is exact.
 */
export function twistStiffness(
  stations: readonly Pick<FlexStation, "xMm" | "torsionalStiffnessNmm2">[],
  fromMm: number,
  toMm: number,
): number {
  // One more at either end than lie between: what is farther off need not be worked out.
  const first = stations.findIndex((station) => station.xMm >= fromMm);
  const last = stations.findLastIndex((station) => station.xMm <= toMm);
  const near = stations.slice(Math.max(0, first - 1), last + 2);
  const xs = near.map((station) => station.xMm);
  const values = near.map((station) => station.torsionalStiffnessNmm2);
  const cuts = [fromMm, ...xs.filter((x) => x > fromMm && x < toMm), toMm];
  let radPerNmm = 0;
  for (const [i, x] of cuts.slice(1).entries()) {
    const from = cuts[i] ?? fromMm;
    radPerNmm += (x - from) / logarithmicMean(interpolate(xs, values, from), interpolate(xs, values, x));
  }
  return 1 / radPerNmm;
}

/** Length over ∫ dx/v for a v that runs straight from a to b. */
function logarithmicMean(a: number, b: number): number {
  const mean = (a + b) / 2;
  // Close together the logarithm loses its digits; the mean is then right to the square of their difference.
  return Math.abs(b - a) < 1e-6 * mean ? mean : (b - a) / Math.log(b / a);
}
