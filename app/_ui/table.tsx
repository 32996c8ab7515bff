/**
 * A table that a person can read on a phone and take away as CSV. Numbers are right-aligned in the mono face;
 * the first column heads its row. The scroll frame can be reached by keyboard.
 */
import type { ReactNode } from "react";
import { type Cell, csvHref } from "./csv";
import { cx } from "./cx";

export interface Column<Row> {
  readonly key: string;
  readonly head: ReactNode;
  readonly numeric?: boolean;
  readonly cell: (row: Row) => ReactNode;
}

export interface TableProps<Row> {
  readonly caption: string;
  /** The caption is read out, but a heading just above already shows it. */
  readonly hideCaption?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  readonly foot?: ReactNode;
  /** A server route that answers with the whole list as CSV … */
  readonly csvUrl?: string;
  /** … or the data itself, for a table that is complete on the page. */
  readonly csv?: {
    readonly fileName: string;
    readonly head: readonly string[];
    readonly rows: readonly (readonly Cell[])[];
  };
  readonly empty?: ReactNode;
  readonly dense?: boolean;
  /** More columns than a phone is wide: there each row becomes a paragraph with the heads before the values. */
  readonly stacks?: boolean;
}

export function Table<Row>(props: TableProps<Row>) {
  const { caption, columns, rows, rowKey, foot, csvUrl, csv, empty, dense, stacks } = props;
  if (rows.length === 0 && empty) return <>{empty}</>;
  return (
    <div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for controls; this groups a table that may scroll */}
      <div
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
        tabIndex={0}
        aria-label={caption}
        className="overflow-x-auto border-y border-rule"
      >
        <table className={cx("cells w-full border-collapse text-left", dense && "dense text-sm", stacks && "stacks")}>
          <caption className={props.hideCaption ? "sr-only" : "py-2 text-left font-medium"}>{caption}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.key} scope="col" className={column.numeric ? "text-right" : undefined}>
                  {column.head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={rowKey(row)}>
                {columns.map((column, index) =>
                  index === 0 ? (
                    <th key={column.key} scope="row" className={column.numeric ? "measure" : undefined}>
                      {column.cell(row)}
                    </th>
                  ) : (
                    <td
                      key={column.key}
                      data-head={stacks && typeof column.head === "string" ? column.head : undefined}
                      className={column.numeric ? "measure" : undefined}
                    >
                      {column.cell(row)}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
          {foot ? <tfoot className="border-t border-control">{foot}</tfoot> : null}
        </table>
      </div>
      {csvUrl || csv ? (
        <p className="no-print mt-2 text-sm">
          {csvUrl ? (
            <a href={csvUrl}>Download as CSV</a>
          ) : csv ? (
            <a href={csvHref(csv.head, csv.rows)} download={csv.fileName}>
              Download as CSV
            </a>
          ) : null}
        </p>
      ) : null}
    </div>
  );
}
