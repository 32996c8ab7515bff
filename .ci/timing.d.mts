export interface StageTime {
  readonly name: string;
  readonly seconds: number;
  readonly cpu: number;
  readonly result: string;
}
export function stageTable(times: readonly StageTime[]): string;
