/** The orders that the list shows with the same filters, all of them, as CSV. Amounts in cents. */
import { notFound } from "next/navigation";
import { handler } from "@/app/_server/handler";
import { staffContext } from "@/app/_server/request";
import { listOrdersQuery } from "@/lib/schemas";
import { listOrders } from "@/lib/services";
import { csvOfPages } from "../../csv-response";

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
