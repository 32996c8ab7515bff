import { z } from "zod";
import { accept, refuse } from "#engine/units";
import { verb } from "../verb";
import { assessed, sheetInput } from "./sheet-input";

const whole = z.number().int();

export const priceVerb = verb({
  name: "price",
  summary: "a sheet's choices (and answers, if any) → price lines and totals in whole cents, and what blocks the sale",
  input: sheetInput,
  output: z.object({
    priceBook: z.string(),
    currency: z.string(),
    lines: z.array(
      z.object({ code: z.string(), label: z.string(), quantity: whole, unitCents: whole, lineCents: whole }),
    ),
    exTaxCents: whole,
    shippingCents: whole,
    taxCents: whole,
    totalCents: whole,
    depositCents: whole,
    balanceCents: whole,
    saleBlockedBy: z.array(z.object({ code: z.string() })),
  }),
  run: (input, { today }) => {
    const outcome = assessed(input, today);
    if (!outcome.ok) return outcome;
    const { price, saleBlockedBy } = outcome.value;
    if (price === null) return refuse(saleBlockedBy.at(-1) ?? { code: "no-price", path: "choices" });
    return accept({ ...price, saleBlockedBy: saleBlockedBy.filter(({ code }) => code !== "missing-answer") });
  },
});
