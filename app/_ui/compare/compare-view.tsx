/**
 * The compare page of skier and desk: what to compare, the pairs over one another on one axis, the same in numbers, and
 * the way to take one of them onto the sheet.
 */
import type { ReactNode } from "react";
import { type AxisBuild, mostBuilds } from "#app/_visuals/axis-builds.ts";
import { AxisChart } from "#app/_visuals/axis-chart.client.tsx";
import { LineKey, lookOf } from "#app/_visuals/axis-looks.tsx";
import { assessSheet, type EngineCatalog, type SheetInput } from "#engine/assessment";
import type { SheetView } from "#services/views";
import { Notice } from "../notice";
import { Page, Part } from "../page";
import { More } from "../section";
import { fill } from "../words";
import {
  type CandidateId,
  type ComparedPair,
  type CompareQuery,
  comparedPair,
  offeredModels,
  tickedOf,
} from "./candidates";
import { CompareForm } from "./compare-form";
import { CompareTable } from "./compare-table";
import { figureRows, firstRows } from "./figures";
import { verdictOf } from "./verdict";
import type { CompareWords } from "./words";

/** What came of the other sheet's link: nothing typed, its sheet, or why not, in words. */
export type OtherSheet =
  | { readonly state: "none" }
  | { readonly state: "found"; readonly input: SheetInput }
  | { readonly state: "refused"; readonly message: string };

export interface CompareViewProps {
  readonly sheet: SheetView;
  readonly other: OtherSheet;
  readonly query: CompareQuery;
  readonly catalog: EngineCatalog;
  readonly words: CompareWords;
  readonly backHref: string;
  /** The button that takes a pair onto the sheet. */
  readonly take: (id: CandidateId) => ReactNode;
  readonly clashText: (pair: ComparedPair) => string | null;
}

export function CompareView(p: CompareViewProps) {
  const { words, catalog, sheet, other } = p;
  const own: SheetInput = { answers: sheet.answers, choices: sheet.choices };
  const assessment = assessSheet(own, catalog);
  const offered = offeredModels(assessment, p.query.show, catalog);
  const hasSheet = assessment.spec !== null;
  const ticked = tickedOf(p.query, assessment, offered).filter((id) => id !== "sheet" || hasSheet);
  const asked: readonly CandidateId[] = [...ticked, ...(other.state === "found" ? ["other"] : [])];
  const sources = { own, other: other.state === "found" ? other.input : null };
  const shown = asked.slice(0, mostBuilds).map((id) => ({ id, pair: comparedPair(id, sources, catalog) }));
  const pairs = shown.flatMap(({ pair }) => (pair ? [pair] : []));
  const lost = shown.filter(({ pair }) => !pair).map(({ id }) => nameOf(id, p));
  const lengthOf = (model: string) =>
    assessment.recommendation?.choices.find((choice) => choice.model === model)?.lengthCm;
  const form = (
    <CompareForm
      words={words.form}
      catalog={catalog}
      offered={offered}
      lengthOf={lengthOf}
      sheetName={hasSheet ? pairName(comparedPair("sheet", sources, catalog)) : null}
      ticked={ticked}
      most={mostBuilds}
      other={p.query.other}
      otherError={other.state === "refused" ? other.message : undefined}
    />
  );
  return (
    <Page
      title={words.title}
      lead={words.lead}
      aside={
        <a href={p.backHref} className="inline-flex min-h-9 items-center">
          {words.back}
        </a>
      }
    >
      <TooMany asked={asked.length} words={words} />
      {hasSheet ? null : (
        <div className="mb-6">
          <Notice tone="info" title={words.incomplete}>
            <p>{words.incompleteText}</p>
          </Notice>
        </div>
      )}
      {lost.map((name) => (
        <div key={name} className="mb-6">
          <Notice tone="amber" title={fill(words.notWorkedOut, { name })} />
        </div>
      ))}
      <Compared {...p} pairs={pairs} form={form} />
    </Page>
  );
}

