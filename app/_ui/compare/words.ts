import type copy from "#content/copy/compare.json";

/** Words of the compare page: content/copy/compare.json. */
export type CompareWords = typeof copy;
