/** The core thickness a model was designed with: flat under the foot, tapering to its spacers. */
import type { ThicknessProfile } from "#engine/flex";
import type { SkiShape } from "#engine/geometry";
import type { BuildRules, Model } from "./types";

/** Stations along each taper: a curved taper is followed within 0.01 mm. */
const TAPER_STEPS = 24;

/**
 * t = tEnd + (tMid − tEnd)(1 − (1 − u)^power), u from 0 where the wood begins to 1 at the flat middle, which is centred
 * on the model's mount line; level over the spacers. Stations lie at x in mm from the tip.
 */
export function designedProfile(model: Model, shape: SkiShape, rules: BuildRules): ThicknessProfile {
  const { tipMm, midMm, tailMm, flatMm, taperPower } = model.core;
  const woodFromMm = rules.spacers.tipMm;
  const woodToMm = shape.lengthMm - rules.spacers.tailMm;
  const taper = (fromMm: number, toMm: number, endMm: number) =>
    Array.from({ length: TAPER_STEPS + 1 }, (_, i) => {
      const u = i / TAPER_STEPS;
      const thicknessMm = endMm + (midMm - endMm) * (1 - (1 - u) ** taperPower);
      return { xMm: fromMm + u * (toMm - fromMm), thicknessMm };
    });
  return {
    stations: [
      { xMm: 0, thicknessMm: tipMm },
      ...taper(woodFromMm, shape.mountFromTipMm - flatMm / 2, tipMm),
      ...taper(woodToMm, shape.mountFromTipMm + flatMm / 2, tailMm).reverse(),
      { xMm: shape.lengthMm, thicknessMm: tailMm },
    ],
  };
}
