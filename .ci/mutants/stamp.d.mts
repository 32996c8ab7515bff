export function stampOf(root: string, file: string): string | null;
