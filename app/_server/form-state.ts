/** What a form shows after it was sent: everything typed, and what was refused, by field. */
import type { z } from "zod";

export interface FormState {
  readonly status: "new" | "refused" | "failed" | "done";
  /** As typed, by field name; fields named like a password or a code are left out. */
  readonly values: Readonly<Record<string, string>>;
  /** Words by field name; "" is the form as a whole. */
  readonly refusals: Readonly<Record<string, string>>;
}

/** The text fields of a form. A name sent several times becomes a list; files are not read here. */
export function readForm(form: FormData): Readonly<Record<string, string | readonly string[]>> {
  const fields: Record<string, string | readonly string[]> = {};
  for (const name of new Set(form.keys())) {
    const texts = form.getAll(name).filter((value): value is string => typeof value === "string");
    if (name.startsWith("$ACTION_") || texts.length === 0) continue;
    fields[name] = texts.length === 1 ? (texts[0] ?? "") : texts;
  }
  return fields;
}

/** What to put back into the fields. */
export function typedValues(
  fields: Readonly<Record<string, string | readonly string[]>>,
): Readonly<Record<string, string>> {
  const shown = Object.entries(fields).filter(([name]) => !/password|passcode/i.test(name));
  return Object.fromEntries(shown.map(([name, value]) => [name, typeof value === "string" ? value : value.join(",")]));
}

/** The first message of each field, by dotted path. */
export function messagesByPath(issues: readonly z.core.$ZodIssue[]): Readonly<Record<string, string>> {
  const messages: Record<string, string> = {};
  for (const issue of issues) {
    const path = issue.path.join(".");
    messages[path] ??= issue.message;
  }
  return messages;
}
