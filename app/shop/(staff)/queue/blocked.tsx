/** Pairs that cannot be worked on: why, what is known, since when, and who acts next. */
import { dayText } from "#app/_ui/date-range.tsx";
import { Badge } from "#app/_ui/notice.tsx";
import { Paging, pageOf } from "#app/_ui/paging.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock, PairLink } from "#app/shop/cells.tsx";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/queue.json";
import shopWords from "#content/copy/shop.json";
import type { BlockedPair } from "#services";

const w = words.blocked;

type Row = BlockedPair & { readonly reason: BlockedPair["reasons"][number]; readonly index: number };

export function Blocked({
  pairs,
  page: asked,
}: {
  readonly pairs: readonly BlockedPair[];
  readonly page?: string | undefined;
}) {
  const rows = pairs.flatMap((pair) => pair.reasons.map((reason, index): Row => ({ ...pair, reason, index })));
  const { shown, page, pageCount } = pageOf(rows, asked);
  return (
    <>
      <Table
        caption={w.caption}
        hideCaption
        stacks
        columns={[
          {
            key: "pair",
            head: w.heads.pair,
            cell: (row) => (
              <>
                <PairLink serial={row.serial} /> {row.skierFirstName}
              </>
            ),
          },
          {
            key: "why",
            head: w.heads.why,
            cell: ({ reason }) => (
              <Badge tone={reason.kind === "no-slot" ? "iron" : reason.kind === "rest" ? "info" : "amber"}>
                {reason.kind === "customer" ? shopWords.waitingFor[reason.condition] : w.kinds[reason.kind]}
              </Badge>
            ),
          },
          { key: "more", head: w.heads.more, cell: ({ reason }) => known(reason) },
          {
            key: "since",
            head: w.heads.since,
            cell: ({ reason }) => (reason.since ? <Clock at={reason.since} /> : "–"),
          },
          {
            key: "next",
            head: w.heads.next,
            cell: ({ reason }) =>
              reason.kind === "customer"
                ? shopWords.nextActor[reason.isAsked ? "proof-asked" : reason.condition]
                : w.next[reason.kind],
          },
        ]}
        rows={shown}
        rowKey={(row) => `${row.pairId}${row.index}`}
        empty={<p className="text-pencil">{w.none}</p>}
      />
      <Paging
        page={page}
        pageCount={pageCount}
        words={words.paging}
        href={(to) => `/shop/queue?view=waiting&page=${to}`}
      />
    </>
  );
}

function known(reason: Row["reason"]): string {
  switch (reason.kind) {
    case "customer":
      return w.kinds.customer;
    case "material":
    case "decision":
      return [
        fill(w.atStation, { station: reason.stationNumber }),
        reason.expectedOn === null ? w.noDate : fill(w.expected, { day: dayText(reason.expectedOn) }),
        reason.note,
      ]
        .filter(Boolean)
        .join(", ");
    case "rest":
      return `${fill(w.atStation, { station: reason.stationNumber })}, ${fill(w.until, { at: clock(reason.until) })}`;
    case "before":
      return fill(w.atStation, { station: reason.stationNumber });
    case "away":
      return [
        fill(w.atStation, { station: reason.stationNumber }),
        reason.what,
        reason.until === null ? w.forGood : fill(w.until, { at: clock(reason.until) }),
      ]
        .filter(Boolean)
        .join(", ");
    case "no-slot":
      return "–";
  }
}
