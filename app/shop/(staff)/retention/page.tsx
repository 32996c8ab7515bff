import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { More } from "#app/_ui/section.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import customers from "#content/copy/customers.json";
import { retentionQuery } from "#schemas";
import { retentionKinds } from "#schemas/stored/index";
import { type RetentionView, readRetention } from "#services";
import type { Query } from "../list-href";
import { apply, keep } from "./actions";

const w = customers.retention;
export const metadata: Metadata = { title: w.title };

export default async function RetentionPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext("/shop/retention");
  const isAsked = Object.keys(query).length > 0;
  const asked = isAsked ? retentionQuery.safeParse(query) : null;
  const read = await readRetention(ctx, asked?.success ? asked.data : undefined);
  if (!read.ok) notFound();
  const view = read.value;
  return (
    <Page title={w.title} lead={w.lead}>
      <Standing view={view} isAsked={asked?.success === true} problem={asked?.error?.issues[0]?.message} />
      <div className="mb-10">
        <ActionForm
          action={keep}
          idPrefix="keep-"
          fields={[
            ...retentionKinds.map((kind) => ({
              kind: "text" as const,
              name: kind,
              label: w.kinds[kind],
              hint: w.hints[kind],
              optional: true,
              value: query[kind] ?? String(view.rules[kind] ?? ""),
              autoComplete: "off",
            })),
            { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
            { kind: "ask", name: "ask", label: w.try, busy: w.trying },
          ]}
          submit={w.set}
        />
      </div>
      <Part title={w.now} id="now">
        <Table
          caption={w.now}
          hideCaption
          stacks
          columns={[
            { key: "kind", head: w.heads.kind, cell: (row) => w.kinds[row.kind] },
            { key: "days", head: w.heads.days, numeric: true, cell: (row) => row.days ?? w.forever },
            { key: "count", head: w.heads.count, numeric: true, cell: (row) => row.count },
            { key: "first", head: w.heads.first, cell: (row) => row.first.join(", ") || "–" },
          ]}
          rows={view.lines}
          rowKey={(row) => row.kind}
        />
        {view.set === null || isAsked ? null : (
          <div className="mt-6">
            <p className="mb-3 text-pencil">{w.applyLead}</p>
            <ActionForm action={apply} idPrefix="apply-" tone="plain" fields={[]} submit={w.apply} done={w.applied} />
          </div>
        )}
      </Part>
      <Places view={view} />
    </Page>
  );
}

interface StandingProps {
  readonly view: RetentionView;
  readonly isAsked: boolean;
  readonly problem: string | undefined;
}

function Standing({ view: { set }, isAsked, problem }: StandingProps) {
  const title = set === null ? w.nothingSet : fill(w.inForce, { by: set.by, at: clock(set.at), reason: set.reason });
  return (
    <div className="mb-6 grid gap-3">
      <Notice tone="info" title={title} />
      {isAsked ? <Notice tone="amber" title={w.asked} /> : null}
      {problem === undefined ? null : <Notice tone="iron" title={problem} />}
    </div>
  );
}

/** Where a person can stand at all: what erasing goes by. */
function Places({ view: { tables, files } }: { readonly view: RetentionView }) {
  return (
    <Part title={w.places} id="places">
      <p className="mb-4 max-w-measure text-pencil">{w.placesLead}</p>
      <More summary={w.tables}>
        <Table
          caption={w.tables}
          hideCaption
          dense
          stacks
          columns={[
            { key: "place", head: w.placeHeads.place, cell: (row) => row.place },
            { key: "holds", head: w.placeHeads.holds, cell: (row) => w.holds[row.holds] },
            { key: "columns", head: w.placeHeads.columns, cell: (row) => row.columns.join(", ") },
          ]}
          rows={tables}
          rowKey={(row) => `${row.place} ${row.holds}`}
        />
      </More>
      <More summary={w.files}>
        <Table
          caption={w.files}
          hideCaption
          dense
          columns={[
            { key: "place", head: w.placeHeads.place, cell: (row) => row.place },
            { key: "holds", head: w.placeHeads.holds, cell: (row) => w.holds[row.holds] },
          ]}
          rows={files}
          rowKey={(row) => row.place}
        />
      </More>
    </Part>
  );
}
