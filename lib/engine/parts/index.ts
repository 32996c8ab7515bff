export * from "./base-roll";
export { partsFor } from "./parts-for";
export * from "./types";
