import type { Fault } from "./candidates.mjs";

export interface Judged {
  readonly file: string;
  readonly line: string;
  readonly what: string;
  readonly reason: string;
}
export function judgedEquivalent(
  entries: readonly Judged[],
  fault: Pick<Fault, "file" | "line" | "what">,
  source: string,
): Judged | undefined;
export function faultsOfList(
  entries: readonly Judged[],
  readSource: (file: string) => string | null,
): readonly string[];
export function mostSetAside(planted: number): number;
