/** What people send by a button: each form once, for the pages and for whatever else calls the same use case. */
import { z } from "zod";
import { emailSchema, phoneSchema } from "./contact";
import { catalogId, numberIn, oneOf, textIn } from "./fields";

const reason = textIn("Reason", 3, 500);
const note = textIn("Note", 1, 2000);
const fullName = textIn("Name", 1, 120);

/** As typed, spaces and all. How long a new one must be is decided where its person and the workshop are known. */
const password = z
  .string({ error: "Password is missing" })
  .min(1, { error: "Password is missing" })
  .max(200, { error: "Password is longer than 200 characters" });

/** A tick that must be set. */
function ticked(label: string) {
  return z.literal(true, { error: `${label}: please tick` });
}

/** Somebody who will sign in to the shop. */
export const newStaffSchema = z.strictObject({
  role: oneOf("Role", ["desk", "maker", "owner"]),
  name: textIn("Name", 1, 120),
  email: emailSchema,
  password,
});

/** What a device of the floor or a screen on the wall is called here. */
export const placeNameSchema = textIn("Name", 1, 60);

/** What the first owner of an empty shop types beside the code from the terminal. */
export const firstOwnerSchema = z.strictObject({
  passcode: textIn("Code", 1, 60),
  name: fullName,
  email: emailSchema,
  password,
});

export const signInSchema = z.strictObject({ email: emailSchema, password });

/** By name and short code, on a device of the floor. */
export const floorSignInSchema = z.strictObject({
  staffId: textIn("Name", 1, 60),
  passcode: z
    .string({ error: "Short code is missing" })
    .min(1, { error: "Short code is missing" })
    .max(20, { error: "Short code is longer than 20 characters" }),
});

/** Whoever accepts has seen the terms and the notice that fits the configuration. */
export const acceptQuoteSchema = z.strictObject({
  name: fullName,
  acceptsTerms: ticked("Terms and price"),
  sawWithdrawalNotice: ticked("Withdrawal notice"),
});

export const requestChangeSchema = z.strictObject({ note });
export const withdrawSchema = z.strictObject({ reason });
export const honourOldPriceSchema = z.strictObject({ reason });

export const acknowledgeFlagSchema = z.strictObject({ code: catalogId("Flag"), reason });
export const allowSaleSchema = z.strictObject({ reason });
export const turnDownSchema = z.strictObject({ reason });
export const askReviewSchema = z.strictObject({ note });
export const callBackSchema = z.strictObject({
  at: z.iso.datetime({ offset: true, error: "Call back: a day and a time are needed" }),
  reason,
  phone: phoneSchema,
});

export const recordDepositSchema = z.strictObject({
  method: oneOf("Method", ["pay-later", "bank-transfer", "counter", "demo-card"]),
  reference: textIn("Reference", 1, 120).exactOptional(),
});

export const recordReceiptSchema = z.strictObject({
  what: oneOf("What for", ["rush", "balance"]),
  method: oneOf("Method", ["bank-transfer", "counter", "demo-card"]),
  reference: textIn("Reference", 1, 120).exactOptional(),
});

export const recordRefundSchema = z.strictObject({
  method: oneOf("Method", ["bank-transfer", "counter"]),
  reference: textIn("Reference", 1, 120),
});

const keptDays = (label: string) =>
  z
    .string({ error: `${label}: a number of days is needed` })
    .regex(/^([1-9]\d{0,4})?$/, { error: `${label}: whole days from 1 to 99999, or nothing for ever` })
    .transform((days) => (days === "" ? null : Number(days)));

/** As typed; an empty field keeps for ever. */
export const retentionQuery = z.strictObject({
  drafts: keptDays("Sheets without a quote"),
  askers: keptDays("People who only asked"),
  unconfirmed: keptDays("Orders never confirmed"),
  letters: keptDays("Letters that were sent"),
  buyers: keptDays("Customers after their last order"),
});
export const retentionSchema = retentionQuery.extend({ reason });
export const erasePersonSchema = z.strictObject({ reason });
/** A contact as it should be; an empty field says there is none. */
export const correctContactSchema = z.strictObject({
  name: fullName,
  phone: z.union([z.literal(""), phoneSchema]),
  email: z.union([z.literal(""), emailSchema]),
  reason,
});
export const mergeCustomersSchema = z.strictObject({ reason });
export const releaseBudgetsSchema = z.strictObject({ reason });

export const confirmOrderSchema = z.strictObject({ reason });
export const contactCodeSchema = z.strictObject({ code: textIn("Code", 1, 20) });

export const confirmRightsSchema = z.strictObject({
  basis: oneOf("Rights", ["own", "licensed", "public-domain", "commissioned"]),
  name: fullName,
});

export const approveProofSchema = z.strictObject({
  revision: numberIn({ label: "Proof revision", min: 1, max: 999, whole: true }),
  name: fullName,
});

export const askProofChangesSchema = z.strictObject({
  revision: numberIn({ label: "Proof revision", min: 1, max: 999, whole: true }),
  note,
});

export const cancelOrderSchema = z.strictObject({ reason });
export const shipOrderSchema = z.strictObject({
  tracking: textIn("Tracking", 1, 120).exactOptional(),
  unpaidReason: reason.exactOptional(),
});
export const waiveRushSchema = z.strictObject({ reason });
