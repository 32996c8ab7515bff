/** Quality, factors, readings, decisions and books as tables. */
import { Paging, pageOf } from "#app/_ui/paging.tsx";
import { More } from "#app/_ui/section.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import words from "#content/copy/learning.json";
import queueWords from "#content/copy/queue.json";
import type { CorrectionFactor, Quality, Residual } from "#engine/calibration";
import type { MaterialLibrary } from "#engine/materials";
import { textForPeople } from "#engine/units";
import type { LearningView } from "#services";
import { benchNumber, benchText, differenceText } from "./figures";

const w = words.measured;

export function QualityTable({ quality }: { readonly quality: readonly Quality[] }) {
  const cells = (["biasBefore", "rmsBefore", "biasAfter", "rmsAfter"] as const).map((key) => ({
    key,
    head: w.qualityHeads[key],
    numeric: true,
    cell: (row: Quality) => differenceText(row.measure, row[key]).replace(key.startsWith("rms") ? "+" : "", ""),
  }));
  return (
    <Table
      caption={w.quality}
      hideCaption
      columns={[
        { key: "measure", head: w.qualityHeads.measure, cell: (row) => words.measures[row.measure] },
        { key: "readings", head: w.qualityHeads.readings, numeric: true, cell: (row) => row.readings },
        ...cells,
      ]}
      rows={quality}
      rowKey={(row) => row.measure}
    />
  );
}

/** A factor's name and value in words. */
function factorTexts(materials: MaterialLibrary) {
  const { woods, fabrics, sheets } = materials;
  const labels = new Map([...woods, ...fabrics, ...sheets].map(({ id, label }) => [id, label]));
  return {
    name: ({ kind, material }: CorrectionFactor) =>
      fill(w.factorNames[kind], { material: labels.get(material ?? "") ?? material ?? "" }),
    value: (factor: CorrectionFactor) =>
      factor.material === undefined ? `${textForPeople(factor.value, 2)} mm` : textForPeople(factor.value, 3),
  };
}

/** The factors that a book would change most beyond doubt: those furthest from the handbook in their own deviations. */
export function biggestChanges(factors: readonly CorrectionFactor[], materials: MaterialLibrary): string {
  const { name, value } = factorTexts(materials);
  const away = (factor: CorrectionFactor) =>
    Math.abs(factor.value - (factor.material === undefined ? 0 : 1)) / factor.sd;
  return factors
    .filter((factor) => away(factor) > 1)
    .toSorted((a, b) => away(b) - away(a))
    .slice(0, 5)
    .map((factor) => `${name(factor)} ${value(factor)}`)
    .join("; ");
}

export function FactorTable(props: {
  readonly factors: readonly CorrectionFactor[];
  readonly materials: MaterialLibrary;
}) {
  const { name, value } = factorTexts(props.materials);
  const isOffset = (factor: CorrectionFactor) => factor.material === undefined;
  return (
    <Table
      caption={w.factors}
      hideCaption
      dense
      columns={[
        { key: "name", head: w.factorHeads.name, cell: name },
        {
          key: "value",
          head: w.factorHeads.value,
          numeric: true,
          cell: value,
        },
        {
          key: "sd",
          head: w.factorHeads.sd,
          numeric: true,
          cell: (factor) => textForPeople(factor.sd, isOffset(factor) ? 2 : 3),
        },
        {
          key: "learnt",
          head: w.factorHeads.learnt,
          numeric: true,
          cell: (factor) => `${textForPeople(100 * factor.learnt, 0)} %`,
        },
      ]}
      rows={[...props.factors].sort((a, b) => b.learnt - a.learnt)}
      rowKey={(factor) => `${factor.kind} ${factor.material ?? ""}`}
    />
  );
}

