export interface Fault {
  readonly file: string;
  readonly line: number;
  readonly operator: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly what: string;
}
export function candidatesIn(file: string, source: string): readonly Fault[];
export function planted(source: string, fault: Pick<Fault, "start" | "end" | "text">): string;
