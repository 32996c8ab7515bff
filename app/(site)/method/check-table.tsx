/** The checks of one formula, folded away: what was expected, what the engine gives, how far apart and how far allowed. */
import { type Column, Table } from "#app/_ui/table.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import words from "#content/copy/site.json";
import results from "#content/method-checks.json";
import { linesOf, nameForPeople, percent, plainNumber, type Values } from "./check-numbers";

interface Row {
  readonly id: string;
  readonly topic: string;
  readonly about: string;
  readonly name: string;
  readonly source: string;
  readonly mark: string;
  readonly expected: Values;
  readonly computed: Values;
  readonly difference: number;
  readonly tolerance: { readonly kind: string; readonly value?: number };
  readonly passed: boolean;
  /** Of its check: source and subject are written once. */
  readonly isFirst: boolean;
}

const { labels, marks } = words.method;
const rows = (results.rows as readonly Omit<Row, "isFirst">[]).map(
  (row, i): Row => ({ ...row, isFirst: results.rows[i - 1]?.id !== row.id }),
);

const columns: readonly Column<Row>[] = [
  { key: "id", head: labels.checkedId, cell: (row) => row.id },
  {
    key: "what",
    head: labels.checkedWhat,
    cell: (row) => (
      <>
        {row.isFirst ? row.about : null}
        <samp>{nameForPeople(row.name)}</samp>
      </>
    ),
  },
  { key: "expected", head: labels.expected, numeric: true, cell: (row) => <Lines values={row.expected} /> },
  { key: "computed", head: labels.computed, numeric: true, cell: (row) => <Lines values={row.computed} /> },
  { key: "difference", head: labels.difference, numeric: true, cell: differenceOf },
  { key: "allowed", head: labels.allowed, numeric: true, cell: allowedOf },
  { key: "source", head: labels.checkedSource, cell: (row) => (row.isFirst ? <Source row={row} /> : null) },
];

export function CheckTable({ topics, title }: { readonly topics: readonly string[]; readonly title: string }) {
  const shown = rows.filter((row) => topics.includes(row.topic));
  if (shown.length === 0) return null;
  const failed = shown.filter((row) => !row.passed).length;
  const summary = fill(failed === 0 ? labels.allMet : labels.someMet, {
    count: shown.length,
    failed,
    marks: countsOfMarks(shown),
  });
  return (
    <details className="checks mt-3 min-w-0">
      <summary className="chevron inline-flex min-h-11 cursor-pointer items-center gap-2 text-tarn underline decoration-1 underline-offset-4">
        {summary}
      </summary>
      <Table
        caption={`${labels.checks}: ${title}`}
        hideCaption
        dense
        columns={columns}
        rows={shown}
        rowKey={(row) => `${row.id} ${row.name}`}
      />
    </details>
  );
}

/** "36 published, 14 worked out beside the engine", in the order of the copy; what does not occur is left out. */
function countsOfMarks(shown: readonly Row[]): string {
  return Object.entries(marks)
    .map(([mark, word]) => ({ word, count: shown.filter((row) => row.mark === mark).length }))
    .filter(({ count }) => count > 0)
    .map(({ word, count }) => `${count} ${word}`)
    .join(", ");
}

/** A matrix keeps its rows. */
function Lines({ values }: { readonly values: Values }) {
  const lines = linesOf(values);
  return lines.length === 1 ? lines[0] : <pre>{lines.join("\n")}</pre>;
}

function Source({ row }: { readonly row: Row }) {
  return (
    <>
      {row.source}
      <small>({wordOf(marks, row.mark)})</small>
    </>
  );
}

function differenceOf({ tolerance, difference, passed }: Row) {
  if (!passed) return <strong className="text-iron">{`${plainNumber(difference, 2)}: ${labels.notMet}`}</strong>;
  if (tolerance.kind === "range" || tolerance.kind === "most") return labels.inside;
  return tolerance.kind === "rel" ? percent(difference) : difference < 1e-12 ? "0" : plainNumber(difference, 2);
}

function allowedOf({ tolerance: { kind, value = 0 } }: Row) {
  if (kind === "range") return labels.between;
  if (kind === "most") return labels.atMost;
  return kind === "rel" ? percent(value) : plainNumber(value, 2);
}
