/** The queue as a list with its handles: buttons for everybody, dragging where there is a pointer. */
import { Badge, type Tone } from "#app/_ui/notice.tsx";
import { Paging, pageOf } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Day, DayWithShare, PairLink } from "#app/shop/cells.tsx";
import breakdowns from "#content/copy/breakdowns.json";
import words from "#content/copy/queue.json";
import type { QueueOrder, QueuePlace } from "#services";
import { DragOrder } from "./drag-order.client";

const w = words.order;

const tones: Readonly<Record<QueuePlace["standing"], Tone>> = {
  safe: "moss",
  "at-risk": "amber",
  late: "iron",
  open: "info",
};

export function OrderTable({
  order,
  mayMove,
  page: asked,
}: {
  readonly order: QueueOrder;
  readonly mayMove: boolean;
  readonly page?: string | undefined;
}) {
  const { shown, from, page, pageCount } = pageOf(order.places, asked);
  const rows = shown.map((place, index) => ({ ...place, index: from + index }));
  return (
    <div className="mb-10">
      <Table
        caption={w.caption}
        hideCaption
        dense
        stacks
        empty={<p className="text-pencil">{w.empty}</p>}
        columns={[
          { key: "position", head: w.heads.position, numeric: true, cell: (row) => row.index + 1 },
          {
            key: "pair",
            head: w.heads.pair,
            cell: (row) => (
              <span data-pair={row.pairId} data-movable={mayMove && row.fixedBecause === null ? "yes" : "no"}>
                <PairLink serial={row.serial} /> {row.skierFirstName}
              </span>
            ),
          },
          { key: "ski", head: w.heads.ski, cell: (row) => row.ski },
          { key: "mould", head: w.heads.mould, cell: (row) => row.mould },
          { key: "promised", head: w.heads.promised, cell: (row) => <Day on={row.promisedOn} /> },
          {
            key: "p90",
            head: w.heads.nineOfTen,
            cell: (row) => <DayWithShare on={row.expected?.p90} share={row.expected?.shares?.p90} />,
          },
          {
            key: "standing",
            head: w.heads.standing,
            cell: (row) => <Badge tone={tones[row.standing]}>{breakdowns.standing[row.standing]}</Badge>,
          },
          {
            key: "move",
            head: w.heads.move,
            cell: (row) => <Handles row={row} places={order.places} mayMove={mayMove} />,
          },
        ]}
        rows={rows}
        rowKey={(row) => row.pairId}
      />
      {mayMove ? <DragOrder hint={w.dragHint} behind={order.places[from + shown.length]?.pairId ?? ""} /> : null}
      <Paging page={page} pageCount={pageCount} words={words.paging} href={(to) => `/shop/queue/order?page=${to}`} />
    </div>
  );
}

function Handles({
  row,
  places,
  mayMove,
}: {
  readonly row: QueuePlace & { readonly index: number };
  readonly places: readonly QueuePlace[];
  readonly mayMove: boolean;
}) {
  if (row.fixedBecause !== null) return <span className="text-pencil">{w[row.fixedBecause]}</span>;
  const hand = row.isByHand ? <span className="text-pencil">{w.byHand}</span> : null;
  if (!mayMove) return hand;
  const above = places[row.index - 1];
  const behindNext = places[row.index + 2];
  const href = (before: string) => `/shop/queue/order?move=${row.pairId}&before=${before}`;
  return (
    <span className="flex flex-wrap items-center gap-x-3">
      {above ? (
        <a
          href={href(above.pairId)}
          aria-label={fill(w.upOf, { serial: row.serial })}
          className="inline-flex min-h-9 items-center"
        >
          ↑ {w.up}
        </a>
      ) : null}
      {row.index < places.length - 1 ? (
        <a
          href={href(behindNext?.pairId ?? "")}
          aria-label={fill(w.downOf, { serial: row.serial })}
          className="inline-flex min-h-9 items-center"
        >
          ↓ {w.down}
        </a>
      ) : null}
      {hand}
    </span>
  );
}
