import { z } from "zod";
import type { Corrections } from "#engine/materials";
import { id } from "./shared";

/** A factor outside would be another material, not a correction. */
const factor = z.number().min(0.5).max(2);

/** A book of corrections as part of a release; a release without one counts with the handbook's values. */
export const correctionsFileSchema = z.strictObject({
  version: z.string().min(1),
  moduli: z.record(id, factor),
  densities: z.record(id, factor),
  coreOffsetMm: z.number().min(-2).max(2),
  camberOffsetMm: z.number().min(-20).max(20),
  twist: factor.exactOptional(),
  differenceLeft: z.strictObject({ spring: z.number().min(0).max(1), mass: z.number().min(0).max(1) }).exactOptional(),
}) satisfies z.ZodType<Corrections>;
