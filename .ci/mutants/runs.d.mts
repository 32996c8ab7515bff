import type { usesOf } from "./graph.mjs";

export interface Runs {
  readonly seconds: ReadonlyMap<string, number>;
  knows(test: string, file: string): boolean;
  runners(file: string, isAsked: (line: number) => boolean): string[];
  isStale(test: string): boolean;
}
export function openRuns(root: string, file: string): Runs;
export function testsFor(
  fault: { readonly file: string; readonly line: number; readonly start: number },
  source: string,
  bundles: readonly { readonly entry: string }[],
  known: { readonly uses: ReturnType<typeof usesOf>; readonly runs: Runs },
): Map<string, number>;
