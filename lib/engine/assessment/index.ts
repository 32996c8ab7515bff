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
export * from "./types";
