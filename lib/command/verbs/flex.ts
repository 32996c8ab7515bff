import { z } from "zod";
import { solveSpec } from "../../engine/configuration";
import { accept } from "../../engine/units";
import { catalogue } from "../catalogue";
import { verb } from "../verb";
import { flexSpec } from "./schemas";

export const flexVerb = verb({
  name: "flex",
  summary: "a spec → stiffness, twist and mass along the ski, springs and mass (bare ski; plate and mat beside it)",
  input: flexSpec,
  output: z.object({
    stations: z.array(
      z.object({
        xMm: z.number(),
        widthMm: z.number(),
        coreMm: z.number(),
        bendingStiffnessNmm2: z.number(),
        torsionalStiffnessNmm2: z.number(),
        massGPerM: z.number(),
      }),
    ),
    massKg: z.number(),
    springCentreNPerMm: z.number(),
    springForebodyNPerMm: z.number(),
    springAfterbodyNPerMm: z.number(),
  }),
  run: (spec) => {
    const solved = solveSpec(spec, catalogue().build);
    if (!solved.ok) return solved;
    const { flex, flexWithPlate, core } = solved.value;
    const { stations: _stations, ...withPlateAndMat } = flexWithPlate;
    return accept({ ...flex, achievedRatio: core.achievedRatio, withPlateAndMat });
  },
});
