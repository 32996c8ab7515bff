export * from "./catalog";
export * from "./catalog-error";
