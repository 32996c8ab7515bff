export * from "./binomial";
export * from "./dense";
export * from "./eigen";
export * from "./interpolation";
export * from "./portable";
export * from "./quantiles";
export * from "./random";
export * from "./roots";
