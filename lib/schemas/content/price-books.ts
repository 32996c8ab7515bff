import { z } from "zod";
import type { DiscountRule, FixedOptionCode, PriceBook } from "#engine/pricing";
import { earlierOptions, formerly } from "../earlier-releases";
import { about, basisPoints, distinctBy, id, isoDateSchema, label, wholeCents } from "./shared";

const discountRuleSchema = z.strictObject({
  code: id,
  label,
  basisPoints,
  isCeiling: z.boolean(),
  on: z.enum(["total", "model"]),
  needsOwner: z.boolean(),
}) satisfies z.ZodType<DiscountRule>;

const destinationCents = z.strictObject({
  home: wholeCents,
  domestic: wholeCents,
  abroad: wholeCents,
  collect: wholeCents,
});
const destinationRates = z.strictObject({
  home: basisPoints,
  domestic: basisPoints,
  abroad: basisPoints,
  collect: basisPoints,
});

/** Options that a spec itself asks for must have a price in every book. */
const fixedCodes = [
  "flex-outside-classes",
  "graphic-own",
  "graphic-own-pair",
  "inlay-counterchange",
  "inlay-complex",
  "mount-review",
  "tip-tail-protectors",
] as const satisfies readonly FixedOptionCode[];

const optionCents = formerly(earlierOptions, z.record(id, z.strictObject({ label, cents: wholeCents }))).superRefine(
  (options, context) => {
    for (const code of fixedCodes) {
      if (options[code] === undefined)
        context.addIssue({ code: "custom", path: [code], message: `"${code}" has no price` });
    }
  },
);

/** A book as it is written: in the shop's currency, whatever that is. */
type WrittenPriceBook = Omit<PriceBook, "currency"> & Partial<Pick<PriceBook, "currency">>;

const priceBookSchema = z.strictObject({
  id: z.string().regex(/^[A-Z]+-\d+$/, { error: "a price book is named by capitals, a hyphen and a number" }),
  /** Stood in each book before the shop's own file was its one home; read from there, and kept in older releases. */
  currency: z.literal("USD").exactOptional(),
  effectiveFrom: isoDateSchema,
  modelCents: z.record(id, wholeCents),
  optionCents,
  flexClassesIncluded: z.array(z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)])),
  discounts: z.array(discountRuleSchema).superRefine(distinctBy((rule) => rule.code)),
  maxDiscounts: z.literal(1, { error: "one discount a price: they do not stack" }),
  shippingCents: destinationCents,
  taxBasisPoints: destinationRates,
  depositBasisPoints: basisPoints,
  rush: z.strictObject({ label, basisPoints, minimumCents: wholeCents }),
  quoteValidDays: z.int().min(1).max(365),
  printOnly: z.strictObject({ setUpCents: wholeCents, perSheetCents: wholeCents }),
}) satisfies z.ZodType<WrittenPriceBook>;

export const priceBooksFileSchema = z.strictObject({
  about,
  priceBooks: z
    .array(priceBookSchema)
    .min(1)
    .superRefine(distinctBy((book) => book.id))
    .superRefine(distinctBy((book) => book.effectiveFrom)),
});
