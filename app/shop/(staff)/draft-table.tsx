/** Drafts with who has them. */
import type { ReactNode } from "react";
import { Table } from "#app/_ui/table.tsx";
import words from "#content/copy/shop.json";
import type { DraftRow } from "#services";
import { Clock } from "../cells";

const w = words.desk;

export function DraftTable({
  rows,
  caption,
  empty,
}: {
  readonly rows: readonly DraftRow[];
  readonly caption: string;
  readonly empty: ReactNode;
}) {
  return (
    <Table
      caption={caption}
      hideCaption
      columns={[
        {
          key: "who",
          head: w.heads.who,
          cell: (row) => <a href={`/shop/call/${row.sheetId}`}>{row.name ?? row.phone ?? w.unnamed}</a>,
        },
        { key: "phone", head: w.heads.phone, cell: (row) => row.phone ?? "" },
        { key: "answered", head: w.heads.answered, numeric: true, cell: (row) => row.answered },
        {
          key: "with",
          head: w.heads.with,
          cell: (row) => row.lease?.holder ?? <span className="text-pencil">{w.nobody}</span>,
        },
        {
          key: "changed",
          head: w.heads.changed,
          cell: (row) => <Clock at={row.updatedAt} />,
        },
      ]}
      rows={rows}
      rowKey={(row) => row.sheetId}
      empty={empty}
    />
  );
}
