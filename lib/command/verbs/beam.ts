import { z } from "zod";
import { solveBeam } from "#engine/flex";
import { accept, refuse } from "#engine/units";
import { verb } from "../verb";
import { finite, nonNegative, positive } from "./schemas";

const station = z.strictObject({
  xMm: finite,
  bendingStiffnessNmm2: positive,
  torsionalStiffnessNmm2: positive.optional(),
});

const input = z
  .strictObject({
    stations: z.array(station).min(2).max(5000),
    support: z.union([
      z.strictObject({ kind: z.literal("simple"), xMm: z.tuple([finite, finite]) }),
      z.strictObject({ kind: z.literal("clamped"), xMm: finite }),
    ]),
    load: z.strictObject({ xMm: finite, forceN: nonNegative }),
    torqueNmm: finite.optional(),
  })
  .superRefine(({ stations }, context) => {
    stations.forEach((here, index) => {
      const before = stations[index - 1];
      if (before && here.xMm < before.xMm) {
        const message = `${here.xMm} mm comes after ${before.xMm} mm: stations ascend`;
        context.addIssue({ code: "custom", path: ["stations", index, "xMm"], message });
      }
    });
  });

export const beamVerb = verb({
  name: "beam",
  summary: "Euler–Bernoulli beam, stiffness linear between stations; simple or clamped support, one load",
  input,
  output: z.object({
    deflectionMm: z.number(),
    maxDeflectionMm: z.number(),
    maxAtMm: z.number(),
    springNPerMm: z.number(),
    curve: z.array(z.object({ xMm: z.number(), deflectionMm: z.number() })),
    twistRad: z.number().optional(),
  }),
  run: (problem) => {
    const from = problem.stations[0]?.xMm ?? 0;
    const to = problem.stations.at(-1)?.xMm ?? 0;
    const places = [
      ...(problem.support.kind === "simple" ? problem.support.xMm : [problem.support.xMm]),
      problem.load.xMm,
    ];
    const outside = places.find((x) => x < from || x > to);
    if (outside !== undefined) return refuse({ code: "off-the-beam", xMm: outside, fromMm: from, toMm: to });
    return accept(solveBeam(problem));
  },
});
