/** Remembers this browser's last sheet, so that "start a sheet" can offer to go on with it. */
export const sheetCookie = "pairwright-sheet";
