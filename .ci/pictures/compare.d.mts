export function differentShare(before: Uint8Array | string, after: Uint8Array | string): Promise<number>;
