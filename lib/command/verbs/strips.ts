import { z } from "zod";
import { matchStrips } from "#engine/matching";
import { accept } from "#engine/units";
import { verb } from "../verb";
import { nonNegative, positive } from "./schemas";

const size = z.strictObject({ widthMm: positive, heightMm: positive, lengthMm: positive });

const strip = z.strictObject({
  id: z.string().min(1),
  species: z.string().min(1),
  modulusMpa: positive,
  densityKgM3: positive,
  grade: z.string(),
  board: z.string(),
  ageDays: nonNegative.exactOptional(),
  size: size.exactOptional(),
});

const position = z.strictObject({
  name: z.string().min(1),
  perSki: z.union([z.literal(1), z.literal(2)]),
  species: z.array(z.string().min(1)).min(1),
  grades: z.array(z.string()).min(1).exactOptional(),
  least: size.exactOptional(),
  weight: positive.exactOptional(),
  offset: nonNegative.exactOptional(),
});

const percent = nonNegative.exactOptional();

const input = z
  .strictObject({
    strips: z.array(strip).max(20_000),
    need: z.strictObject({
      pairs: z.number().int().min(0).max(500),
      positions: z.array(position).min(1).max(12),
      targetModulusMpa: positive.exactOptional(),
    }),
    limits: z
      .strictObject({
        groupSpreadPercent: percent,
        twinPercent: percent,
        imbalancePercent: percent,
        densityPercent: percent,
        targetPercent: percent,
      })
      .default({}),
  })
  .superRefine(({ strips, need }, context) => {
    const seen = new Set<string>();
    strips.forEach(({ id }, index) => {
      if (seen.has(id))
        context.addIssue({ code: "custom", path: ["strips", index, "id"], message: `"${id}" is listed twice` });
      seen.add(id);
    });
    const names = need.positions.map(({ name }) => name);
    names.forEach((name, index) => {
      if (names.indexOf(name) === index) return;
      context.addIssue({
        code: "custom",
        path: ["need", "positions", index, "name"],
        message: `"${name}" stands twice`,
      });
    });
  });

const skiStrips = z.record(z.string(), z.array(z.string()));

export const stripsVerb = verb({
  name: "strips",
  summary: "measured strips → matched pairs of twin cores within limits",
  input,
  output: z.object({
    pairs: z.array(
      z.object({
        left: skiStrips,
        right: skiStrips,
        modulusMpa: z.number(),
        twinDifferencePercent: z.number(),
        groupSpreadPercent: z.record(z.string(), z.number()),
      }),
    ),
    unmet: z.number(),
  }),
  run: (problem) => accept(matchStrips(problem)),
});
