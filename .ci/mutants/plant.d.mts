import type { Fault } from "./candidates.mjs";
import type { Source } from "./draw.mjs";
import type { Judged } from "./equivalent.mjs";

export function plantedFaults(wish: {
  readonly sources: readonly Source[];
  readonly seed: number;
  readonly sample: number;
  readonly entries: readonly Judged[];
  readonly compiles: (file: string, text: string, line: number) => Promise<boolean>;
}): Promise<{ readonly faults: readonly Fault[]; readonly setAside: readonly Fault[]; readonly refused: number }>;
