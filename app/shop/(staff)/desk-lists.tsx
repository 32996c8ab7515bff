import { Badge } from "#app/_ui/notice.tsx";
import { Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/shop.json";
import type { DeskOverview, DraftRow, Page, QueuePair } from "#services";
import { Clock, Day, DayWithShare, NumberLink, PairLink } from "../cells";
import { DraftTable } from "./draft-table";
import { bySlack } from "./queue/promises-csv";
import { WaitingBadges } from "./waiting-badges";

const w = words.desk;
const h = w.heads;

/** Of a list that has a page of its own, the desk shows this many. */
const most = 12;

export function DeskLists({ overview, drafts }: { readonly overview: DeskOverview; readonly drafts: Page<DraftRow> }) {
  return (
    <div className="grid gap-x-10 *:min-w-0 xl:grid-cols-2">
      {overview.unreadable.length > 0 ? (
        <Part title={w.unreadable} id="unreadable">
          <Unreadable rows={overview.unreadable} />
        </Part>
      ) : null}
      <Part title={w.callBacks} id="call-backs">
        <CallBacks rows={overview.callBacks} />
      </Part>
      <Part title={w.drafts} id="drafts">
        <DraftTable rows={drafts.rows.slice(0, 8)} caption={w.drafts} empty={<Nothing>{w.noDrafts}</Nothing>} />
        {drafts.total > 8 ? (
          <p className="mt-2 text-sm">
            <a href="/shop/call#drafts">{w.allDrafts}</a>
          </p>
        ) : null}
      </Part>
      {overview.reviews.length > 0 ? (
        <Part title={w.reviews} id="reviews">
          <Reviews rows={overview.reviews} />
        </Part>
      ) : (
        <div id="reviews" />
      )}
      <Part title={w.expiring} id="expiring">
        <Expiring rows={overview.quotesExpiring} />
      </Part>
      <Part title={w.atRisk} id="at-risk">
        <AtRisk rows={bySlack(overview.atRisk).slice(0, most)} />
        <All href="/shop/queue?view=promises" words={w.allAtRisk} count={overview.atRisk.length} />
      </Part>
      <Part title={w.waiting} id="waiting">
        <Waiting rows={overview.waiting.slice(0, most)} />
        <All href="/shop/queue?view=waiting" words={w.allWaiting} count={overview.waiting.length} />
      </Part>
    </div>
  );
}

/** Where the rest of a list is that is longer than what stands here. */
function All({ href, words: text, count }: { readonly href: string; readonly words: string; readonly count: number }) {
  return count > most ? (
    <p className="mt-2 text-sm">
      <a href={href}>{fill(text, { count })}</a>
    </p>
  ) : null;
}

function Nothing({ children }: { readonly children: string }) {
  return <p className="text-pencil">{children}</p>;
}

function Unreadable({ rows }: { readonly rows: DeskOverview["unreadable"] }) {
  return (
    <>
      <ul className="mb-2">
        {rows.map((row) => (
          <li key={`${row.table} ${row.row} ${row.column}`}>
            <Badge tone="iron">{w.unreadable}</Badge> {fill(w.unreadableRow, { ...row })}
          </li>
        ))}
      </ul>
      <p className="max-w-measure text-sm text-pencil">{w.unreadableNote}</p>
    </>
  );
}

function CallBacks({ rows }: { readonly rows: DeskOverview["callBacks"] }) {
  return (
    <Table
      caption={w.callBacks}
      hideCaption
      columns={[
        { key: "at", head: h.at, cell: (row) => <Clock at={row.at} /> },
        { key: "who", head: h.who, cell: (row) => <a href={`/shop/call/${row.sheetId}`}>{row.name ?? w.unnamed}</a> },
        {
          key: "phone",
          head: h.phone,
          cell: (row) => <a href={`${row.phone.includes("@") ? "mailto" : "tel"}:${row.phone}`}>{row.phone}</a>,
        },
        { key: "reason", head: h.reason, cell: (row) => row.reason },
      ]}
      rows={rows}
      rowKey={(row) => row.sheetId}
      empty={<Nothing>{w.noCallBacks}</Nothing>}
    />
  );
}

function Reviews({ rows }: { readonly rows: DeskOverview["reviews"] }) {
  return (
    <Table
      caption={w.reviews}
      hideCaption
      columns={[
        { key: "who", head: h.who, cell: (row) => <a href={`/shop/call/${row.sheetId}`}>{row.name ?? w.unnamed}</a> },
        { key: "note", head: h.note, cell: (row) => row.note },
        {
          key: "at",
          head: h.since,
          cell: (row) => <Clock at={row.askedAt} />,
        },
      ]}
      rows={rows}
      rowKey={(row) => row.sheetId}
    />
  );
}

function Expiring({ rows }: { readonly rows: DeskOverview["quotesExpiring"] }) {
  return (
    <Table
      caption={w.expiring}
      hideCaption
      columns={[
        {
          key: "quote",
          head: h.quote,
          cell: (row) => <NumberLink href={`/shop/quotes/${row.quoteId}`} number={row.number} />,
        },
        { key: "who", head: h.who, cell: (row) => row.name },
        { key: "until", head: h.until, cell: (row) => <Day on={row.validUntilDay} /> },
      ]}
      rows={rows}
      rowKey={(row) => row.quoteId}
      empty={<Nothing>{w.noExpiring}</Nothing>}
    />
  );
}

function AtRisk({ rows }: { readonly rows: readonly QueuePair[] }) {
  return (
    <Table
      caption={w.atRisk}
      hideCaption
      columns={[
        { key: "pair", head: h.pair, cell: (row) => <PairLink serial={row.serial} /> },
        { key: "now", head: h.now, cell: (row) => row.now?.stationName ?? "" },
        { key: "promised", head: h.promised, cell: (row) => <Day on={row.promisedOn} /> },
        {
          key: "p90",
          head: h.nineOfTen,
          cell: (row) => <DayWithShare on={row.expected?.p90} share={row.expected?.shares?.p90} />,
        },
        {
          key: "slack",
          head: h.slack,
          cell: (row) => <Badge tone="iron">{String(row.slackDays ?? "").replace("-", "−")}</Badge>,
        },
      ]}
      rows={rows}
      rowKey={(row) => row.pairId}
      empty={<Nothing>{w.noRisk}</Nothing>}
    />
  );
}

function Waiting({ rows }: { readonly rows: DeskOverview["waiting"] }) {
  return (
    <Table
      caption={w.waiting}
      hideCaption
      columns={[
        { key: "pair", head: h.pair, cell: (row) => <PairLink serial={row.serial} /> },
        { key: "who", head: h.who, cell: (row) => row.skierFirstName },
        { key: "for", head: h.waitingFor, cell: (row) => <WaitingBadges waitingFor={row.waitingFor} /> },
        {
          key: "since",
          head: h.since,
          cell: (row) => <Clock at={row.since} />,
        },
      ]}
      rows={rows}
      rowKey={(row) => row.pairId}
      empty={<Nothing>{w.noWaiting}</Nothing>}
    />
  );
}
