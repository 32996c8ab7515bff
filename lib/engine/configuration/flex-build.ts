/**
 * The build that reaches an ordered flex: the model's own cloth and the core's thickness first; where thickness alone does
 * not reach it within the bench's rules, another cloth of the shop together with its own thickness, the lightest or the
 * cheapest of those that do. Deterministic: the same order and catalogue give the same build for ever.
 */
import {
  type CoreLimit,
  type CoreLimits,
  type CoreSolution,
  keepsFloors,
  type SectionsOf,
  type SkiBuild,
  sectionsOf,
  solveCore,
} from "#engine/flex";
import { bareBuildFor, type ResolvedSpec } from "./build";
import {
  byPreference,
  type Cloth,
  type ClothChoice,
  clothOf,
  clothStiffness,
  layupWithCloth,
  otherCloths,
} from "./cloth";
import { coreLimitsFor } from "./core-limits";
import { referenceOf } from "./reference";
import type { BuildCatalog, LayupLayer } from "./types";

/** What is built for: everything of an order that its core and cloth depend on. */
export interface FlexOrder {
  readonly resolved: ResolvedSpec;
  readonly lengthCm: number;
  readonly flexRatio: number;
  /** Of the mount line from the model's own, mm. */
  readonly mountOffsetMm: number;
}

export interface FlexBuild {
  /** Without plate and mat. */
  readonly bare: SkiBuild;
  readonly core: CoreSolution;
  /** The bare build's sections, as the core was solved with. */
  readonly sectionAt: SectionsOf;
  readonly layup: readonly LayupLayer[];
  readonly cloth: ClothChoice;
}

/** One cloth tried. */
export interface Tried {
  readonly cloth: Cloth;
  readonly layup: readonly LayupLayer[];
  readonly bare: SkiBuild;
  readonly core: CoreSolution;
  readonly sectionAt: SectionsOf;
  readonly isReached: boolean;
}

/**
 * @returns the build; `isReached` says whether it is one that the shop builds, otherwise it is the nearest to the flex that
 * the rules allow, with every cloth that was tried
 */
export function flexBuildOf(
  order: FlexOrder,
  catalog: BuildCatalog,
): { readonly build: FlexBuild; readonly isReached: boolean; readonly tried: readonly Tried[] } {
  const own = tryCloth(order, null, catalog);
  if (own.isReached) return { build: asBuild(own, own, catalog), isReached: true, tried: [own] };
  const tried = [own];
  let left = towardsFlex(own, byPreference(otherCloths(own.cloth, catalog), catalog), catalog);
  for (let [cloth] = left; cloth; [cloth] = left) {
    const other = tryCloth(order, cloth, catalog);
    if (other.isReached) return { build: asBuild(other, own, catalog), isReached: true, tried: [other] };
    tried.push(other);
    left = towardsFlex(other, left, catalog);
  }
  const [nearest = own] = tried.toSorted((a, b) => distance(a.core) - distance(b.core));
  return { build: asBuild(nearest, own, catalog), isReached: false, tried };
}

/** Of these cloths the softer where the tried one comes out too stiff, the stiffer where it comes out too soft. */
function towardsFlex({ cloth, core }: Tried, cloths: readonly Cloth[], catalog: BuildCatalog): readonly Cloth[] {
  const isTooStiff = core.achievedRatio > core.wantedRatio;
  const own = clothStiffness(cloth, catalog);
  return cloths.filter((other) => {
    const stiffness = clothStiffness(other, catalog);
    return isTooStiff ? stiffness < own : stiffness > own;
  });
}

/** @param cloth null = the model's own */
export function tryCloth(order: FlexOrder, cloth: Cloth | null, catalog: BuildCatalog): Tried {
  return clothTrial(order, cloth, catalog)(order.flexRatio);
}

/** One cloth at any flex: what does not depend on the flex is worked out once. @param cloth null = the model's own */
export function clothTrial(
  order: Omit<FlexOrder, "flexRatio">,
  cloth: Cloth | null,
  catalog: BuildCatalog,
): (flexRatio: number) => Tried {
  const { resolved, lengthCm, mountOffsetMm } = order;
  const { model } = resolved;
  const layup = cloth ? layupWithCloth(model.layup, cloth) : model.layup;
  const bare = bareBuildFor(resolved, lengthCm, catalog, layup);
  const limits = coreLimitsFor(bare.shape, resolved, bare, mountOffsetMm, catalog);
  const sectionAt = sectionsOf(bare);
  const reference = referenceOf(model, catalog);
  return (flexRatio) => {
    const core = solveCore(bare, { reference, flexRatio }, limits, sectionAt);
    const reached = isReached(bare, core, limits, catalog);
    return { cloth: clothOf(layup), layup, bare, core, sectionAt, isReached: reached };
  };
}

/** Older releases have no bench and build whatever comes nearest. */
function isReached(bare: SkiBuild, core: CoreSolution, limits: CoreLimits, { rules }: BuildCatalog): boolean {
  if (!rules.bench || !limits.bench) return true;
  return (
    Math.abs(core.achievedRatio / core.wantedRatio - 1) <= rules.bench.flexTolerance.share &&
    keepsFloors(core.profile, limits.bench, bare.coreOffsetMm)
  );
}

function distance({ achievedRatio, wantedRatio }: CoreSolution): number {
  return Math.abs(Math.log(achievedRatio / wantedRatio));
}

/** Another cloth is told among the limits too: it is what the limits of the model's own led to. */
function asBuild({ cloth, layup, bare, core, sectionAt }: Tried, own: Tried, { rules }: BuildCatalog): FlexBuild {
  const isOwn = layup === own.layup;
  const because = isOwn ? [] : own.core.limitedBy;
  const limitedBy = isOwn ? core.limitedBy : [...new Set<CoreLimit>([...because, ...core.limitedBy, "cloth"])];
  const by = isOwn ? null : (rules.cloth?.prefer ?? null);
  return {
    bare,
    core: { ...core, limitedBy },
    sectionAt,
    layup,
    cloth: { laid: cloth, own: own.cloth, isOwn, because, by },
  };
}
