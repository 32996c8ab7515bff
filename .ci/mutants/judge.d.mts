export interface Memory {
  seconds(test: string): number | null;
  isSound(test: string): boolean | null;
  decide(test: string, isSound: boolean): void;
  learn(passed: ReadonlyMap<string, number>): void;
}
export interface Question {
  readonly file?: string | null;
  readonly tests: readonly string[];
  readonly seconds: number;
  readonly patience?: (test: string) => number;
}
export interface Answer {
  readonly end: "judged" | "late" | "gone";
  readonly failure: { readonly test: string; readonly message: string } | null;
  readonly passed: ReadonlyMap<string, number>;
  readonly running: { readonly test: string; readonly seconds: number } | null;
}
export function inOrder(reached: Iterable<readonly [string, number]>, file: string, memory: Memory): string[];
export function judgeFault(
  lane: { judge(question: Question): Promise<Answer> },
  fault: {
    readonly file: string;
    readonly text: string;
    readonly bundles: readonly [];
    readonly tests: readonly string[];
  },
  memory: Memory,
  seconds: number,
): Promise<{ readonly isNoticed: boolean; readonly how: string }>;
