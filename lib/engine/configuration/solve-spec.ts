/** A spec's core, cloth, stiffness and mass: the model's own class 3 ski gives the target, the ordered build the section. */
import { type CoreSolution, evaluateFlex, type SkiBuild, type SkiFlex } from "#engine/flex";
import { accept, type Outcome, refuse } from "#engine/units";
import { type BuildableSpec, resolveSpec, withBindingZone } from "./build";
import type { ClothChoice } from "./cloth";
import { type FlexBuild, flexBuildOf } from "./flex-build";
import { type FlexRefusal, flexRefusalOf } from "./flex-refusal";
import type { LookupRefusal } from "./lookup";
import type { BuildCatalog, FlexSpec, LayupLayer } from "./types";

/** One spec worked out. `build` is the finished ski; the core is solved for it without plate and mat. */
export interface SolvedSpec {
  readonly build: SkiBuild;
  readonly core: CoreSolution;
  /** What is laid above and below the core, base to topsheet: the model's own, with the cloth that was chosen. */
  readonly layup: readonly LayupLayer[];
  readonly cloth: ClothChoice;
  /** Without plate and mat, loaded at the model's mount line: what the flex ratio is about. */
  readonly flex: SkiFlex;
  /** With plate and mat, loaded at the order's mount line: what bench and scale will read. */
  readonly flexWithPlate: SkiFlex;
}

export type SolveRefusal = LookupRefusal | FlexRefusal;

/** @returns the solution; the first item that this catalogue does not hold; or `flex-not-buildable` with what is, beside it */
export function solveSpec(spec: BuildableSpec, catalog: BuildCatalog): Outcome<SolvedSpec, SolveRefusal> {
  const nearest = nearestBuild(spec, catalog);
  if (!nearest.ok) return nearest;
  const { solved, isReached, whyNot } = nearest.value;
  return isReached ? accept(solved) : refuse(whyNot());
}

/** The build nearest to an ordered flex. */
export interface NearestBuild {
  readonly solved: SolvedSpec;
  /** Whether the shop builds it for this flex; releases without bench rules build whatever comes nearest. */
  readonly isReached: boolean;
  /** What stands in the way and what is built instead, for one that is not reached; worked out when it is asked for. */
  readonly whyNot: () => FlexRefusal;
}

/**
 * The build that comes nearest to the ordered flex within the shop's rules, so that a sheet can be shown whatever was asked.
 *
 * @returns the build, or the first item that this catalogue does not hold
 */
export function nearestBuild(spec: BuildableSpec, catalog: BuildCatalog): Outcome<NearestBuild, LookupRefusal> {
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) return resolved;
  const mountOffsetMm = spec.mount?.offsetMm ?? 0;
  const order = { resolved: resolved.value, lengthCm: spec.lengthCm, flexRatio: spec.flexRatio, mountOffsetMm };
  const { found, flex, isReached, whyNot } = remembered(catalog, stiffnessKey(spec, catalog), () => {
    const { build, tried, ...rest } = flexBuildOf(order, catalog);
    // What is remembered holds no sections: they are many.
    const { sectionAt, ...found } = build;
    const kept = tried.map(({ sectionAt: _, ...each }) => each);
    let refusal: FlexRefusal | undefined;
    const refused = () => {
      refusal ??= flexRefusalOf(order, found, kept, catalog);
      return refusal;
    };
    return { ...rest, found, flex: evaluateFlex(found.bare, found.core.profile, { sectionAt }), whyNot: refused };
  });
  const { bare, core, layup, cloth } = found;
  const build = withBindingZone(bare, resolved.value, mountOffsetMm, catalog);
  const flexWithPlate = evaluateFlex(build, core.profile);
  return accept({ solved: { build, core, layup, cloth, flex, flexWithPlate }, isReached, whyNot });
}

/**
 * What the ordered flex weighs: mass of one ski over that of the same build at a flex ratio of 1, g. Negative when softer.
 *
 * @returns the difference, or why one of the two is not built
 */
export function massOfFlexG(spec: BuildableSpec, catalog: BuildCatalog): Outcome<number, SolveRefusal> {
  const ordered = solveSpec(spec, catalog);
  if (!ordered.ok) return ordered;
  const classThree = solveSpec({ ...spec, flexRatio: 1 }, catalog);
  if (!classThree.ok) return classThree;
  return accept(1000 * (ordered.value.flexWithPlate.massKg - classThree.value.flexWithPlate.massKg));
}

/*
 * A sheet is assessed at every keystroke, and most keystrokes leave stiffness alone. The memory holds only what its arguments
 * determine, belongs to one catalogue object and goes with it; a catalogue is never changed once it is made.
 */
const solutions = new WeakMap<BuildCatalog, Map<string, BareSolution>>();
const KEPT_SOLUTIONS = 32;

interface BareSolution extends Pick<NearestBuild, "isReached" | "whyNot"> {
  readonly found: Omit<FlexBuild, "sectionAt">;
  readonly flex: SkiFlex;
}

/** The boot's floor lies where the boot stands; without one the mount line does not touch the core. */
function stiffnessKey(spec: BuildableSpec, { rules }: BuildCatalog): string {
  const { model, lengthCm, core, reinforcements, flexRatio }: FlexSpec = spec;
  // Bench rules look at the pocket: where it lies and how deep its plate makes it.
  const pocket = rules.bench && [spec.mount?.offsetMm ?? 0, spec.plate];
  return JSON.stringify([model, lengthCm, core, reinforcements, flexRatio, spec.lightening ?? false, pocket]);
}

function remembered(catalog: BuildCatalog, key: string, solve: () => BareSolution): BareSolution {
  const kept = solutions.get(catalog) ?? new Map<string, BareSolution>();
  solutions.set(catalog, kept);
  const known = kept.get(key);
  if (known) return known;
  const solution = solve();
  const [oldest] = kept.keys();
  if (kept.size >= KEPT_SOLUTIONS && oldest !== undefined) kept.delete(oldest);
  kept.set(key, solution);
  return solution;
}
