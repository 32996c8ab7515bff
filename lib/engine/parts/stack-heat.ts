/** The heat-up of one ski's own stack, by the shop's settings of its press and the heat properties of its materials. */
import type { SolvedSpec } from "#engine/configuration";
import { type BuildLayer, stripWidthLeftMm, woodHalfWidthMm } from "#engine/flex";
import { woodConductivityWMK, woodHeatCapacityJKgK } from "#engine/materials";
import { type Heating, type HeatSlab, heatUpMinutes } from "./heat-up";

export interface HeatProperties {
  readonly conductivityWMK: number;
  readonly heatCapacityJKgK: number;
}

/** How the press heats, and how its materials take up heat; wood follows from its density. */
export interface HeatingRules extends Omit<Heating, "plateC"> {
  readonly woodMoisturePercent: number;
  /** Cured cloth, through its thickness. */
  readonly cloth: HeatProperties;
  /** By material id. */
  readonly sheets: Readonly<Record<string, HeatProperties>>;
  readonly otherSheets: HeatProperties;
}

/**
 * Whole minutes, rounded up, from closing the press until the coldest glue line at the thickest place of the ski is within
 * `withinC` of `plateC`.
 *
 * @throws RangeError when the stack is not warm within hours: a fault of the settings
 */
export function stackHeatUpMinutes(
  solved: Pick<SolvedSpec, "build" | "core">,
  rules: HeatingRules,
  plateC: number,
): number {
  return Math.ceil(heatUpMinutes(slabsOf(solved, rules), { ...rules, plateC }) - 1e-9);
}

/** Layers at the thickest place, the plate in its pocket; bands along the ski are passed by. */
function slabsOf({ build, core }: Pick<SolvedSpec, "build" | "core">, rules: HeatingRules): readonly HeatSlab[] {
  const thickest = core.profile.stations.reduce((most, each) => (each.thicknessMm > most.thicknessMm ? each : most));
  const { plate } = build;
  const inPocketMm = plate ? plate.rubberMm + plate.thicknessMm : 0;
  return build.layers.flatMap((layer): readonly HeatSlab[] => {
    if (layer.role === "core") {
      const wood = woodSlab(build, thickest.xMm, thickest.thicknessMm - inPocketMm, rules);
      if (!plate) return [wood];
      const rubber = plate.rubber
        ? [sheetSlab({ ...plate, thicknessMm: plate.rubberMm, material: plate.rubber }, rules)]
        : [];
      return [wood, ...rubber, sheetSlab(plate, rules)];
    }
    if (layer.role !== "base" && (layer.extent.kind === "bands" || layer.extent.kind === "span")) return [];
    return [sheetSlab(layer, rules)];
  });
}

type Sheet = Pick<Exclude<BuildLayer, { readonly role: "core" }>, "material" | "thicknessMm">;

function sheetSlab({ material, thicknessMm }: Sheet, { cloth, sheets, otherSheets }: HeatingRules): HeatSlab {
  const isCloth = material.fibresDeg !== undefined;
  const { conductivityWMK, heatCapacityJKgK } = isCloth ? cloth : (sheets[material.id ?? ""] ?? otherSheets);
  return { thicknessMm, conductivityWMK, volumetricHeatJM3K: material.densityKgM3 * heatCapacityJKgK };
}

/** Wood with the mean density of its strips at x, each by the width that the mill leaves of it. */
function woodSlab(build: SolvedSpec["build"], xMm: number, thicknessMm: number, rules: HeatingRules): HeatSlab {
  const half = woodHalfWidthMm(build, xMm);
  const widths = build.columns.map((_, index) => stripWidthLeftMm(build.columns, index, half));
  const total = widths.reduce((sum, width) => sum + width, 0);
  const density =
    build.columns.reduce((sum, { densityKgM3 }, index) => sum + densityKgM3 * (widths[index] ?? 0), 0) / total;
  const { woodMoisturePercent, startC } = rules;
  return {
    thicknessMm,
    conductivityWMK: woodConductivityWMK(density, woodMoisturePercent),
    volumetricHeatJM3K: density * woodHeatCapacityJKgK(woodMoisturePercent, startC),
  };
}
