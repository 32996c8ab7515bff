/** A ski that is the same at both ends and lies flat: what is worked out of it can be foretold by hand. */
import type { SkiShape } from "#engine/geometry";

const [sidecutMm, depthMm] = [1400, 15];

export const straightSkiShape: SkiShape = {
  lengthMm: 1700,
  shoulderWidthMm: 120,
  waistWidthMm: 120 - 2 * depthMm,
  heelWidthMm: 120,
  tipLengthMm: 150,
  tailLengthMm: 150,
  tipExponent: 2.4,
  tailExponent: 2.4,
  sidecutLengthMm: sidecutMm,
  // Of the arc through waist, shoulder and heel: L²/8d + d/2.
  sidecutRadiusMm: sidecutMm ** 2 / (8 * depthMm) + depthMm / 2,
  waistFromTipMm: 850,
  mountFromTipMm: 850,
  tipTangentMm: 200,
  tailTangentMm: 1500,
  tipRiseMm: 0,
  tailRiseMm: 0,
  camberMm: 0,
  edgeWrap: "partial",
};
