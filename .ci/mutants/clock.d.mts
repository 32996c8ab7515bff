export function workedSeconds(group: number, proc?: string): number | null;
