/** What the skier's buttons send, as text, turned into what the use cases' schemas expect. */
import { z } from "zod";

/** Every form behind a private link carries it. */
export const linkField = { token: z.string().min(1).max(100) };

/** A ticked box is sent as "on", an unticked one not at all. */
export function withTicks<S extends z.ZodType>(names: readonly string[], schema: S) {
  return z.preprocess((fields) => {
    const sent = fields as Readonly<Record<string, unknown>>;
    return { ...sent, ...Object.fromEntries(names.map((name) => [name, sent[name] === "on"])) };
  }, schema);
}

/** Whole numbers arrive as text. */
export function withNumbers<S extends z.ZodType>(names: readonly string[], schema: S) {
  return z.preprocess((fields) => {
    const sent = fields as Readonly<Record<string, unknown>>;
    return { ...sent, ...Object.fromEntries(names.map((name) => [name, Number(sent[name])])) };
  }, schema);
}
