/**
 * Lightening pockets: hollows milled into the upper face of the core along the centre line, one before and one behind the
 * binding zone, each bridged with a strip of carbon that spans it and lies on the wood beside it. Sizes are the shop's
 * settings (common practice, no source).
 */
import type { BuildLayer, LighteningPocket } from "#engine/flex";
import { mountLineMm, type SkiShape } from "#engine/geometry";
import { fabricById } from "#engine/materials";
import { fabricLayer } from "./layer-materials";
import type { BuildCatalog, BuildRules, LighteningRules, PairSpec, SpecConflict } from "./types";

/** What carries the id of the option on its layers and parts. */
export const LIGHTENING = "lightening";

/** Ids of the layers that bridge the pockets. */
export const POCKET_BRIDGES = { fore: `${LIGHTENING}-bridge-fore`, aft: `${LIGHTENING}-bridge-aft` } as const;

/** Fore pocket first; both clear of the mat at the model's own mount line, and as long as a share of the wood that is left. */
export function lighteningPockets(
  shape: SkiShape,
  wood: { readonly coreFromMm: number; readonly coreToMm: number },
  { widthMm, depthMm, clearOfMatMm, lengthShare }: LighteningRules,
  { mat }: Pick<BuildRules, "mat">,
): readonly LighteningPocket[] {
  const mountMm = mountLineMm(shape, 0);
  const clearMm = mat.lengthMm / 2 + clearOfMatMm;
  const fore = mountMm - clearMm;
  const aft = mountMm + clearMm;
  return [
    { fromMm: fore - lengthShare * (fore - wood.coreFromMm), toMm: fore, widthMm, depthMm },
    { fromMm: aft, toMm: aft + lengthShare * (wood.coreToMm - aft), widthMm, depthMm },
  ];
}

/** The strips that bridge them, on the wood. */
export function pocketBridges(
  pockets: readonly LighteningPocket[],
  { bridge }: LighteningRules,
  { materials }: Pick<BuildCatalog, "materials">,
): readonly BuildLayer[] {
  const fabric = fabricById(materials, bridge.fabric);
  return pockets.map(({ fromMm, toMm, widthMm }, index) => ({
    role: "fabric",
    id: index === 0 ? POCKET_BRIDGES.fore : POCKET_BRIDGES.aft,
    material: fabricLayer(fabric),
    thicknessMm: fabric.thicknessMm,
    extent: {
      kind: "span",
      fromMm: fromMm - bridge.overlapMm,
      toMm: toMm + bridge.overlapMm,
      widthMm: widthMm + 2 * bridge.besideMm,
    },
    fromOption: LIGHTENING,
  }));
}

/** Pockets for a use that needs its wood, or a binding moved over one. */
export function lighteningConflicts(
  { mount }: Pick<PairSpec, "mount">,
  { model, lightening }: { readonly model: { readonly use: string }; readonly lightening: LighteningRules | null },
): SpecConflict[] {
  if (lightening === null) return [];
  const without = { code: "no-lightening", label: lightening.withoutLabel, choices: { lightening: false } };
  const isForUse = (lightening.forUses as readonly string[]).includes(model.use);
  if (!isForUse) return [{ code: "lightening-not-for-use", path: "lightening", use: model.use, ways: [without] }];
  if (Math.abs(mount.offsetMm) <= lightening.clearOfMatMm) return [];
  return [
    {
      code: "binding-over-pocket",
      path: "lightening",
      offsetMm: mount.offsetMm,
      clearMm: lightening.clearOfMatMm,
      ways: [without],
    },
  ];
}
