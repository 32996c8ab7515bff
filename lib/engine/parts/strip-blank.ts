/** The size of a core strip before planing and milling: what is cut, and what a strip from the rack must measure. */
import type { SolvedSpec } from "#engine/configuration";
import { stripWidthLeftMm, woodHalfWidthMm } from "#engine/flex";
import { halfOutline } from "#engine/geometry";
import type { PartsRules } from "./types";

export interface StripBlank {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Width as glued up. */
  readonly planedMm: number;
}

/**
 * Wood between the spacers, the thickest place of the core and the strip's own width, each with the shop's allowance. The
 * outermost strip is made as wide as the ski is.
 *
 * @param index of the strip's column, from the centre line out
 * @throws RangeError when the build has no such column
 */
export function stripBlank(
  { build, core }: Pick<SolvedSpec, "build" | "core">,
  index: number,
  { cut }: Pick<PartsRules, "cut">,
): StripBlank {
  const column = build.columns[index];
  if (column === undefined) throw new RangeError(`stripBlank: there is no strip ${index}`);
  const ownMm = column.position === "C" ? 2 * column.outerMm : column.outerMm - column.innerMm;
  const isOutermost = index === build.columns.length - 1;
  const planedMm = isOutermost ? Math.max(ownMm, stripWidthLeftMm(build.columns, index, widestHalfMm(build))) : ownMm;
  return {
    lengthMm: build.coreToMm - build.coreFromMm + cut.stripRoughLengthMm,
    widthMm: planedMm + cut.stripRoughWidthMm,
    heightMm: Math.max(...core.profile.stations.map((station) => station.thicknessMm)) + cut.stripRoughHeightMm,
    planedMm,
  };
}

function widestHalfMm(build: SolvedSpec["build"]): number {
  return Math.max(...halfOutline(build.shape).map(({ xMm }) => woodHalfWidthMm(build, xMm)));
}
