/** Says under a list how many of its rows are left out because they cannot be read, and which. */
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/shop.json";
import type { UnreadableView } from "#services/views";

const w = words.desk;

export function UnreadableLine({ rows }: { readonly rows: readonly UnreadableView[] }) {
  if (rows.length === 0) return null;
  return (
    <div className="mt-3 text-iron">
      <More summary={rows.length === 1 ? w.unreadableOne : fill(w.unreadableMany, { count: rows.length })}>
        <ul className="text-ink">
          {rows.map((row) => (
            <li key={`${row.table} ${row.row} ${row.column}`}>{fill(w.unreadableRow, { ...row })}</li>
          ))}
        </ul>
        <a href="/shop#unreadable" className="inline-flex min-h-9 items-center">
          {w.unreadableDesk}
        </a>
      </More>
    </div>
  );
}
