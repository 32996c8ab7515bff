import { z } from "zod";
import type { CalibrationSettings } from "#engine/calibration";
import { about } from "./shared";

const share = z.number().positive().max(0.5);

export const calibrationFileSchema = z.strictObject({
  about,
  leastPairs: z.int().min(1),
  priorSd: z.strictObject({
    modulus: share,
    density: share,
    sheet: share.exactOptional(),
    coreOffsetMm: z.number().positive().max(2),
    camberOffsetMm: z.number().positive().max(10),
    twist: share,
  }),
  readingSd: z.strictObject({ mass: share, spring: share, camberMm: z.number().positive().max(10), twist: share }),
  suspiciousAt: z.number().min(2).max(10),
}) satisfies z.ZodType<CalibrationSettings>;
