/** The club's pairs in the press, by mould. */

import { Table } from "#app/_ui/table.tsx";
import { Clock } from "#app/shop/cells.tsx";
import words from "#content/copy/clubs.json";
import type { ClubPressGroup } from "#services";
import { settings } from "#services";

const w = words.club;

export function PressGroups({ groups }: { readonly groups: readonly ClubPressGroup[] }) {
  return (
    <Table
      caption={w.press}
      hideCaption
      dense
      columns={[
        { key: "mould", head: w.pressHeads.mould, cell: (row: ClubPressGroup) => row.mould },
        {
          key: "press",
          head: w.pressHeads.press,
          cell: ({ press }) => settings().floor.presses.find(({ id }) => id === press)?.label ?? press,
        },
        { key: "from", head: w.pressHeads.from, cell: (row) => <Clock at={row.from} /> },
        { key: "pairs", head: w.pressHeads.pairs, cell: (row) => row.serials.join(", ") },
      ]}
      rows={groups}
      rowKey={(row) => `${row.press} ${row.from}`}
    />
  );
}
