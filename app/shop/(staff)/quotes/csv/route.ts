/** The quotes that the list shows with the same filters, all of them, as CSV. Amounts in cents. */
import { notFound } from "next/navigation";
import { handler } from "#app/_server/handler.ts";
import { staffContext } from "#app/_server/request.ts";
import { csvOfPages } from "#app/shop/(staff)/csv-response.ts";
import { listQuotesQuery } from "#schemas";
import { listQuotes } from "#services";

const head = ["quote", "customer", "ski", "total_cents", "state", "valid_until", "price_book", "made"];

export const GET = handler("quotes as CSV", async (request: Request): Promise<Response> => {
  const ctx = await staffContext("/shop/quotes");
  const parsed = listQuotesQuery.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  const filters = parsed.success ? parsed.data : {};
  const file = await csvOfPages(
    "quotes.csv",
    head,
    (page) => listQuotes(ctx, { ...filters, page }),
    (row) => [
      row.number,
      row.customerName,
      row.summary,
      row.totalCents,
      row.state,
      row.validUntilDay,
      row.priceBook,
      row.createdAt,
    ],
  );
  return file ?? notFound();
});
