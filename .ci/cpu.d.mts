export function cpuSeconds(): number;
