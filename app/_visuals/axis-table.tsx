/** The numbers behind the axis chart as a table every 100 mm and as CSV every 10 mm. */
import { memo } from "react";
import { csvHref } from "#app/_ui/csv.ts";
import { type AxisBuild, axisTable } from "./axis-builds";

const tableStepMm = 100;
const csvStepMm = 10;

export const AxisTable = memo(function AxisTable({
  title,
  builds,
}: {
  readonly title: string;
  readonly builds: readonly AxisBuild[];
}) {
  const { head, rows } = axisTable(builds, tableStepMm);
  const fine = axisTable(builds, csvStepMm);
  const fileName = `${title.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.csv`;
  return (
    <details className="no-print mt-3">
      <summary className="chevron inline-flex min-h-9 items-center gap-2 text-tarn underline decoration-1 underline-offset-4">
        The same numbers as a table
      </summary>
      <section
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
        tabIndex={0}
        aria-label={`${title}: values along the ski`}
        className="mt-2 overflow-x-auto border-y border-rule"
      >
        <table className="w-full border-collapse text-right text-sm">
          <caption className="sr-only">
            {title}: values every 100 mm {builds.length > 1 ? "from the mount line" : "from the tip"}
          </caption>
          <thead>
            <tr>
              {head.map((cell) => (
                <th
                  key={cell}
                  scope="col"
                  className="border-b border-control px-2 py-1 align-bottom text-xs font-medium text-pencil"
                >
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody className="measure">
            {rows.map((row) => (
              <tr key={row[0]} className="border-b border-rule last:border-b-0">
                {row.map((cell, i) => (
                  <td key={head[i]} className="px-2 py-0.5">
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="mt-2 text-sm">
        <a href={csvHref(fine.head, fine.rows)} download={fileName}>
          Download as CSV, every 10 mm
        </a>
      </p>
    </details>
  );
});
