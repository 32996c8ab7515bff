/** What the board draws, as a table: for screen readers, for the keyboard, and for whoever prefers to read. */

import { Paging, pageOf } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Clock, PairLink } from "#app/shop/cells.tsx";
import words from "#content/copy/queue.json";
import shopWords from "#content/copy/shop.json";
import type { QueueBoard } from "#services";

const w = words.board;

export function BoardList({ board, page: asked }: { readonly board: QueueBoard; readonly page: string | undefined }) {
  const names = new Map(board.stations.map(({ station, number, name }) => [station, `${number} ${name}`] as const));
  const visits = board.board.rows.flatMap(({ station, bars }) =>
    bars.map((bar) => ({ ...bar, at: names.get(station) })),
  );
  const { shown, page, pageCount } = pageOf(visits, asked);
  return (
    <>
      <Table
        caption={w.listCaption}
        hideCaption
        dense
        stacks
        empty={<p className="text-pencil">{w.nothing}</p>}
        columns={[
          { key: "station", head: w.station, cell: (visit) => visit.at },
          { key: "pair", head: w.heads.pair, cell: (visit) => <PairLink serial={visit.serial} /> },
          { key: "state", head: w.heads.state, cell: (visit) => shopWords.queue.states[visit.state] },
          { key: "standing", head: w.heads.standing, cell: (visit) => words.promises.standings[visit.standing] },
          { key: "from", head: w.heads.from, cell: (visit) => <Clock at={visit.startsAt} /> },
          { key: "to", head: w.heads.to, cell: (visit) => <Clock at={visit.endsAt} /> },
          {
            key: "free",
            head: w.heads.free,
            cell: (visit) => (visit.freeAt > visit.endsAt ? <Clock at={visit.freeAt} /> : "–"),
          },
        ]}
        rows={shown}
        rowKey={(visit) => visit.operationId}
      />
      <Paging
        page={page}
        pageCount={pageCount}
        href={(to) => `/shop/queue?view=list&page=${to}`}
        words={words.paging}
      />
    </>
  );
}
