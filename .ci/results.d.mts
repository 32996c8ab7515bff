export interface Skip {
  readonly name: string;
  readonly reason: string | null;
}
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skips: readonly Skip[];
}
export function vitestCounts(file: string, skipsFile: string, code: number): Counts;
export function playwrightCounts(file: string, code: number): Counts;
export function refusedSkips(
  stage: string,
  skips: readonly Skip[],
  expected: readonly { readonly stage: string; readonly name: string }[],
  onCi: boolean,
): readonly Skip[];
