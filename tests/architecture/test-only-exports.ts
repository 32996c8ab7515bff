/** Exports of lib that only tests reach, file by file. The list may only shrink. */
export const testOnlyExports: Readonly<Record<string, readonly string[]>> = {};
