/**
 * The ski as a beam. Entry points: evaluateFlex (what a built ski is), solveCore (the core for a wanted flex),
 * referenceCurve (the target curve of a model) and solveBeam (any beam).
 */
export * from "./beam";
export * from "./beam-elements";
export * from "./beam-types";
export * from "./behaviour";
export * from "./camber";
export { keepsFloors } from "./core-bench";
export { coreShearStiffnessN } from "./core-shear";
export { bareBuild, benchTwistNmPerDeg, evaluateFlex, referenceCurve } from "./evaluate";
export { freeFreeFrequencies } from "./frequencies";
export { type SectionsOf, sectionsOf } from "./local-section";
export * from "./milled-strips";
export * from "./profile";
export { solveCore } from "./solve-core";
export { flexSpread } from "./spread";
export * from "./spread-types";
export { benchMomentMm, springTestOf } from "./spring-test";
export * from "./spring-units";
export { springConstants } from "./springs";
export * from "./types";
