/** What the board draws, as tables: for screen readers, for the keyboard, and for whoever prefers to read. */

import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock, PairLink } from "#app/shop/cells.tsx";
import words from "#content/copy/queue.json";
import shopWords from "#content/copy/shop.json";
import type { QueueBoard } from "#services";

const w = words.board;

export function BoardList({ board: { board, stations } }: { readonly board: QueueBoard }) {
  return (
    <details className="mt-6">
      <summary className="min-h-9 cursor-pointer py-2 text-tarn underline">{w.asList}</summary>
      <div className="mt-4 grid gap-6 *:min-w-0">
        {board.rows.map((row) => {
          const station = stations.find((each) => each.station === row.station);
          const name = `${station?.number ?? ""} ${station?.name ?? ""}`;
          return (
            <section key={row.station} aria-label={name}>
              <h2 className="text-base font-semibold">{name}</h2>
              <Table
                caption={fill(w.listCaption, { station: name })}
                hideCaption
                dense
                empty={<p className="text-pencil">{w.nothing}</p>}
                columns={[
                  { key: "pair", head: w.heads.pair, cell: (bar) => <PairLink serial={bar.serial} /> },
                  { key: "state", head: w.heads.state, cell: (bar) => shopWords.queue.states[bar.state] },
                  {
                    key: "standing",
                    head: w.heads.standing,
                    cell: (bar) => words.promises.standings[bar.standing],
                  },
                  { key: "from", head: w.heads.from, cell: (bar) => <Clock at={bar.startsAt} /> },
                  { key: "to", head: w.heads.to, cell: (bar) => <Clock at={bar.endsAt} /> },
                  {
                    key: "free",
                    head: w.heads.free,
                    cell: (bar) => (bar.freeAt > bar.endsAt ? <Clock at={bar.freeAt} /> : "–"),
                  },
                ]}
                rows={row.bars}
                rowKey={(bar) => bar.operationId}
              />
            </section>
          );
        })}
      </div>
    </details>
  );
}