function TooMany({ asked, words }: { readonly asked: number; readonly words: CompareWords }) {
  if (asked <= mostBuilds) return null;
  return (
    <div className="mb-6">
      <Notice tone="iron" live="assertive" title={fill(words.tooMany, { asked, most: mostBuilds })}>
        <p>{fill(words.tooManyText, { most: mostBuilds, over: asked - mostBuilds })}</p>
      </Notice>
    </div>
  );
}

/** What is said first, what is asked for, then all of it. */
function Compared({
  pairs,
  ...p
}: CompareViewProps & { readonly pairs: readonly ComparedPair[]; readonly form: ReactNode }) {
  const { words, catalog } = p;
  const builds = pairs.map(
    (pair): AxisBuild => ({
      label: `${columnName(pair.id, words)}: ${pairName(pair)}`,
      shape: pair.solved.build.shape,
      flex: pair.solved.flex,
      mountMm: pair.mountMm,
    }),
  );
  const [first, ...others] = builds;
  if (!first)
    return (
      <>
        <p className="mb-6 text-pencil">{words.tooFew}</p>
        {p.form}
      </>
    );
  const labels = builds.map((build) => build.label);
  const rows = figureRows(pairs, catalog, words);
  return (
    <>
      <Verdict sentences={verdictOf(pairs, namesOf(pairs), words)} title={words.verdict.title} />
      <div className="mb-6">
        <CompareTable caption={words.table} labels={labels} rows={rows.slice(0, firstRows)} />
      </div>
      {p.form}
      <AxisChart title={pairs.map(pairName).join(" · ")} builds={[first, ...others]} />
      <div className="mt-10">
        <More summary={words.allNumbers}>
          <CompareTable caption={words.allNumbers} labels={labels} rows={rows.slice(firstRows)} />
          <p className="mt-2 max-w-measure text-sm text-pencil">{words.tableHint}</p>
        </More>
        <Part title={words.take.title} id="take">
          <ul className="grid gap-6 sm:grid-cols-2 lg:grid-cols-3">
            {pairs.map((pair, index) => (
              <li key={pair.id} className="grid content-start gap-2 max-sm:border-b max-sm:border-rule max-sm:pb-6">
                <p className="flex items-baseline gap-2">
                  {pairs.length > 1 ? <LineKey index={index} /> : null}
                  <span className="font-medium">{pairName(pair)}</span>
                </p>
                <Taking {...p} pair={pair} />
              </li>
            ))}
          </ul>
        </Part>
      </div>
    </>
  );
}

/** Each by its model, and by its letter too where two have the same name. */
function namesOf(pairs: readonly ComparedPair[]): readonly string[] {
  const all = pairs.map(pairName);
  return all.map((name, i) =>
    all.filter((other) => other === name).length > 1 ? `${name} (${lookOf(i).letter})` : name,
  );
}

function Verdict({ sentences, title }: { readonly sentences: readonly string[]; readonly title: string }) {
  if (sentences.length === 0) return null;
  return (
    <section aria-label={title} className="mb-6 grid max-w-measure gap-1 text-lg">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </section>
  );
}

function Taking({ pair, words, sheet, take, clashText }: CompareViewProps & { readonly pair: ComparedPair }) {
  if (pair.id === "sheet") return <p className="text-sm text-pencil">{words.take.isOn}</p>;
  const clash = clashText(pair);
  return (
    <>
      <p className="text-sm text-pencil">{pair.id === "other" ? words.take.other : words.take.model}</p>
      {clash ? <p className="text-sm text-iron">{fill(words.take.clash, { text: clash })}</p> : null}
      {sheet.state === "open" ? take(pair.id) : <p className="text-sm">{words.take.closed}</p>}
    </>
  );
}

function columnName(id: CandidateId, { columns }: CompareWords): string {
  return id === "sheet" ? columns.sheet : id === "other" ? columns.other : columns.model;
}

function pairName(pair: ComparedPair | null): string {
  return pair ? `${pair.modelName}, ${pair.spec.lengthCm} cm` : "";
}

function nameOf(id: CandidateId, { catalog, words }: CompareViewProps): string {
  return catalog.build.models.find((model) => model.id === id)?.name ?? columnName(id, words);
}
