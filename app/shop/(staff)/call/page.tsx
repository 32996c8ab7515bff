import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button } from "#app/_ui/button.tsx";
import { Empty } from "#app/_ui/empty.tsx";
import { controlClass } from "#app/_ui/field.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Paging } from "#app/_ui/paging.tsx";
import { UnreadableLine } from "#app/shop/unreadable-line.tsx";
import { permit } from "#auth";
import words from "#content/copy/shop.json";
import { listDraftsQuery } from "#schemas";
import { listDrafts } from "#services";
import { DraftTable } from "../draft-table";
import { listHref, type Query } from "../list-href";
import { openCall } from "./actions";

const w = words.call;
export const metadata: Metadata = { title: w.title };

export default async function CallsPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext("/shop/call");
  if (!permit(ctx.actor, "call.work").ok) notFound();
  const parsed = listDraftsQuery.safeParse(query);
  const drafts = await listDrafts(ctx, { state: "open", ...(parsed.success ? parsed.data : {}) });
  if (!drafts.ok) notFound();
  const { rows, total, page, pageSize, unreadable } = drafts.value;
  return (
    <Page wide title={w.title} lead={w.lead}>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-[minmax(0,24rem)_minmax(0,1fr)]">
        <Part title={w.open} id="open">
          <ActionForm
            action={openCall}
            fields={[
              { kind: "tel", name: "phone", label: w.phone, autoComplete: "off", isFirst: true },
              { kind: "text", name: "name", label: w.name, optional: true, autoComplete: "off" },
            ]}
            submit={w.openButton}
          />
        </Part>
        <Part title={w.drafts} id="drafts">
          <form className="mb-3 flex flex-wrap items-end gap-2">
            <div>
              <label htmlFor="draft-text" className="mb-1 block font-medium">
                {w.find}
              </label>
              <input id="draft-text" name="text" defaultValue={query.text ?? ""} className={`${controlClass} w-72`} />
            </div>
            <Button type="submit">{words.frame.find}</Button>
          </form>
          <DraftTable rows={rows} caption={w.drafts} empty={<Empty title={w.noDrafts}>{w.noDraftsHint}</Empty>} />
          <UnreadableLine rows={unreadable} />
          <Paging
            page={page}
            pageCount={Math.ceil(total / pageSize)}
            href={(to) => listHref("/shop/call", query, { page: String(to) })}
          />
        </Part>
      </div>
    </Page>
  );
}
