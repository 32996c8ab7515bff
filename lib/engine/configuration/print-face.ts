/** Which face of the topsheet carries the print. */
export type PrintFace = "top" | "under";

/**
 * Whether the transfer paper is printed mirrored. Paper prints its own mirror image; a print on the sheet's underside is
 * then read through the sheet from the other side, which turns it back.
 */
export function isPaperMirrored(face: PrintFace): boolean {
  return face === "top";
}
