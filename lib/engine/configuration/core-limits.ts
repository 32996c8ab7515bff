/** What a core may be: the mill's limits and, where the shop has them, its bench rules around the order's mount line. */
import type { CoreLimits } from "#engine/flex";
import { mountLineMm, type SkiShape } from "#engine/geometry";
import { plateFor } from "./build";
import { milledPocket } from "./core-mass";
import { lighteningPockets } from "./lightening";
import type { BuildCatalog, BuildRules, LighteningRules, Model, PlateChoice } from "./types";

/** @param offsetMm of the mount line from the model's own, positive towards the tip */
export function coreLimitsFor(
  shape: SkiShape,
  ordered: {
    readonly model: Pick<Model, "use">;
    readonly plate: PlateChoice | null;
    readonly lightening: LighteningRules | null;
  },
  wood: { readonly coreFromMm: number; readonly coreToMm: number },
  offsetMm: number,
  catalog: Pick<BuildCatalog, "rules" | "materials">,
): CoreLimits {
  const { core, bench } = catalog.rules;
  if (!bench) return core;
  const mountMm = mountLineMm(shape, offsetMm);
  const bootZone = { fromMm: mountMm - bench.bootZoneMm / 2, toMm: mountMm + bench.bootZoneMm / 2 };
  const { fromMm, toMm, depthMm } = milledPocket(plateFor(shape, ordered, mountMm, catalog), catalog.rules);
  return {
    ...core,
    bench: {
      bootZone,
      floors: [
        { ...bootZone, leastMm: bench.bootCore.leastMm },
        { fromMm, toMm, leastMm: bench.woodUnderPocket.leastMm + depthMm },
        ...hollowFloors(shape, wood, ordered.lightening, catalog.rules),
      ],
      endSheetsMm: bench.endSheets.sheetsMm,
      reliefShare: bench.relief.share,
    },
  };
}

function hollowFloors(
  shape: SkiShape,
  wood: { readonly coreFromMm: number; readonly coreToMm: number },
  lightening: LighteningRules | null,
  rules: BuildRules,
): NonNullable<CoreLimits["bench"]>["floors"] {
  if (lightening === null) return [];
  return lighteningPockets(shape, wood, lightening, rules).map(({ fromMm, toMm, depthMm }) => ({
    fromMm,
    toMm,
    leastMm: lightening.leastUnderMm + depthMm,
  }));
}
