/**
 * The ski's shape: plan outline, side profile, what they measure, and the outlines of the parts cut to it.
 * Axes are stated in types.ts: x from the tip end along the developed surface, y from the centre line, z up from the bench.
 */
export * from "./bevel";
export * from "./drawing-files";
export * from "./edge-span";
export * from "./machine-outline";
export * from "./measure";
export * from "./offset";
export { halfOutline, halfWidthAt } from "./outline";
export * from "./profile";
export * from "./shape";
export * from "./sidecut";
export * from "./types";
