/** The compared pairs in numbers, a column each; narrow enough for three on a phone. */
import { LineKey, lookOf } from "#app/_visuals/axis-looks.tsx";
import type { FigureRow } from "./figures";

export function CompareTable({
  caption,
  labels,
  rows,
}: {
  readonly caption: string;
  readonly labels: readonly string[];
  readonly rows: readonly FigureRow[];
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for controls; this groups a table that may scroll
    <div
      role="group"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
      tabIndex={0}
      aria-label={caption}
      className="overflow-x-auto border-b border-rule"
    >
      <table className="w-full border-collapse text-left text-sm max-sm:text-xs">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr className="border-b border-control">
            <td />
            {labels.map((label, index) => (
              <th
                key={lookOf(index).letter}
                scope="col"
                className="py-2 pl-2 text-right align-bottom font-medium sm:pl-4"
              >
                <LineKey index={index} />
                <span className="block font-normal text-pencil max-sm:sr-only">{label}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name} className="border-b border-rule last:border-b-0">
              <th scope="row" className="py-1.5 text-left align-top font-normal text-pencil">
                {row.name}
                {row.unit ? <span className="whitespace-nowrap">, {row.unit}</span> : null}
              </th>
              {row.cells.map((cell, index) => (
                <td
                  key={lookOf(index).letter}
                  className={`py-1.5 pl-2 text-right align-top sm:pl-4 ${row.isText ? "" : "measure whitespace-nowrap"}`}
                >
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
