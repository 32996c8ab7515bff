import { z } from "zod";
import { laminateConstants } from "#engine/laminate";
import { accept } from "#engine/units";
import { verb } from "../verb";
import { matrix3, plyConstants, positive } from "./schemas";

const input = z.strictObject({
  plies: z
    .array(z.strictObject({ ...plyConstants, thicknessMm: positive }))
    .min(1)
    .max(500),
});

export const laminateVerb = verb({
  name: "laminate",
  summary: "classical lamination theory; plies from the bottom face, z up, mid-plane at 0",
  input,
  output: z.object({
    aNPerMm: matrix3,
    bN: matrix3,
    dNmm: matrix3,
    exMpa: z.number(),
    eyMpa: z.number(),
    gxyMpa: z.number(),
    nuXy: z.number(),
    flexExMpa: z.number(),
    flexEyMpa: z.number(),
    flexGxyMpa: z.number(),
    thicknessMm: z.number(),
    aComplianceMmPerN: matrix3,
    bCompliancePerN: matrix3,
    dCompliancePerNmm: matrix3,
    shearPerStretch: z.number(),
    twistPerBend: z.number(),
  }),
  run: ({ plies }) => accept(laminateConstants(plies)),
});
