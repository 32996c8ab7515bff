/**
 * What of a complete spec clashes, and the ways out (common practice, no source). Every limit and
 * every "for these uses" is catalogue data; here is only how they meet.
 */
import { inlayConflicts, mountConflicts } from "./base-and-mount";
import type { ResolvedSpec } from "./build";
import { lighteningConflicts } from "./lightening";
import { ownCoreConflicts } from "./own-core";
import type { BuildCatalog, PairSpec, Reinforcement, SpecConflict, SpecWay } from "./types";
import { windowConflicts } from "./windows";

/** All clashes of a spec whose items were found in this catalogue; empty when it can be built. */
export function conflictsOf(spec: PairSpec, resolved: ResolvedSpec, catalog: BuildCatalog): readonly SpecConflict[] {
  return [
    ...retiredModel(resolved, catalog),
    ...coreForUse(resolved, catalog),
    ...ownCoreConflicts(resolved.blend, catalog),
    ...reinforcementsForUse(resolved),
    ...tooManyPlies(resolved, catalog),
    ...plateForUse(resolved, catalog),
    ...lighteningConflicts(spec, resolved),
    ...windowConflicts(spec, resolved, catalog),
    ...inlayConflicts(spec, resolved, catalog),
    ...mountConflicts(spec, catalog),
  ];
}

function retiredModel({ model }: ResolvedSpec, catalog: BuildCatalog): SpecConflict[] {
  if (model.state === "active") return [];
  const waistAway = (waistMm: number) => Math.abs(waistMm - model.shape.waistWidthMm);
  const nearest = catalog.models
    .filter((each) => each.state === "active" && (each.use === "touring") === (model.use === "touring"))
    .toSorted((a, b) => waistAway(a.shape.waistWidthMm) - waistAway(b.shape.waistWidthMm))
    .slice(0, 2);
  const ways = nearest.map(
    (each): SpecWay => ({
      code: `active-model-${each.id}`,
      label: `${each.name} instead`,
      choices: { model: each.id, lengthCm: each.shape.refLengthCm, core: each.core.blend },
    }),
  );
  return [{ code: "model-retired", path: "model", model: model.id, ways }];
}

function coreForUse({ model, blend }: ResolvedSpec, catalog: BuildCatalog): SpecConflict[] {
  if (blend.forUses.includes(model.use)) return [];
  const own = catalog.blends.filter((each) => each.forUses.includes(model.use));
  // The model's own blend first, then the others in the catalogue's order.
  const ways = own
    .toSorted((a, b) => Number(b.id === model.core.blend) - Number(a.id === model.core.blend))
    .map((each): SpecWay => ({ code: `other-core-${each.id}`, label: each.label, choices: { core: each.id } }));
  return [{ code: "core-not-for-use", path: "core", core: blend.id, use: model.use, ways }];
}

function reinforcementsForUse({ model, reinforcements }: ResolvedSpec): SpecConflict[] {
  return reinforcements
    .filter((each) => !each.forUses.includes(model.use))
    .map((each) => ({
      code: "reinforcement-not-for-use",
      path: "reinforcements",
      reinforcement: each.id,
      use: model.use,
      ways: [withoutReinforcement(each, reinforcements)],
    }));
}

function tooManyPlies({ reinforcements }: ResolvedSpec, { rules }: BuildCatalog): SpecConflict[] {
  const plies = reinforcements.reduce((sum, each) => sum + each.extraPlies, 0);
  if (plies <= rules.maxExtraPlies) return [];
  const ways = reinforcements
    .filter((each) => each.extraPlies > 0)
    .map((each) => withoutReinforcement(each, reinforcements));
  return [{ code: "too-many-plies", path: "reinforcements", plies, mostPlies: rules.maxExtraPlies, ways }];
}

/** The other plates for this use; the shop's own is what stands when none is chosen. */
function plateForUse({ model, plate }: ResolvedSpec, { rules }: BuildCatalog): SpecConflict[] {
  if (plate === null || plate.forUses.includes(model.use)) return [];
  const ways = (rules.plate.choices ?? [])
    .filter((each) => each.forUses.includes(model.use))
    .map((each): SpecWay => ({ code: `other-plate-${each.id}`, label: each.label, choices: { plate: each.id } }));
  return [{ code: "plate-not-for-use", path: "plate", plate: plate.id, use: model.use, ways }];
}

/** The same list without one of its items, in the words of the sheet. */
function withoutReinforcement(left: Reinforcement, all: readonly Reinforcement[]): SpecWay {
  return {
    code: `leave-out-${left.id}`,
    label: `Leave out: ${left.label}`,
    choices: { reinforcements: all.filter((each) => each.id !== left.id).map((each) => each.id) },
  };
}
