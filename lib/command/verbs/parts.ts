import { z } from "zod";
import { accept, refuse } from "#engine/units";
import { verb } from "../verb";
import { assessed, sheetInput } from "./sheet-input";

export const partsVerb = verb({
  name: "parts",
  summary: "a sheet's choices → every line of the pair's parts list with cut sizes, and the resin batch",
  input: sheetInput,
  output: z.object({
    lines: z.array(
      z.object({
        line: z.number().int(),
        code: z.string(),
        label: z.string(),
        material: z.string(),
        cut: z.string(),
        quantityLeft: z.number(),
        quantityRight: z.number(),
        quantityPair: z.number(),
        unit: z.string(),
        scrapFactor: z.number(),
      }),
    ),
    resin: z.object({ resinG: z.number(), hardenerG: z.number(), system: z.string() }),
  }),
  run: (input, { today }) => {
    const outcome = assessed(input, today);
    if (!outcome.ok) return outcome;
    const { parts, spec } = outcome.value;
    return parts === null ? refuse({ code: "not-buildable", path: "choices" }) : accept({ spec, ...parts });
  },
});
