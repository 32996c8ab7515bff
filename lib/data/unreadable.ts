/** What of the shop's open business cannot be read, so that somebody hears of it before a customer does. */
import type { Tx } from "./client";
import { readRow, readRows, type UnreadableRow } from "./columns";
import { readFloorBook } from "./floor-books";
import { readChange } from "./floor-changes";
import { readBook } from "./learning";
import { readNoticeRow } from "./notices";
import { orderName } from "./records/order";
import { quoteName } from "./records/quote";
import { benchColumns, incidentColumns, orderColumns, quoteColumns } from "./records/tables";
import { readSheet } from "./sheets";

/**
 * Rows of their own that cannot be read: open sheets and quotes, orders that are not delivered, breakdowns that are not over,
 * what is different about the floor, letters that wait, readings of the bench and books. Open pairs are not
 * among them: who reads the queue knows.
 */
export async function unreadableRows(client: Tx): Promise<readonly UnreadableRow[]> {
  const [sheets, quotes, orders, incidents, changes, notices, readings, books, floorBooks] = await Promise.all([
    client.sheet.findMany({ where: { state: { notIn: ["quoted", "turned-down"] } } }),
    client.quote.findMany({ where: { state: { notIn: ["accepted", "withdrawn"] } } }),
    client.order.findMany({ where: { state: { notIn: ["delivered", "cancelled"] } } }),
    client.incident.findMany({ where: { state: { not: "closed" } } }),
    client.floorChange.findMany({ where: { withdrawnAt: null } }),
    client.notice.findMany({ where: { state: { notIn: ["sent", "dropped"] } } }),
    client.benchRecord.findMany(),
    client.correctionBook.findMany(),
    client.floorBook.findMany(),
  ]);
  return [
    ...readRows(sheets, readSheet).unreadable,
    ...readRows(quotes, (row) => readRow("quotes", quoteColumns, row, quoteName)).unreadable,
    ...readRows(orders, (row) => readRow("orders", orderColumns, row, orderName)).unreadable,
    ...readRows(incidents, (row) => readRow("incidents", incidentColumns, row, ({ number }) => `INC-${number}`))
      .unreadable,
    ...readRows(changes, readChange).unreadable,
    ...readRows(notices, readNoticeRow).unreadable,
    ...readRows(books, readBook).unreadable,
    ...readRows(floorBooks, readFloorBook).unreadable,
    ...readRows(readings, (row) => readRow("bench_records", benchColumns, row, ({ serial }) => serial)).unreadable,
  ];
}
