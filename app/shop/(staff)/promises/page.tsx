/** How promises were kept: shares by P50, P80 and P90 over time, with what chance alone would allow. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { dayText } from "#app/_ui/date-range.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock, Day, DayWithShare, NumberLink } from "#app/shop/cells.tsx";
import { permit } from "#auth";
import words from "#content/copy/promises.json";
import { textForPeople } from "#engine/units";
import {
  type KeptOrder,
  type KeptPeriod,
  type KeptPromises,
  type KeptShare,
  readKeptPromises,
  readPromiseRisk,
} from "#services";
import { monthText } from "./month";
import { SharesOverTime } from "./shares-over-time";
import { Together } from "./together";

const w = words.kept;
export const metadata: Metadata = { title: w.title };

/** Under so many orders a share says little. */
const fewOrders = 20;
/** Kept as told, give or take 5 of 100. */
const aboutRight = 0.05 + 1e-9;

export default async function KeptPromisesPage() {
  const ctx = await staffContext("/shop/promises");
  const [read, risk] = await Promise.all([readKeptPromises(ctx), readPromiseRisk(ctx)]);
  if (!read.ok || !risk.ok) notFound();
  const kept = read.value;
  return (
    <Page wide title={w.title} lead={w.lead}>
      <p className="mb-6">{fill(w.open, { open: kept.open, overdue: kept.overdue })}</p>
      <Part title={w.all} id="all">
        <Verdict all={kept.all} />
      </Part>
      <Part title={w.together} id="together">
        <Together risk={risk.value} />
        {permit(ctx.actor, "learning.read").ok ? (
          <p className="mt-3">
            <a href="/shop/floor-times">{w.floorLink}</a>
          </p>
        ) : null}
      </Part>
      {kept.months.length === 0 ? null : (
        <Part title={w.months} id="months">
          <SharesOverTime months={kept.months} label={w.chart} />
          <Months kept={kept} />
        </Part>
      )}
      <Part title={w.orders} id="orders">
        <Orders orders={kept.orders} />
      </Part>
    </Page>
  );
}

function Verdict({ all }: { readonly all: KeptPeriod }) {
  const p90 = all.shares.find(({ level }) => level === "p90");
  if (p90 === undefined || p90.orders === 0) return <p className="text-pencil">{w.none}</p>;
  if (p90.orders < fewOrders) return <Notice tone="info" title={fill(w.few, { orders: p90.orders, few: fewOrders })} />;
  const off = p90.kept / p90.orders - p90.expected;
  if (off < -aboutRight) return <Notice tone="amber" title={w.tooLate} />;
  return off > aboutRight ? <Notice tone="info" title={w.tooEarly} /> : <Notice tone="moss" title={w.good} />;
}

/** With a real minus sign. */
const signed = (days: number) => `${days > 0 ? "+" : ""}${textForPeople(days, 1)}`.replace("-", "−");

function Share({ share }: { readonly share: KeptShare | undefined }) {
  if (share === undefined || share.orders === 0) return <span className="text-pencil">–</span>;
  const { kept, orders, band, expected } = share;
  return (
    <>
      <span className="measure">{textForPeople((100 * kept) / orders, 0)} %</span>
      <span className="block text-sm text-pencil">
        {fill(w.heads.band, { kept, orders, told: textForPeople(100 * expected, 0), low: band.low, high: band.high })}
      </span>
    </>
  );
}

function Months({ kept }: { readonly kept: KeptPromises }) {
  const rows = [...kept.months, kept.all];
  const level = (row: KeptPeriod, name: KeptShare["level"]) => row.shares.find((share) => share.level === name);
  return (
    <Table
      caption={w.months}
      hideCaption
      stacks
      columns={[
        { key: "month", head: w.heads.month, cell: (row) => (row.month === null ? w.total : monthText(row.month)) },
        { key: "p50", head: w.heads.p50, cell: (row) => <Share share={level(row, "p50")} /> },
        { key: "p80", head: w.heads.p80, cell: (row) => <Share share={level(row, "p80")} /> },
        { key: "p90", head: w.heads.p90, cell: (row) => <Share share={level(row, "p90")} /> },
        {
          key: "on-time",
          head: w.heads.onTime,
          cell: ({ onTime }) => (onTime.orders === 0 ? "–" : fill(w.heads.of, onTime)),
        },
        {
          key: "late",
          head: w.heads.lateness,
          numeric: true,
          cell: (row) => (row.meanLateness === null ? "–" : signed(row.meanLateness)),
        },
      ]}
      rows={rows}
      rowKey={(row) => row.month ?? "all"}
      csv={{
        fileName: "kept-promises.csv",
        head: [
          "month",
          "by_p50",
          "of_p50",
          "by_p80",
          "of_p80",
          "by_p90",
          "of_p90",
          "on_time",
          "of_promises",
          "mean_days_late",
        ],
        rows: rows.map((row) => [
          row.month ?? "all",
          ...(["p50", "p80", "p90"] as const).flatMap((name) => [
            level(row, name)?.kept ?? 0,
            level(row, name)?.orders ?? 0,
          ]),
          row.onTime.kept,
          row.onTime.orders,
          row.meanLateness ?? "",
        ]),
      }}
    />
  );
}

function Orders({ orders }: { readonly orders: readonly KeptOrder[] }) {
  return (
    <Table
      caption={w.orders}
      hideCaption
      dense
      stacks
      empty={<p className="text-pencil">{w.none}</p>}
      columns={[
        {
          key: "order",
          head: w.heads.order,
          cell: (row) => <NumberLink href={`/shop/orders/${row.orderId}`} number={row.number} />,
        },
        { key: "fixed", head: w.heads.fixed, cell: (row) => <Clock at={row.fixedAt} /> },
        { key: "p50", head: w.heads.p50, cell: (row) => <DayWithShare on={row.p50} share={row.shares?.p50} /> },
        { key: "p80", head: w.heads.p80, cell: (row) => <DayWithShare on={row.p80} share={row.shares?.p80} /> },
        { key: "p90", head: w.heads.p90, cell: (row) => <DayWithShare on={row.p90} share={row.shares?.p90} /> },
        { key: "promised", head: w.heads.promised, cell: (row) => <Day on={row.promisedOn} /> },
        {
          key: "ready",
          head: w.heads.ready,
          cell: (row) =>
            row.readyOn === null ? <span className="text-pencil">{w.notReady}</span> : <Day on={row.readyOn} />,
        },
        {
          key: "changes",
          head: w.heads.changes,
          cell: (row) =>
            row.changes.map(({ to, reason, by }) => fill(w.change, { to: dayText(to), reason, by })).join("; ") || "–",
        },
      ]}
      rows={orders}
      rowKey={(row) => row.orderId}
      csv={{
        fileName: "promises-told.csv",
        head: ["order", "clock_started", "p50", "p80", "p90", "promised_on", "ready_on", "changes"],
        rows: orders.map((row) => [
          row.number,
          row.fixedAt,
          row.p50 ?? "",
          row.p80 ?? "",
          row.p90,
          row.promisedOn,
          row.readyOn ?? "",
          row.changes.length,
        ]),
      }}
    />
  );
}
