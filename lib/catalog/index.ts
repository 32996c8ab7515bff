export { canonicalJson, sha256Of } from "./canonical-json";
export * from "./catalog";
export * from "./catalog-error";
