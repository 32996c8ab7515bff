/** snow.json: how hard the snow is that a ski is shown on. */
import { z } from "zod";
import type { SnowKind } from "#engine/assessment";
import { oneOf } from "../fields";
import { about, distinctBy, id, label, source } from "./shared";

export const snowFileSchema = z.strictObject({
  about,
  snow: z
    .array(
      z.strictObject({
        id,
        label,
        /** Beyond these a ski would either drown or stand on points that no mesh resolves. */
        hardnessNPerMm3: z.number().min(0.0005).max(10),
        usual: z.literal(true).optional(),
        homeSnows: z.array(oneOf("Snow at home", ["icy", "firm", "mixed", "soft", "deep"])).optional(),
        source,
      }),
    )
    .min(1)
    .max(6)
    .superRefine(distinctBy((row) => row.id)) satisfies z.ZodType<readonly SnowKind[]>,
});
