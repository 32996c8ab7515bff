/** How long what is kept, in days; null: until somebody erases it by hand. */
import { z } from "zod";

export const retentionKinds = ["drafts", "askers", "unconfirmed", "letters", "buyers"] as const;
export type RetentionKind = (typeof retentionKinds)[number];
export type RetentionRules = Readonly<Record<RetentionKind, number | null>>;

const days = z.int().positive().nullable();

export const storedRetention = z
  .object({ drafts: days, askers: days, unconfirmed: days, letters: days, buyers: days })
  .readonly() satisfies z.ZodType<RetentionRules>;
