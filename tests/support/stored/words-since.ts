/** Words that papers say otherwise since a version was stored, each with its reason; whatever else differs is a fault. */
interface ChangedWords {
  readonly was: string;
  readonly is: string;
  readonly why: string;
}

const changedWords: readonly ChangedWords[] = [];

/** A page of today as the stored version would have put it. */
export function inOldWords(page: string): string {
  return changedWords.reduce((text, { was, is }) => text.replaceAll(is, was), page);
}
