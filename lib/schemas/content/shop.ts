import { z } from "zod";
import { type CancellationStep, cancellationStages } from "#engine/floor";
import { about, basisPoints, label, sentence, wholeCents } from "./shared";

const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: "a time of day is written HH:MM" });
const paragraph = z.string().min(10).max(1200);

const cancellationStepSchema = z.strictObject({
  stage: z.enum(cancellationStages),
  label,
  keepBasisPoints: basisPoints,
  keepCents: wholeCents,
  keepsArtFee: z.boolean(),
}) satisfies z.ZodType<CancellationStep>;

export const shopFileSchema = z.strictObject({
  about,
  name: label,
  town: label,
  makes: sentence,
  postalAddress: sentence,
  email: z.email(),
  phone: z.string().min(5).max(40),
  website: label,
  homeState: z.string().regex(/^[A-Z]{2}$/, { error: "homeState is two capital letters" }),
  country: z.string().regex(/^[A-Z]{2}$/, { error: "country is two capital letters" }),
  currency: z.literal("USD"),
  timeZone: z.string().refine(isTimeZone, { error: (issue) => `"${String(issue.input)}" is not a time zone` }),
  workingDays: z.array(z.enum(["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"])).min(1),
  shifts: z.array(z.strictObject({ start: clock, end: clock })).min(1),
  /** Measured strips of a species to keep free; fewer are bought again. */
  stripReorderLevel: z.int().positive().optional(),
  serialPrefix: z.string().regex(/^[A-Z]{2,3}$/, { error: "serialPrefix is two or three capital letters" }),
  deposit: z.strictObject({
    holdWorkingDays: z.int().min(1).max(60),
    methods: z.array(z.enum(["pay-later", "bank-transfer", "counter", "demo-card"])).min(1),
    text: paragraph,
  }),
  cancellation: z
    .array(cancellationStepSchema)
    .refine((steps) => cancellationStages.every((stage, index) => steps[index]?.stage === stage), {
      error: `the ladder needs the steps ${cancellationStages.join(", ")}, in this order`,
    }),
  terms: z.array(paragraph).min(1),
  warranty: paragraph,
  withdrawal: z.strictObject({
    /** `{items}` stands for what the customer specified. */
    madeToSpecification: paragraph,
    chosenFromOptions: paragraph,
  }),
  delayNotice: paragraph,
  health: paragraph,
});

/** The shop's own facts and terms. */
export type Shop = Omit<z.output<typeof shopFileSchema>, "about">;

function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
