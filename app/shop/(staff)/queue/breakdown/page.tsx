import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { listHref, type Query } from "#app/shop/(staff)/list-href.ts";
import { ByAt, NumberLink } from "#app/shop/cells.tsx";
import { permit } from "#auth";
import words from "#content/copy/breakdowns.json";
import {
  type BreakdownKind,
  type IncidentSummary,
  listIncidents,
  previewBreakdown,
  queueBoard,
  settings,
} from "#services";
import type { Context } from "#services/context";
import { shopClock } from "#services/shop-clock";
import { AnswerHead, fieldErrors, KindChoice, keptAnswers, WholeError } from "../question";
import { report } from "./actions";
import { Base } from "./base";
import { Effect } from "./effect";
import { answersIn, BreakdownFields } from "./fields";
import { breakdownKinds, breakdownSchema } from "./read-input";
import { Ways } from "./ways";

const w = words.list;
const here = "/shop/queue/breakdown";
export const metadata: Metadata = { title: w.title };

export default async function BreakdownPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref(here, query, {}));
  const incidents = await listIncidents(ctx);
  if (!incidents.ok) notFound();
  const kind = breakdownKinds.find((each) => each === query.kind);
  return (
    <Page title={w.title} lead={w.lead}>
      <Part title={w.choose} id="what">
        <KindChoice label={w.choose} href={here} kinds={breakdownKinds} chosen={kind} words={words.kinds} />
      </Part>
      {kind === undefined ? null : <Asked ctx={ctx} kind={kind} query={query} />}
      <Part title={w.known} id="known">
        <Known incidents={incidents.value} />
      </Part>
    </Page>
  );
}

async function Asked(props: { readonly ctx: Context; readonly kind: BreakdownKind; readonly query: Query }) {
  const { ctx, kind, query } = props;
  const needsPairs = kind === "ski-rebuild" || kind === "proof-late";
  const board = needsPairs ? await queueBoard(ctx, { days: 1 }) : null;
  const pairs = board?.ok
    ? board.value.pairs.map((pair) => ({
        value: pair.pairId,
        label: `${pair.serial} ${pair.skierFirstName}, ${pair.modelName} ${pair.lengthCm}`,
      }))
    : [];
  const answers = answersIn(kind, query);
  const isAsked = Object.keys(query).length > 1;
  const parsed = isAsked ? breakdownSchema.safeParse(answers) : null;
  const preview = parsed?.success ? await previewBreakdown(ctx, parsed.data) : null;
  const errors = fieldErrors(parsed, preview);
  return (
    <Part title={words.kinds[kind]} id="form">
      <WholeError errors={errors} />
      <BreakdownFields
        kind={kind}
        query={query}
        pairs={pairs}
        now={shopClock(ctx.now, settings().shop.timeZone)}
        errors={errors}
      />
      {preview?.ok ? (
        <div className="mt-8 grid grid-cols-1 gap-6">
          {preview.value.base === null ? (
            <AnswerHead>{words.effect.title}</AnswerHead>
          ) : (
            <>
              <AnswerHead>{words.base.title}</AnswerHead>
              <Base base={preview.value.base} />
              <h3 className="text-lg">{words.effect.title}</h3>
            </>
          )}
          <Effect effect={preview.value.effect} />
          <h3 className="text-lg">{words.ways.title}</h3>
          <Ways options={preview.value.options} showCost={permit(ctx.actor, "what-if.ask").ok} />
          <Notice tone="info" title={words.form.notStored} />
          <ActionForm
            action={report}
            idPrefix="report-"
            size="floor"
            fields={[
              ...keptAnswers(answers),
              { kind: "hidden", name: "reportId", value: ctx.newId() },
              { kind: "textarea", name: "note", label: words.form.note, optional: true },
            ]}
            submit={words.form.report}
            busy={words.form.reporting}
          />
        </div>
      ) : null}
    </Part>
  );
}

function Known({ incidents }: { readonly incidents: readonly IncidentSummary[] }) {
  return (
    <Table
      caption={w.known}
      hideCaption
      stacks
      empty={<p className="text-pencil">{w.none}</p>}
      columns={[
        {
          key: "number",
          head: w.number,
          cell: (row) => <NumberLink href={`${here}/${row.incidentId}`} number={row.number} />,
        },
        { key: "what", head: w.what, cell: (row) => words.kinds[row.input.kind] },
        { key: "state", head: w.state, cell: (row) => words.states[row.state] },
        { key: "crossing", head: w.crossing, numeric: true, cell: (row) => row.crossing },
        {
          key: "by",
          head: w.by,
          cell: (row) => <ByAt by={row.reportedBy} at={row.reportedAt} />,
        },
      ]}
      rows={incidents}
      rowKey={(row) => row.incidentId}
    />
  );
}
