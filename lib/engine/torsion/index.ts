export { MESHES } from "./mesh";
export { torsionalStiffnessNmm2 } from "./torsional-stiffness";
export * from "./types";
