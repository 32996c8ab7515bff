export * from "./base-roll";
export * from "./heat-up";
export { isBondedToCore, type LaidLayer, type LaidPart, laidLayers } from "./laid-layers";
export { partsFor } from "./parts-for";
export * from "./press";
export * from "./resin-use";
export * from "./stack-heat";
export { stripBlank } from "./strip-blank";
export * from "./types";
