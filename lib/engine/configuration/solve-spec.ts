/** A spec's core, stiffness and mass: the model's own class 3 ski gives the target, the ordered build gives the section. */
import {
  type CoreSolution,
  evaluateFlex,
  type ReferenceCurve,
  referenceCurve,
  type SkiBuild,
  type SkiFlex,
  solveCore,
} from "#engine/flex";
import { accept, type Outcome } from "#engine/units";
import { type BuildableSpec, bareBuildFor, referenceBuildFor, resolveSpec, withBindingZone } from "./build";
import { designedProfile } from "./designed-profile";
import type { LookupRefusal } from "./lookup";
import type { BuildCatalog, FlexSpec, Model } from "./types";

/** One spec worked out. `build` is the finished ski; the core is solved for it without plate and mat. */
export interface SolvedSpec {
  readonly build: SkiBuild;
  readonly core: CoreSolution;
  /** Without plate and mat, loaded at the model's mount line: what the flex ratio is about. */
  readonly flex: SkiFlex;
  /** With plate and mat, loaded at the order's mount line: what bench and scale will read. */
  readonly flexWithPlate: SkiFlex;
}

/** @returns the solution, or the first item of the spec that this catalogue does not hold */
export function solveSpec(spec: BuildableSpec, catalog: BuildCatalog): Outcome<SolvedSpec, LookupRefusal> {
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) return resolved;
  const { model } = resolved.value;
  const solved = remembered(catalog, stiffnessKey(spec), () => {
    const bare = bareBuildFor(resolved.value, spec.lengthCm, catalog);
    const target = { reference: referenceOf(model, catalog), flexRatio: spec.flexRatio };
    const core = solveCore(bare, target, catalog.rules.core);
    return { bare, core, flex: evaluateFlex(bare, core.profile) };
  });
  const build = withBindingZone(solved.bare, resolved.value, spec.mount?.offsetMm ?? 0, catalog);
  const { core, flex } = solved;
  return accept({ build, core, flex, flexWithPlate: evaluateFlex(build, core.profile) });
}

/**
 * What the ordered flex weighs: mass of one ski over that of the same build at a flex ratio of 1, g. Negative when softer.
 *
 * @returns the difference, or the first item of the spec that this catalogue does not hold
 */
export function massOfFlexG(spec: BuildableSpec, catalog: BuildCatalog): Outcome<number, LookupRefusal> {
  const ordered = solveSpec(spec, catalog);
  if (!ordered.ok) return ordered;
  const classThree = solveSpec({ ...spec, flexRatio: 1 }, catalog);
  if (!classThree.ok) return classThree;
  return accept(1000 * (ordered.value.flexWithPlate.massKg - classThree.value.flexWithPlate.massKg));
}

/** EI(x) of the model's reference build with its designed core. */
export function referenceOf(model: Model, catalog: BuildCatalog): ReferenceCurve {
  const known = referenceCurves.get(model);
  if (known) return known;
  const build = referenceBuildFor(model, catalog);
  const curve = referenceCurve(build, designedProfile(model, build.shape, catalog.rules));
  referenceCurves.set(model, curve);
  return curve;
}

/*
 * A sheet is assessed at every keystroke, and most keystrokes leave stiffness alone. Both memories hold only what their
 * arguments determine, belong to one catalogue object and go with it; a catalogue is never changed once it is made.
 */
const referenceCurves = new WeakMap<Model, ReferenceCurve>();
const solutions = new WeakMap<BuildCatalog, Map<string, BareSolution>>();
const KEPT_SOLUTIONS = 32;

interface BareSolution {
  readonly bare: SkiBuild;
  readonly core: CoreSolution;
  readonly flex: SkiFlex;
}

function stiffnessKey({ model, lengthCm, core, reinforcements, flexRatio }: FlexSpec): string {
  return JSON.stringify([model, lengthCm, core, reinforcements, flexRatio]);
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
