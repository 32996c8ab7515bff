/** Every open pair with its promise, the tightest first, as CSV. */
import { notFound } from "next/navigation";
import { handler } from "#app/_server/handler.ts";
import { staffContext } from "#app/_server/request.ts";
import { csvResponse } from "#app/shop/(staff)/csv-response.ts";
import { queueBoard } from "#services";
import { bySlack, promiseCells, promisesHead } from "../promises-csv";

export const GET = handler("promises as CSV", async (): Promise<Response> => {
  const ctx = await staffContext("/shop/queue?view=promises");
  const read = await queueBoard(ctx, { days: 14 });
  if (!read.ok) notFound();
  return csvResponse("promises.csv", promisesHead, bySlack(read.value.pairs).map(promiseCells));
});
