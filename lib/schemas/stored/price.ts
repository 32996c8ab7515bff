/** A price as it was agreed. */
import { z } from "zod";
import type { Price, PriceLine } from "#engine/pricing";
import { amount, listOf, storedCents, words } from "./common";
import { storedDestination } from "./pair-spec";

const line = z.object({
  code: words,
  label: words,
  quantity: amount,
  unitCents: storedCents,
  lineCents: storedCents,
  taxClass: z.enum(["goods", "shipping", "service"]),
  taxCents: storedCents,
  reason: words.exactOptional(),
  approvedBy: words.exactOptional(),
}) satisfies z.ZodType<PriceLine>;

export const storedPrice = z.object({
  priceBook: words,
  currency: z.literal("USD"),
  destination: storedDestination,
  lines: listOf(line),
  exTaxCents: storedCents,
  shippingCents: storedCents,
  taxCents: storedCents,
  totalCents: storedCents,
  depositCents: storedCents,
  balanceCents: storedCents,
}) satisfies z.ZodType<Price>;
