/** Every reading against what was computed, as CSV. Gram, mm and N/cm as the bench reads. */
import { notFound } from "next/navigation";
import { handler } from "#app/_server/handler.ts";
import { staffContext } from "#app/_server/request.ts";
import { csvOfPages } from "#app/shop/(staff)/csv-response.ts";
import { benchScales } from "#schemas";
import { readLearning } from "#services";

const head = ["ski", "pair", "measure", "unit", "measured", "handbook", "with_factors", "studentised", "left_out"];

export const GET = handler("readings as CSV", async (): Promise<Response> => {
  const ctx = await staffContext("/shop/measured");
  const file = await csvOfPages(
    "measured-pairs.csv",
    head,
    async () => {
      const read = await readLearning(ctx);
      if (!read.ok) return read;
      const rows = read.value.calibration.residuals;
      return {
        ok: true,
        value: { rows, total: rows.length, page: 1, pageSize: Math.max(1, rows.length), unreadable: [] },
      };
    },
    ({ skiId, pair, measure, measured, predictedBefore, predictedAfter, studentised, leftOut }) => {
      const { unit, perEngine } = benchScales[measure];
      const round = (value: number, steps = 1000) => Math.round(value * steps) / steps;
      const inUnit = (value: number) => round(value * perEngine);
      const values = [measured, predictedBefore, predictedAfter].map(inUnit);
      return [skiId, pair, measure, unit, ...values, round(studentised), leftOut ? "yes" : "no"];
    },
  );
  return file ?? notFound();
});
