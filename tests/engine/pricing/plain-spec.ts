import type { PairSpec } from "#engine/configuration";

/** Midlow 95 at 178 cm with nothing extra. */
export const plainSpec: PairSpec = {
  model: "midlow-95",
  lengthCm: 178,
  core: "aspen-ash",
  reinforcements: [],
  flexRatio: 1,
  graphic: { kind: "house", house: "plain", layout: "same", windows: [] },
  base: { left: "black", right: "black", inlay: "none" },
  mount: { offsetMm: 0 },
  finish: { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 80, detuneTailMm: 50, structure: "M" },
  tipTailProtectors: false,
};