export function ResidualTable({
  view,
  page: asked,
}: {
  readonly view: LearningView;
  readonly page?: string | undefined;
}) {
  const { residuals, suspects } = view.calibration;
  const isSuspect = new Set(suspects);
  const state = (row: Residual) => (row.leftOut ? "out" : isSuspect.has(row) ? "suspect" : "fits");
  const order = { suspect: 0, out: 1, fits: 2 };
  const rows = residuals.toSorted(
    (a, b) => order[state(a)] - order[state(b)] || Math.abs(b.studentised) - Math.abs(a.studentised),
  );
  const { shown, page, pageCount } = pageOf(rows, asked);
  return (
    <More open={asked !== undefined} summary={fill(w.allResiduals, { count: residuals.length })}>
      <Table
        caption={w.residuals}
        hideCaption
        dense
        csvUrl="/shop/measured/csv"
        columns={[
          { key: "ski", head: w.residualHeads.ski, cell: (row) => <span className="measure">{row.skiId}</span> },
          { key: "measure", head: w.residualHeads.measure, cell: (row) => words.measures[row.measure] },
          {
            key: "measured",
            head: w.residualHeads.measured,
            numeric: true,
            cell: (row) => benchText(row.measure, row.measured),
          },
          {
            key: "before",
            head: w.residualHeads.before,
            numeric: true,
            cell: (row) => benchNumber(row.measure, row.predictedBefore),
          },
          {
            key: "after",
            head: w.residualHeads.after,
            numeric: true,
            cell: (row) => benchNumber(row.measure, row.predictedAfter),
          },
          { key: "off", head: w.residualHeads.off, numeric: true, cell: (row) => textForPeople(row.studentised, 1) },
          { key: "state", head: w.residualHeads.state, cell: (row) => w.residualStates[state(row)] },
        ]}
        rows={shown}
        rowKey={(row) => `${row.skiId} ${row.measure}`}
      />
      <Paging
        page={page}
        pageCount={pageCount}
        words={queueWords.paging}
        href={(to) => `/shop/measured?page=${to}#readings`}
      />
    </More>
  );
}

export function DecisionTable({ view }: { readonly view: LearningView }) {
  const h = w.decisionHeads;
  return (
    <Table
      caption={w.decisions}
      hideCaption
      dense
      columns={[
        { key: "at", head: h.at, cell: (row) => <Clock at={row.at} /> },
        {
          key: "reading",
          head: h.reading,
          cell: (row) => `${row.serial}, ${words.measures[row.measure]} ${benchText(row.measure, row.value)}`,
        },
        { key: "choice", head: h.choice, cell: (row) => w.choices[row.choice] },
        { key: "reason", head: h.reason, cell: (row) => row.reason },
        { key: "by", head: h.by, cell: (row) => row.by },
        { key: "holds", head: h.holds, cell: (row) => (row.holds ? w.holds.yes : w.holds.no) },
      ]}
      rows={view.decisions}
      rowKey={(row) => `${row.serial} ${row.measure} ${row.at} ${row.reason}`}
      empty={<p className="text-pencil">{w.decisionsNone}</p>}
    />
  );
}

export function BookTable({ view }: { readonly view: LearningView }) {
  const h = w.bookHeads;
  return (
    <Table
      caption={w.books}
      hideCaption
      columns={[
        { key: "version", head: h.version, cell: (book) => <span className="measure">{book.version}</span> },
        { key: "at", head: h.at, cell: (book) => <Clock at={book.effectiveAt} /> },
        { key: "pairs", head: h.pairs, numeric: true, cell: (book) => book.summary.pairs },
        {
          key: "leftOut",
          head: h.leftOut,
          cell: (book) =>
            book.summary.leftOut
              .map(({ serial, measure, reason }) => `${serial}, ${words.measures[measure].toLowerCase()}: ${reason}`)
              .join("; ") || "–",
        },
        { key: "by", head: h.by, cell: (book) => book.approvedBy },
      ]}
      rows={view.books}
      rowKey={(book) => book.version}
      empty={<p className="text-pencil">{w.booksNone}</p>}
    />
  );
}
