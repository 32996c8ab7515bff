/** Every open pair by what its promise has in hand, the tightest first. */
import { Badge, type Tone } from "#app/_ui/notice.tsx";
import { Paging, pageOf } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Day, DayWithShare, PairLink } from "#app/shop/cells.tsx";
import queueWords from "#content/copy/queue.json";
import words from "#content/copy/shop.json";
import type { QueueBoard, QueuePair } from "#services";
import { bySlack, percent } from "./promises-csv";

const w = words.queue;

const p = queueWords.promises;

const tones: Readonly<Record<QueuePair["standing"], Tone>> = {
  safe: "moss",
  "at-risk": "amber",
  late: "iron",
  open: "info",
};

export function Promises({ board, page: asked }: { readonly board: QueueBoard; readonly page?: string | undefined }) {
  const { shown, page, pageCount } = pageOf(bySlack(board.pairs), asked);
  return (
    <>
      <p className="mb-4 max-w-measure text-pencil">{p.note}</p>
      <PromiseTable pairs={shown} />
      <Paging
        page={page}
        pageCount={pageCount}
        words={queueWords.paging}
        href={(to) => `/shop/queue?view=promises&page=${to}`}
      />
    </>
  );
}

function PromiseTable({ pairs }: { readonly pairs: readonly QueuePair[] }) {
  return (
    <Table
      dense
      stacks
      caption={w.view.promises}
      hideCaption
      columns={[
        { key: "pair", head: w.heads.pair, cell: (row) => <PairLink serial={row.serial} /> },
        {
          key: "ski",
          head: w.heads.ski,
          cell: (row) =>
            row.isUnreadable ? (
              <Badge tone="iron">{words.desk.unreadable}</Badge>
            ) : (
              `${row.modelName}, ${row.lengthCm} cm`
            ),
        },
        {
          key: "now",
          head: w.heads.now,
          cell: (row) => (row.now ? `${row.now.stationNumber} ${row.now.stationName}` : "–"),
        },
        {
          key: "progress",
          head: w.heads.progress,
          numeric: true,
          cell: (row) => `${row.doneOperations}/${row.allOperations}`,
        },
        { key: "planned", head: w.heads.planned, cell: (row) => <Day on={row.plannedReady} /> },
        {
          key: "p50",
          head: p.half,
          cell: (row) => <DayWithShare on={row.expected?.p50} share={row.expected?.shares?.p50} />,
        },
        {
          key: "p90",
          head: w.heads.nineOfTen,
          cell: (row) => <DayWithShare on={row.expected?.p90} share={row.expected?.shares?.p90} />,
        },
        { key: "promised", head: w.heads.promised, cell: (row) => <Day on={row.promisedOn} /> },
        { key: "class", head: p.class, cell: (row) => p.classes[row.promiseClass] },
        {
          key: "slack",
          head: w.heads.slack,
          numeric: true,
          cell: (row) => (row.slackDays === null ? "–" : String(row.slackDays).replace("-", "−")),
        },
        {
          key: "standing",
          head: p.standing,
          cell: (row) => <Badge tone={tones[row.standing]}>{p.standings[row.standing]}</Badge>,
        },
        {
          key: "chance",
          head: p.chance,
          numeric: true,
          cell: (row) => (row.chanceKept === null ? "–" : percent(row.chanceKept)),
        },
      ]}
      rows={pairs}
      rowKey={(row) => row.pairId}
      csvUrl="/shop/queue/csv"
      empty={<p className="text-pencil">{w.noPromises}</p>}
    />
  );
}
