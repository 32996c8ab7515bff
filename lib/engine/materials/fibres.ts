/** Whether a cloth carries by its diagonals alone: every fibre at 45° to the ski's axis. */
export function isDiagonalCloth({ fibresDeg }: { readonly fibresDeg: readonly number[] }): boolean {
  return fibresDeg.length > 0 && fibresDeg.every((angle) => Math.abs(angle) === 45);
}
