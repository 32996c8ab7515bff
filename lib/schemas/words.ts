/**
 * Words as data: a refusal is a code with parameters, its words stand in content/copy/refusals.json with `{parameter}`
 * places. Browser-safe: whoever shows a refusal passes the words in.
 */
import { z } from "zod";
import { type Refusal, textForPeople } from "#engine/units";

const text = z
  .string()
  .min(1, { error: "a word is empty" })
  .refine((words) => /^(?:[^{}]|\{\w+\})*$/.test(words), {
    error: (issue) => `"${String(issue.input)}" has a broken {place}`,
  });

/** Any depth of groups and lists of words. */
type Words = string | readonly Words[] | { readonly [key: string]: Words };
export const copyFileSchema: z.ZodType<Words> = z.lazy(() =>
  z.union([text, z.array(copyFileSchema), z.record(z.string(), copyFileSchema)]),
);

/** One text a refusal code, `unknown` for a code that has none yet. */
export const refusalWordsSchema = z
  .record(z.string().regex(/^[a-z0-9-]+$/), text)
  .refine((words) => words.unknown !== undefined, {
    error: 'refusals.json needs words for "unknown"',
  });
export type RefusalWords = z.output<typeof refusalWordsSchema>;

/**
 * What a person reads: the words of the code with its parameters in place. A refusal without words of its own speaks by
 * its `message` (a flag carries one), else it says its code.
 */
export function wordsFor(refusal: Refusal, words: RefusalWords): string {
  const template = words[refusal.code] ?? ownMessage(refusal) ?? words.unknown ?? "{code}";
  return template.replaceAll(/\{(\w+)\}/g, (_place, name: string) => shown(refusal[name]));
}

function ownMessage(refusal: Refusal): string | undefined {
  return typeof refusal.message === "string" ? "{message}" : undefined;
}

function shown(parameter: unknown): string {
  if (parameter === undefined || parameter === null) return "–";
  if (typeof parameter === "number")
    return Number.isInteger(parameter) ? String(parameter) : textForPeople(parameter, 1);
  if (Array.isArray(parameter)) return parameter.map(shown).join(", ");
  return typeof parameter === "string" ? parameter : JSON.stringify(parameter);
}
