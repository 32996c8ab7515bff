import type { z } from "zod";

export interface InvalidInput {
  readonly path: string;
  readonly message: string;
}

/** Issues as `{path, message}` rows; an unknown field is named itself, not only its parent. */
export function invalidInputs(error: z.ZodError): readonly InvalidInput[] {
  return error.issues.flatMap((issue): InvalidInput[] => {
    if (issue.code === "unrecognized_keys") {
      return issue.keys.map((key) => ({ path: pathText([...issue.path, key]), message: `unknown field "${key}"` }));
    }
    return [{ path: pathText(issue.path), message: issue.message }];
  });
}

function pathText(path: readonly PropertyKey[]): string {
  return path.map(String).join(".");
}
