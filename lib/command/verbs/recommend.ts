import { z } from "zod";
import { recommend } from "#engine/fit";
import { accept } from "#engine/units";
import { answersSchema } from "#schemas";
import { catalogue } from "../catalogue";
import { verb } from "../verb";

export const recommendVerb = verb({
  name: "recommend",
  summary: "a skier's answers → ranked models with length, flex, reasons, and the flags that make a person stop",
  input: answersSchema,
  output: z.object({
    wantedWaistMm: z.number(),
    choices: z.array(
      z.object({
        model: z.string(),
        lengthCm: z.number(),
        flexRatio: z.number(),
        flexClass: z.number().nullable(),
        reasons: z.array(z.object({ factor: z.string(), effect: z.string(), unit: z.string(), amount: z.number() })),
      }),
    ),
    flags: z.array(z.object({ code: z.string(), message: z.string() })),
  }),
  run: (answers) => {
    const { build, fit } = catalogue();
    return accept(recommend(answers, build, fit));
  },
});
