/** A whole filtered list as CSV: every page of it, read one after the other. */
import { type Cell, csvText } from "#app/_ui/csv.ts";
import type { Outcome } from "#engine/units";
import type { Page } from "#services";

/** More than a small shop has in years; a list beyond it is cut there. */
const mostPages = 400;

export async function csvOfPages<Row>(
  fileName: string,
  head: readonly string[],
  read: (page: number) => Promise<Outcome<Page<Row>>>,
  cells: (row: Row) => readonly Cell[],
): Promise<Response | null> {
  const rows: (readonly Cell[])[] = [];
  for (let page = 1; page <= mostPages; page += 1) {
    const found = await read(page);
    if (!found.ok) return null;
    rows.push(...found.value.rows.map(cells));
    if (page * found.value.pageSize >= found.value.total) break;
  }
  return csvResponse(fileName, head, rows);
}

/** Rows as a file to keep. */
export function csvResponse(fileName: string, head: readonly string[], rows: readonly (readonly Cell[])[]): Response {
  return new Response(csvText(head, rows), {
    headers: {
      "content-type": "text/csv; charset=utf-8",
      "content-disposition": `attachment; filename="${fileName}"`,
      "cache-control": "no-store",
    },
  });
}
