/** The orders that the list shows with the same filters, all of them, as CSV. Amounts in cents. */
import { notFound } from "next/navigation";
import { handler } from "#app/_server/handler.ts";
import { staffContext } from "#app/_server/request.ts";
import { csvOfPages } from "#app/shop/(staff)/csv-response.ts";
import { listOrdersQuery } from "#schemas";
import { listOrders } from "#services";

const head = ["order", "customer", "pairs", "serials", "state", "waiting_for", "promised_on", "total_cents", "ordered"];

export const GET = handler("orders as CSV", async (request: Request): Promise<Response> => {
  const ctx = await staffContext("/shop/orders");
  const parsed = listOrdersQuery.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  const filters = parsed.success ? parsed.data : {};
  const file = await csvOfPages(
    "orders.csv",
    head,
    (page) => listOrders(ctx, { ...filters, page }),
    (row) => [
      row.number,
      row.customerName,
      row.summary,
      row.serials.join(" "),
      row.state,
      row.waitingFor.join(" "),
      row.promisedOn ?? "",
      row.totalCents,
      row.acceptedAt,
    ],
  );
  return file ?? notFound();
});
