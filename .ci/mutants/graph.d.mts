import type { Source } from "./draw.mjs";

export function usesOf(
  sources: readonly Source[],
  resolve: (specifier: string, from: string) => string | null,
): {
  unitAt(file: string, line: number): string;
  unitsOf(file: string): string[];
  placeOf(at: string): { readonly file: string; readonly from: number; readonly to: number };
  usersOf(at: string): Iterable<string>;
  reachedFrom(unit: string, mostSteps?: number): ReadonlyMap<string, number>;
  readonly bundles: ReadonlyMap<string, string>;
};
