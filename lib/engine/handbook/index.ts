/** Textbook results that only checks use: the product does not reach them. Each file names the source it checks against. */
export * from "./arc";
export * from "./cantilever";
export * from "./carving";
export * from "./cloth";
export * from "./johnson";
export * from "./lamina";
export * from "./layered-rectangle";
export * from "./lognormal";
export * from "./quadrature";
export * from "./sandwich-beam";
export * from "./strip-bench";
export * from "./torsion";
export * from "./wood";
