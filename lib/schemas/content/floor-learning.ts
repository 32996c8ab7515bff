/** floor-learning.json: how much the settings weigh against what the floor wrote down, and what is no honest visit. */
import { z } from "zod";
import type { FloorLearningSettings } from "#engine/floor-learning";
import { about } from "./shared";

const weight = z.number().positive().max(10_000);

export const floorLearningFileSchema = z.strictObject({
  about,
  leastPairs: z.int().min(1),
  lookBackWorkingDays: z.int().min(20).max(1000),
  prior: z.strictObject({
    visits: weight,
    passes: weight,
    days: weight,
    windows: weight,
    shocks: weight,
    weeks: weight,
  }),
  tooShortShareOfLow: z.number().min(0).max(1),
  forgottenTimesHigh: z.number().min(1).max(20),
  overnightTimesHigh: z.number().min(1).max(20),
  still: z.strictObject({ leastDays: z.int().min(1).max(20), leastPairs: z.int().min(1).max(50) }),
  plannedAheadWorkingDays: z.int().min(0).max(60),
}) satisfies z.ZodType<FloorLearningSettings>;
