/** Who is asking, as far as they said. */
import { z } from "zod";
import { textIn } from "./fields";

export const emailSchema = z
  .string({ error: "E-mail is missing" })
  .trim()
  .max(200, { error: "E-mail is longer than 200 characters" })
  .pipe(z.email({ error: (issue) => `E-mail "${String(issue.input)}" is not an address` }));

/** Digits with the usual marks; how it is compared is the desk's business. */
export const phoneSchema = textIn("Phone", 5, 40).regex(/^\+?[\d ()./-]+$/, {
  error: (issue) => `Phone "${String(issue.input)}" may hold digits, spaces, brackets, hyphens and a leading +`,
});

/** Where somebody is reached: a telephone number, or an address to write to. */
export const reachSchema = z
  .string({ error: "A telephone number or an e-mail address is missing" })
  .trim()
  .superRefine((text, context) => {
    const { error } = (text.includes("@") ? emailSchema : phoneSchema).safeParse(text);
    for (const { message } of error?.issues ?? []) context.addIssue({ code: "custom", message });
  });

export const addressSchema = z.strictObject({
  lines: z
    .array(textIn("Address line", 1, 120))
    .min(1, { error: "Address: at least 1 line" })
    .max(4, {
      error: "Address: at most 4 lines",
    }),
  town: textIn("Town", 1, 80),
  region: textIn("Region", 1, 80).exactOptional(),
  postcode: textIn("Postcode", 1, 20),
  country: textIn("Country", 2, 60),
});

export const contactFields = {
  name: textIn("Name", 1, 120),
  phone: phoneSchema,
  email: emailSchema,
  address: addressSchema,
} as const;
