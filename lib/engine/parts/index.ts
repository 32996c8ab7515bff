export * from "./base-roll";
export { partsFor } from "./parts-for";
export * from "./resin-use";
export * from "./types";
