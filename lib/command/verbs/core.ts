import { z } from "zod";
import { massOfFlexG, solveSpec } from "#engine/configuration";
import { accept } from "#engine/units";
import { catalogue } from "../catalogue";
import { verb } from "../verb";
import { flexSpec } from "./schemas";

export const coreVerb = verb({
  name: "core",
  summary: "a spec → the core's thickness along the ski that gives the wanted flex ratio",
  input: flexSpec,
  output: z.object({
    profile: z.array(z.object({ xMm: z.number(), thicknessMm: z.number() })),
    achievedRatio: z.number(),
    limitedBy: z.array(z.string()),
    massOverClass3G: z.number(),
  }),
  run: (spec) => {
    const solved = solveSpec(spec, catalogue().build);
    if (!solved.ok) return solved;
    const { profile, achievedRatio, wantedRatio, limitedBy } = solved.value.core;
    const costs = massOfFlexG(spec, catalogue().build);
    if (!costs.ok) return costs;
    const massOverClass3G = costs.value;
    return accept({ profile: profile.stations, achievedRatio, wantedRatio, limitedBy, massOverClass3G });
  },
});
