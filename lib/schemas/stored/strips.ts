/** What was decided about the wood of a pair. */
import { z } from "zod";
import type { UnmetReason } from "#engine/matching";
import type { IsoDate, PairId } from "#engine/units";
import { idSchema } from "../ids";
import { amount, listOf, storedDay, words } from "./common";

/** A way out when stock holds no set for a pair; figures are against the core as ordered. */
export type StripOption = { readonly id: string } & (
  | { readonly kind: "as-ordered" }
  | {
      readonly kind: "other-species";
      readonly position: string;
      readonly from: string;
      readonly species: string;
      /** Of one ski, with the core solved again for the ordered flex, g. */
      readonly massG: number;
      /** Of the flex ratio, were the core milled as if nothing had changed, per cent. */
      readonly ratioPercent: number;
      /** In the middle, solved again, mm. */
      readonly thicknessMm: number;
      /** Dense wood belongs under the foot: this would put it elsewhere. */
      readonly isDenseOutside: boolean;
    }
  | {
      readonly kind: "other-thickness";
      /** Modulus of the strips there are against the design's, per cent. */
      readonly modulusPercent: number;
      readonly thicknessMm: number;
      readonly massG: number;
    }
  | {
      readonly kind: "take-from";
      readonly fromPairId: PairId;
      readonly serial: string;
      readonly promisedOn: IsoDate | null;
      /** Working days between its nine-of-ten day and its promise; null without a promise. */
      readonly slackWorkingDays: number | null;
    }
  | { readonly kind: "wait" }
);

/** Whether stock held a matched set for a pair, and why not. */
export type StripAllocation =
  | { readonly isMade: true; readonly twinDifferencePercent: number; readonly modulusMpa: number }
  | { readonly isMade: false; readonly why: readonly UnmetReason[] };

export const storedStripOption = z.discriminatedUnion("kind", [
  z.object({ id: words, kind: z.literal("as-ordered") }),
  z.object({
    id: words,
    kind: z.literal("other-species"),
    position: words,
    from: words,
    species: words,
    massG: amount,
    ratioPercent: amount,
    thicknessMm: amount,
    isDenseOutside: z.boolean(),
  }),
  z.object({
    id: words,
    kind: z.literal("other-thickness"),
    modulusPercent: amount,
    thicknessMm: amount,
    massG: amount,
  }),
  z.object({
    id: words,
    kind: z.literal("take-from"),
    fromPairId: idSchema("pair"),
    serial: words,
    promisedOn: storedDay.nullable(),
    slackWorkingDays: amount.nullable(),
  }),
  z.object({ id: words, kind: z.literal("wait") }),
]) satisfies z.ZodType<StripOption>;

const unmetReason = z.object({
  code: z.enum([
    "too-few-strips",
    "strips-too-small",
    "spread-too-wide",
    "groups-overlap",
    "off-target",
    "twins-differ",
  ]),
  position: words.exactOptional(),
  usable: amount.exactOptional(),
  needed: amount.exactOptional(),
  limitPercent: amount.exactOptional(),
  least: z.object({ widthMm: amount, heightMm: amount, lengthMm: amount }).exactOptional(),
}) satisfies z.ZodType<UnmetReason>;

export const storedAllocation = z.discriminatedUnion("isMade", [
  z.object({ isMade: z.literal(true), twinDifferencePercent: amount, modulusMpa: amount }),
  z.object({ isMade: z.literal(false), why: listOf(unmetReason) }),
]) satisfies z.ZodType<StripAllocation>;
