export function roomOf(file: string): string | null;
export function isProductCode(file: string): boolean;
