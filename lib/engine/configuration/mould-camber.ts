import type { SkiShape } from "#engine/geometry";
import type { Corrections } from "#engine/materials";
import type { BuildRules } from "./types";

/** Camber of the mould, mm: the finished ski's and what it springs back in cooling, less what measured pairs came out too high. */
export function mouldCamberMm(
  { camberMm }: Pick<SkiShape, "camberMm">,
  { springBackMm }: Pick<BuildRules, "springBackMm">,
  corrections?: Pick<Corrections, "camberOffsetMm">,
): number {
  return camberMm + springBackMm - (corrections?.camberOffsetMm ?? 0);
}
