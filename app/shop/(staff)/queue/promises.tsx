import { Badge } from "@/app/_ui/notice";
import { Table } from "@/app/_ui/table";
import words from "@/content/copy/shop.json";
import type { QueueBoard, QueuePair } from "@/lib/services";
import { Clock, Day, PairLink } from "../../cells";
import { WaitingBadges } from "../waiting-badges";

const w = words.queue;

function Slack({ days }: { readonly days: number | null }) {
  if (days === null) return <span className="text-pencil">{w.noPromise}</span>;
  return (
    <Badge
      tone={days < 0 ? "iron" : "moss"}
    >{`${String(days).replace("-", "−")} ${days < 0 ? w.atRisk : w.onTime}`}</Badge>
  );
}

/** The tightest first; without a promise last. */
function bySlack(pairs: readonly QueuePair[]): readonly QueuePair[] {
  return [...pairs].sort((a, b) => (a.slackDays ?? 1e6) - (b.slackDays ?? 1e6) || a.serial.localeCompare(b.serial));
}

export function Promises({ board }: { readonly board: QueueBoard }) {
  const pairs = bySlack(board.pairs);
  return (
    <Table
      caption={w.view.promises}
      hideCaption
      columns={[
        { key: "pair", head: w.heads.pair, cell: (row) => <PairLink serial={row.serial} /> },
        { key: "ski", head: w.heads.ski, cell: (row) => `${row.modelName}, ${row.lengthCm} cm` },
        { key: "now", head: w.heads.now, cell: (row) => (row.now ? `${row.now.station} ${row.now.stationName}` : "–") },
        {
          key: "progress",
          head: w.heads.progress,
          numeric: true,
          cell: (row) => `${row.doneOperations}/${row.allOperations}`,
        },
        { key: "planned", head: w.heads.planned, cell: (row) => <Day on={row.plannedReady} /> },
        { key: "p90", head: w.heads.nineOfTen, cell: (row) => <Day on={row.expected?.p90} /> },
        { key: "promised", head: w.heads.promised, cell: (row) => <Day on={row.promisedOn} /> },
        { key: "slack", head: w.heads.slack, cell: (row) => <Slack days={row.slackDays} /> },
      ]}
      rows={pairs}
      rowKey={(row) => row.pairId}
      csv={{
        fileName: "promises.csv",
        head: [
          "pair",
          "model",
          "length_cm",
          "station",
          "done",
          "of",
          "planned_ready",
          "nine_of_ten_by",
          "promised_on",
          "slack_days",
        ],
        rows: pairs.map((row) => [
          row.serial,
          row.modelName,
          row.lengthCm,
          row.now?.station ?? "",
          row.doneOperations,
          row.allOperations,
          row.plannedReady ?? "",
          row.expected?.p90 ?? "",
          row.promisedOn ?? "",
          row.slackDays ?? "",
        ]),
      }}
      empty={<p className="text-pencil">{w.noPromises}</p>}
    />
  );
}

export function WaitingList({ board }: { readonly board: QueueBoard }) {
  return (
    <Table
      caption={w.view.waiting}
      hideCaption
      columns={[
        { key: "pair", head: w.heads.pair, cell: (row) => <PairLink serial={row.serial} /> },
        { key: "for", head: w.heads.waitingFor, cell: (row) => <WaitingBadges waitingFor={row.waitingFor} /> },
        {
          key: "next",
          head: w.heads.next,
          cell: (row) => [...new Set(row.waitingFor.map((condition) => words.nextActor[condition]))].join("; "),
        },
        {
          key: "since",
          head: w.heads.since,
          cell: (row) => <Clock at={row.since} />,
        },
      ]}
      rows={board.waitingOn}
      rowKey={(row) => row.pairId}
      empty={<p className="text-pencil">{w.noneWaiting}</p>}
    />
  );
}
