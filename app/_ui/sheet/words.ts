import type words from "#content/copy/sheet.json";

/** All words of the sheet, as content/copy/sheet.json holds them. */
export type SheetWords = typeof words;
