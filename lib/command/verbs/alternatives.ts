import { z } from "zod";
import { lighterBy, paretoSet, sameFlexOptions } from "#engine/assessment";
import { accept } from "#engine/units";
import { pricedCatalogue } from "../catalogue";
import { verb } from "../verb";
import { flexSpec } from "./schemas";

const input = flexSpec.extend({
  lighterByG: z
    .number()
    .positive()
    .max(5000)
    .describe("asks for the cheapest build at least so much lighter, g a pair")
    .exactOptional(),
  priceBook: z.string().min(1).describe("absent: the book in force today").exactOptional(),
});

const build = {
  core: z.string(),
  reinforcements: z.array(z.string()),
  massG: z.number().int().describe("finished pair"),
  priceCents: z.number().int().describe("total, tax and shipping included"),
  achievedRatio: z.number(),
  springCentreNPerMm: z.number().describe("bare ski"),
  forebodyTwistNmmPerRad: z.number().describe("bare ski, mount line to shoulder"),
  leadDays: z.number().int(),
  coreMidMm: z.number(),
} as const;

const option = z.object({
  ...build,
  isCurrent: z.boolean(),
  change: z.object({
    massG: z.number().int(),
    priceCents: z.number().int(),
    springCentrePercent: z.number(),
    twistPercent: z.number(),
    leadDays: z.number().int(),
    coreMidMm: z.number(),
  }),
});

export const alternativesVerb = verb({
  name: "alternatives",
  summary:
    "a spec → the shop's other builds of the same flex: mass, price, twist, which nothing beats, which is lighter",
  input,
  output: z.object({
    flexRatio: z.number(),
    now: z.object(build),
    options: z.array(option.extend({ isPareto: z.boolean().describe("none is lighter without being dearer") })),
    leftOut: z.object({
      clashing: z.number().int(),
      flexNotReached: z.number().int(),
      withoutPrice: z.number().int(),
    }),
    limitedBy: z.array(z.string()),
    answer: z
      .discriminatedUnion("kind", [
        z.object({ kind: z.literal("found"), wantedG: z.number(), option }),
        z.object({ kind: z.literal("not-so-light"), wantedG: z.number(), lightest: option.nullable() }),
      ])
      .nullable(),
  }),
  run: ({ lighterByG, priceBook, ...choices }, { today }) => {
    const catalog = pricedCatalogue(priceBook, today);
    if (!catalog.ok) return catalog;
    const found = sameFlexOptions({ answers: {}, choices }, catalog.value);
    if (!found.ok) return found;
    const unbeaten = new Set(paretoSet(found.value.options));
    return accept({
      ...found.value,
      options: found.value.options.map((each) => ({ ...each, isPareto: unbeaten.has(each) })),
      answer: lighterByG === undefined ? null : lighterBy(found.value.options, lighterByG),
    });
  },
});
