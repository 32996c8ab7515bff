/**
 * From what was ordered to what is built: the catalogue's items, one complete spec, its construction and what of it clashes.
 */
export * from "./base-letters";
export * from "./bench-class";
export { type BuildableSpec, type ResolvedSpec, referenceBuildFor, resolveSpec, skiBuildFor } from "./build";
export { type ClothChoice, clothChange, isSameCloth } from "./cloth";
export * from "./compatibility";
export * from "./complete-spec";
export * from "./core-machining";
export * from "./core-mass";
export * from "./designed-profile";
export * from "./flex-class";
export type { FlexRefusal, NearFlex } from "./flex-refusal";
export * from "./graphic-resolution";
export * from "./layer-materials";
export * from "./lettering";
export { LIGHTENING, POCKET_BRIDGES } from "./lightening";
export * from "./lookup";
export * from "./mould-camber";
export { coreIdFor, type OwnCore, ownCoreOf } from "./own-core";
export * from "./pair-layout";
export * from "./picture-copies";
export * from "./picture-print";
export * from "./print-face";
export { referenceOf } from "./reference";
export * from "./shared-look";
export * from "./solve-spec";
export { nineOfTen, spreadOf } from "./spread";
export { stripSides } from "./strip-columns";
export * from "./strip-places";
export * from "./strip-weights";
export * from "./types";
