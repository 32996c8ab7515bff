export {
  beginSameFlex,
  comparedWith,
  gatherSameFlex,
  type Judged,
  judgeSameFlex,
  type SameFlexOption,
  type SameFlexOptions,
  sameFlexOptions,
  twistStiffness,
} from "./alternatives";
export { type LighterAnswer, lighterBy, paretoSet } from "./alternatives-choice";
export { assessSheet } from "./assess-sheet";
export {
  type BendInput,
  type BendOnSnow,
  bendOnSnow,
  FEEL_SHARE,
  type Feel,
  flexSteps,
  snowFirst,
  TURN_RADII_M,
  type Turn,
} from "./bend-on-snow";
export * from "./feel";
export { BAND_NEEDS_ORDERS, bandOf, bendRatio, type SkiersBand } from "./skiers-band";
export { type StiffnessStory, stiffnessStory, type TwistStory } from "./stiffness-story";
export * from "./types";
export { MASS_STEP_KG, type WhatIf, type WhatIfChange } from "./what-ifs";
