import { spawnSync } from "node:child_process";

export interface VerbRun {
  readonly exitCode: number;
  // biome-ignore lint/suspicious/noExplicitAny: a test reads whatever JSON the verb printed
  readonly json: any;
  readonly stderr: string;
}

/** Runs the command line as a shell would, with JSON (or raw text) on standard input. */
export function runVerb(words: readonly string[], input: unknown = {}): VerbRun {
  const text = typeof input === "string" ? input : JSON.stringify(input);
  const run = spawnSync(process.execPath, [".ci/pairwright.mjs", ...words], { input: text, encoding: "utf8" });
  return { exitCode: run.status ?? -1, json: JSON.parse(run.stdout), stderr: run.stderr };
}
