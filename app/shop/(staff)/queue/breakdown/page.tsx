import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { messagesByPath } from "@/app/_server/form-state";
import { staffContext } from "@/app/_server/request";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Notice } from "@/app/_ui/notice";
import { Page, Part } from "@/app/_ui/page";
import { Table } from "@/app/_ui/table";
import shop from "@/content/catalog/shop.json";
import words from "@/content/copy/breakdowns.json";
import { permit } from "@/lib/auth";
import { type BreakdownKind, type IncidentSummary, listIncidents, previewBreakdown, queueBoard } from "@/lib/services";
import type { Context } from "@/lib/services/context";
import { shopClock } from "@/lib/services/shop-time";
import { Clock } from "../../../cells";
import { say } from "../../../say";
import { listHref, type Query } from "../../list-href";
import { report } from "./actions";
import { Base } from "./base";
import { Effect } from "./effect";
import { answersIn, BreakdownFields } from "./fields";
import { breakdownKinds, breakdownSchema } from "./read-input";
import { Ways } from "./ways";

const w = words.list;
export const metadata: Metadata = { title: w.title };

export default async function BreakdownPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref("/shop/queue/breakdown", query, {}));
  const incidents = await listIncidents(ctx);
  if (!incidents.ok) notFound();
  const kind = breakdownKinds.find((each) => each === query.kind);
  return (
    <Page title={w.title} lead={w.lead}>
      <Part title={w.choose} id="what">
        <nav aria-label={w.choose}>
          <ul className="grid gap-2 sm:grid-cols-2 lg:grid-cols-3">
            {breakdownKinds.map((each) => (
              <li key={each}>
                <a
                  href={`/shop/queue/breakdown?kind=${each}`}
                  aria-current={each === kind ? "true" : undefined}
                  className={`flex min-h-14 items-center border bg-sheet px-4 no-underline ${each === kind ? "border-larch font-semibold text-ink" : "border-control"}`}
                >
                  {words.kinds[each]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
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
  const errors: Readonly<Record<string, string>> =
    parsed?.success === false
      ? messagesByPath(parsed.error.issues)
      : preview?.ok === false
        ? { [preview.refusal.path ?? ""]: say(preview.refusal) }
        : {};
  return (
    <Part title={words.kinds[kind]} id="form">
      {errors[""] ? <Notice tone="iron" title={errors[""]} live="assertive" /> : null}
      <BreakdownFields
        kind={kind}
        query={query}
        pairs={pairs}
        now={shopClock(ctx.now, shop.timeZone)}
        errors={errors}
      />
      {preview?.ok ? (
        <div className="mt-8 grid grid-cols-1 gap-6">
          {preview.value.base === null ? null : (
            <>
              <h3 className="text-lg">{words.base.title}</h3>
              <Base base={preview.value.base} />
            </>
          )}
          <h3 className="text-lg">{words.effect.title}</h3>
          <Effect effect={preview.value.effect} />
          <h3 className="text-lg">{words.ways.title}</h3>
          <Ways options={preview.value.options} showCost={permit(ctx.actor, "what-if.ask").ok} />
          <Notice tone="info" title={words.form.notStored} />
          <ActionForm
            action={report}
            idPrefix="report-"
            size="floor"
            fields={[
              ...Object.entries(answers).map(([name, value]) => ({ kind: "hidden" as const, name, value })),
              { kind: "hidden", name: "reportId", value: ctx.newId() },
              { kind: "textarea", name: "note", label: words.form.note, rows: 3, optional: true },
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
      empty={<p className="text-pencil">{w.none}</p>}
      columns={[
        {
          key: "number",
          head: w.number,
          cell: (row) => <Link href={`/shop/queue/breakdown/${row.incidentId}`}>{row.number}</Link>,
        },
        { key: "what", head: w.what, cell: (row) => words.kinds[row.input.kind] },
        { key: "state", head: w.state, cell: (row) => words.states[row.state] },
        { key: "crossing", head: w.crossing, numeric: true, cell: (row) => row.crossing },
        {
          key: "by",
          head: w.by,
          cell: (row) => (
            <>
              {row.reportedBy}, <Clock at={row.reportedAt} />
            </>
          ),
        },
      ]}
      rows={incidents}
      rowKey={(row) => row.incidentId}
    />
  );
}
