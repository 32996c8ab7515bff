/** The core thickness a model was designed with: flat under the foot, tapering to its spacers. */
import { type ThicknessProfile, taperedProfile } from "../flex";
import type { SkiShape } from "../geometry";
import type { BuildRules, Model } from "./types";

/** The model's own taper over this shape; the flat middle is centred on the model's mount line. */
export function designedProfile(model: Model, shape: SkiShape, rules: BuildRules): ThicknessProfile {
  const { tipMm, midMm, tailMm, flatMm, taperPower } = model.core;
  return taperedProfile({
    coreFromMm: rules.spacers.tipMm,
    coreToMm: shape.lengthMm - rules.spacers.tailMm,
    mountFromTipMm: shape.mountFromTipMm,
    tipMm,
    midMm,
    tailMm,
    flatMm,
    taperPower,
  });
}
