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
  ply: z.strictObject(plyConstants),
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
  walls: z.strictObject({ thicknessMm: positive, heightMm: positive, shearModulusMpa: positive }).optional(),
});

export const sectionVerb = verb({
  name: "section",
  summary: "one cross-section; layers from the bottom, each one part or parts side by side",
  input,
  output: z.object({
    neutralAxisMm: z.number(),
    axialStiffnessN: z.number(),
    bendingStiffnessNmm2: z.number(),
    torsionalStiffnessNmm2: z.number(),
    massGPerM: z.number(),
    thicknessMm: z.number(),
  }),
  run: ({ layers, walls }) => accept(sectionConstants(layers, walls)),
});
