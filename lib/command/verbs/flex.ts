import { z } from "zod";
import { solveSpec, spreadOf } from "#engine/configuration";
import { bareBuild, closingForceN, skiBehaviour } from "#engine/flex";
import { accept } from "#engine/units";
import { catalogue } from "../catalogue";
import { verb } from "../verb";
import { flexSpec } from "./schemas";

const spreadValues = z.object({ springCentre: z.number(), midBending: z.number(), massG: z.number() });

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
    coreShearPercent: z.number(),
    polarMomentKgM2: z.number(),
    twistForebodyNmPerDeg: z.number(),
    twistAfterbodyNmPerDeg: z.number(),
    bendingHz: z.number(),
    torsionHz: z.number(),
    camberClosingForceN: z.number(),
    /** One standard deviation each; null for a catalogue without scatter. */
    spread: spreadValues
      .extend({
        twins: spreadValues,
        bySource: z.array(spreadValues.extend({ source: z.string() })),
      })
      .nullable(),
  }),
  run: (spec) => {
    const solved = solveSpec(spec, catalogue().build);
    if (!solved.ok) return solved;
    const { build, flex, flexWithPlate, core } = solved.value;
    const bare = bareBuild(build);
    const { stations: _stations, ...withPlateAndMat } = flexWithPlate;
    const wholes = { ...skiBehaviour(bare, flex), camberClosingForceN: closingForceN(bare, flex) };
    const spread = spreadOf(solved.value, catalogue().build);
    return accept({ ...flex, ...wholes, achievedRatio: core.achievedRatio, withPlateAndMat, spread });
  },
});
