export { partsFor } from "./parts-for";
export * from "./types";
