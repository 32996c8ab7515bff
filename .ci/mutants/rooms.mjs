// Which room a product file belongs to, by its path alone. The first line that fits decides.

const table = [
  [/^proxy\.ts$/, "proxy"],
  [/^app\/(?:.*\/)?(?:[\w-]+-)?actions\.tsx?$/, "actions"],
  [/^app\//, "app"],
  [/^lib\/engine\/([^/]+)\//, null],
  [/^lib\/([^/.]+)/, null],
];

/** @returns {string | null} null for what is no product code */
export function roomOf(file) {
  for (const [pattern, room] of table) {
    const found = pattern.exec(file);
    if (found) return room ?? found[1];
  }
  return null;
}

/** Written by a generator, or declarations alone: nobody's code to break. */
export function isProductCode(file) {
  return /\.tsx?$/.test(file) && !/\.d\.ts$|(^|\/)generated\//.test(file) && roomOf(file) !== null;
}
