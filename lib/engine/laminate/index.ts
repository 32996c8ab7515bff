export * from "./laminate";
export * from "./section";
export * from "./torsion";
export * from "./types";
