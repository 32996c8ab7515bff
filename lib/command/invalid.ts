import type { z } from "zod";

export interface InvalidInput {
  readonly path: string;
  readonly message: string;
}

type Issue = z.core.$ZodIssue;

/**
 * Issues as `{path, message}` rows. An unknown field is named itself, not only its parent; of several allowed forms the
 * one that comes closest speaks.
 */
export function invalidInputs(error: z.ZodError): readonly InvalidInput[] {
  return error.issues.flatMap((issue) => rows(issue, []));
}

function rows(issue: Issue, above: readonly PropertyKey[]): readonly InvalidInput[] {
  const path = [...above, ...issue.path];
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => ({ path: pathText([...path, key]), message: `unknown field "${key}"` }));
  }
  if (issue.code === "invalid_union") {
    const closest = [...issue.errors].sort((a, b) => a.length - b.length)[0];
    if (closest && closest.length > 0) return closest.flatMap((inner) => rows(inner, path));
  }
  return [{ path: pathText(path), message: issue.message }];
}

function pathText(path: readonly PropertyKey[]): string {
  return path.map(String).join(".");
}
