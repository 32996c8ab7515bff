import type { Source } from "./draw.mjs";

export function usesOf(
  sources: readonly Source[],
  resolve: (specifier: string, from: string) => string | null,
): {
  unitAt(file: string, line: number): string;
  reachedFrom(unit: string, mostSteps?: number): ReadonlyMap<string, number>;
  readonly bundles: ReadonlyMap<string, string>;
};
