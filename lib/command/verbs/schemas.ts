import { z } from "zod";

/** Shared pieces of the verbs' forms. Units end the field names. */
export const finite = z.number();
export const positive = z.number().positive();
export const nonNegative = z.number().nonnegative();

export const plyConstants = {
  e1Mpa: positive,
  e2Mpa: positive,
  g12Mpa: positive,
  nu12: z.number().min(0).max(1),
  angleDeg: z.number().min(-360).max(360),
} as const;

export const matrix3 = z.array(z.array(z.number()).length(3)).length(3);

/** The part of a spec that decides stiffness and mass. */
export const flexSpec = z.strictObject({
  model: z.string().min(1),
  lengthCm: z.number().int().min(80).max(220),
  core: z.string().min(1),
  reinforcements: z.array(z.string().min(1)).max(8).default([]),
  flexRatio: z.number().min(0.3).max(2.5).default(1),
});
