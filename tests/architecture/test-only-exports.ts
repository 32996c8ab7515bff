/**
 * Exports of lib that only tests reach, file by file. The list may only shrink: what finds its way into the product must leave
 * it, and nothing new may join but what checks the engine, in its handbook.
 */
export const testOnlyExports: Readonly<Record<string, readonly string[]>> = {
  "lib/engine/handbook/arc.ts": ["arcWidthMm"],
  "lib/engine/handbook/cantilever.ts": ["cantileverFrequencyHz"],
  "lib/engine/handbook/carving.ts": ["carvedRadiusM", "edgeContactBendMm"],
  "lib/engine/handbook/cloth.ts": [
    "curedThicknessMm",
    "fibreVolume",
    "fibreWeight",
    "halpinTsai",
    "inParallel",
    "inSeries",
    "isotropicShear",
    "laminateDensityKgM3",
    "resinGM2",
  ],
  "lib/engine/handbook/johnson.ts": ["johnsonOrder"],
  "lib/engine/handbook/lamina.ts": ["compliance", "laminaInvariants"],
  "lib/engine/handbook/layered-rectangle.ts": ["layeredRectangleTorsionNmm2"],
  "lib/engine/handbook/lognormal.ts": ["lognormalQuantile"],
  "lib/engine/handbook/quadrature.ts": ["integrate", "integratePiecewiseLinear"],
  "lib/engine/handbook/sandwich-beam.ts": ["coreShearDeflectionMm"],
  "lib/engine/handbook/strip-bench.ts": ["benchModulusMpa", "coreVariation", "shearCorrection"],
  "lib/engine/handbook/torsion.ts": ["closedBoxTorsionalStiffnessNmm2", "rectangleTorsionConstantMm4"],
  "lib/engine/handbook/wood.ts": ["atGrainAngle", "atMoisture", "axialModulusMpa", "woodDensityKgM3"],
};
