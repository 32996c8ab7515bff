/**
 * The ski on snow: bending, weight and a bed that only pushes, solved together. Entry points: skiOnSnow (a ski under its skier,
 * flat or on edge) and solveOnSnow (any beam over any snow line).
 */
export { bedLaw } from "./bed";
export { skiOnSnow } from "./ski-on-snow";
export { solveOnSnow } from "./solve-on-snow";
export * from "./types";
