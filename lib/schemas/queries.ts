/** Query strings: text in, typed out; what is missing or empty is left out, what is wrong is named. */

import { z } from "zod";
import { clockStartConditions, shownQuoteStates, states } from "#engine/floor";
import { oneOf, textIn } from "./fields";

const text = textIn("Search", 1, 120);
const page = z
  .string()
  .regex(/^[1-9]\d{0,5}$/, { error: (issue) => `Page "${String(issue.input)}" must be a whole number from 1` })
  .transform(Number);

/** `?text=&page=` sent by an empty form is the same as no query. */
function query<Shape extends z.ZodRawShape>(shape: Shape) {
  return z.preprocess(withoutEmpty, z.strictObject(shape));
}

function withoutEmpty(input: unknown): unknown {
  if (typeof input !== "object" || input === null) return input;
  return Object.fromEntries(Object.entries(input).filter(([, value]) => value !== "" && value !== undefined));
}

export const listDraftsQuery = query({
  text: text.exactOptional(),
  state: oneOf("State", states.sheet).exactOptional(),
  page: page.exactOptional(),
});

export const listQuotesQuery = query({
  text: text.exactOptional(),
  state: oneOf("State", shownQuoteStates).exactOptional(),
  onOldBook: oneOf("Old price book", ["true", "false"])
    .transform((value) => value === "true")
    .exactOptional(),
  page: page.exactOptional(),
});

export const listCustomersQuery = query({
  text: text.exactOptional(),
  sharesNumber: oneOf("Number", ["true", "false"])
    .transform((value) => value === "true")
    .exactOptional(),
  page: page.exactOptional(),
});

export const listOrdersQuery = query({
  text: text.exactOptional(),
  state: oneOf("State", [
    "waiting",
    "released",
    "building",
    "ready",
    "shipped",
    "delivered",
    "cancelled",
  ]).exactOptional(),
  waitingFor: z.enum(clockStartConditions).exactOptional(),
  page: page.exactOptional(),
});
