import type { Fault } from "./candidates.mjs";

export interface Source {
  readonly file: string;
  readonly text: string;
}
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly faults: readonly Fault[];
}
export function places(sources: readonly Source[], seed: number): Generator<Place, void>;
