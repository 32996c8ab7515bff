import { z } from "zod";
import { sectionConstants } from "#engine/laminate";
import { accept } from "#engine/units";
import { verb } from "../verb";
import { nonNegative, plyConstants, positive } from "./schemas";

const moduliPart = z.strictObject({
  widthMm: positive,
  modulusMpa: positive,
  shearModulusMpa: nonNegative.optional(),
  densityKgM3: nonNegative.optional(),
});
const plyPart = z.strictObject({
  widthMm: positive,
  ply: z.strictObject({
    ...plyConstants,
    g13Mpa: positive.describe("shear through the thickness; absent: as g12Mpa").optional(),
  }),
  densityKgM3: nonNegative.optional(),
});

const input = z.strictObject({
  layers: z
    .array(
      z.strictObject({
        thicknessMm: positive,
        parts: z
          .array(z.union([moduliPart, plyPart]))
          .min(1)
          .max(100),
      }),
    )
    .min(1)
    .max(200),
});

export const sectionVerb = verb({
  name: "section",
  summary: "one cross-section; layers from the bottom, centred on one another, each its parts from left to right",
  input,
  output: z.object({
    neutralAxisMm: z.number(),
    axialStiffnessN: z.number(),
    bendingStiffnessNmm2: z.number(),
    torsionalStiffnessNmm2: z.number().describe("Saint-Venant, parts where they lie"),
    thinStripTorsionalStiffnessNmm2: z.number().describe("4b/d66"),
    massGPerM: z.number(),
    thicknessMm: z.number(),
  }),
  run: ({ layers }) => accept(sectionConstants(layers)),
});
