/** A table as CSV (RFC 4180: CRLF, quotes doubled) and as a link that needs no server and no script. */
export type Cell = string | number;

const formulaStart = /^[=+\-@\t\r]/;

function field(value: Cell): string {
  const text = String(value);
  // A leading = + - @ would run as a formula in a spreadsheet; a plain negative number is left alone.
  const safe =
    typeof value === "string" && formulaStart.test(text) && !Number.isFinite(Number(text)) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function csvText(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [head, ...rows].map((row) => `${row.map(field).join(",")}\r\n`).join("");
}

export function csvHref(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return `data:text/csv;charset=utf-8,${encodeURIComponent(csvText(head, rows))}`;
}
