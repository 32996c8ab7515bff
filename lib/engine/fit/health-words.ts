/**
 * Finds words in a note that call for the health script. The note is warned about before it is saved, so that nothing
 * medical is kept; the words themselves are catalogue data.
 */

/** The words found, in the catalogue's spelling; whole words, any case, with an English ending. */
export function findHealthWords(note: string, healthWords: readonly string[]): readonly string[] {
  const spoken = note.toLowerCase();
  return healthWords.filter((word) => new RegExp(`\\b${escaped(word.toLowerCase())}(s|es|ed|ing)?\\b`).test(spoken));
}

function escaped(word: string): string {
  return word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
