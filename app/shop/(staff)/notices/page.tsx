import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { ByAt, NumberLink } from "#app/shop/cells.tsx";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/breakdowns.json";
import { type LetterView, listNotices, listWaitingLetters, type NoticeView } from "#services";
import { again, drop, send } from "./actions";

const w = words.notices;
export const metadata: Metadata = { title: w.title };

export default async function NoticesPage() {
  const ctx = await staffContext("/shop/notices");
  const [read, letters] = await Promise.all([listNotices(ctx), listWaitingLetters(ctx)]);
  if (!read.ok || !letters.ok) notFound();
  const drafts = read.value.filter(({ state }) => state === "draft");
  const decided = read.value.filter(({ state }) => state !== "draft");
  return (
    <Page title={w.title} lead={w.lead}>
      <Part title={w.drafts} id="drafts">
        {drafts.length === 0 ? <p className="text-pencil">{w.noDrafts}</p> : null}
        <ul className="grid gap-8">
          {drafts.map((notice) => (
            <li key={notice.noticeId}>
              <Draft notice={notice} />
            </li>
          ))}
        </ul>
      </Part>
      {letters.value.length === 0 ? null : <UnderWay letters={letters.value} />}
      <Part title={w.decided} id="decided">
        <Table
          caption={w.decided}
          hideCaption
          stacks
          empty={<p className="text-pencil">{w.noneDecided}</p>}
          columns={[
            {
              key: "order",
              head: w.order,
              cell: (row) => <NumberLink href={`/shop/orders/${row.orderId}`} number={row.orderNumber} />,
            },
            { key: "kind", head: w.kind, cell: (row) => w.kinds[row.kind] },
            { key: "state", head: w.state, cell: stateWords },
            {
              key: "when",
              head: w.when,
              cell: (row) => (row.decided ? <ByAt {...row.decided} /> : null),
            },
            { key: "reason", head: w.reason, cell: (row) => row.decided?.reason ?? "–" },
          ]}
          rows={decided}
          rowKey={(row) => row.noticeId}
        />
      </Part>
    </Page>
  );
}

/** A person's word is one thing, what became of the letter another. */
function stateWords({ state, letter, byMail }: NoticeView): string {
  if (state !== "sent") return w.states[state];
  if (letter !== null) return w.sentStates[letter];
  return byMail ? w.states.sent : w.sentStates.told;
}

function UnderWay({ letters }: { readonly letters: readonly LetterView[] }) {
  return (
    <Part title={w.underWay} id="under-way">
      <p className="max-w-measure text-pencil">{w.underWayLead}</p>
      <Table
        caption={w.underWay}
        hideCaption
        stacks
        columns={[
          { key: "to", head: w.recipient, cell: (row) => row.recipient },
          { key: "heading", head: w.heading, cell: (row) => row.subject },
          { key: "state", head: w.state, cell: (row) => w.letterStates[row.state] },
          { key: "tries", head: w.tries, cell: (row) => row.tries },
          { key: "problem", head: w.problem, cell: (row) => row.problem ?? "–" },
          { key: "again", head: "", cell: (row) => (row.canBeSentAgain ? <Again letterId={row.letterId} /> : null) },
        ]}
        rows={letters}
        rowKey={(row) => row.letterId}
      />
    </Part>
  );
}

function Again({ letterId }: { readonly letterId: string }) {
  return (
    <ActionForm
      action={again}
      idPrefix={`again-${letterId}-`}
      tone="plain"
      fields={[{ kind: "hidden", name: "letterId", value: letterId }]}
      submit={w.again}
      busy={w.sending}
    />
  );
}

function Draft({ notice }: { readonly notice: NoticeView }) {
  const { noticeId, version } = notice;
  const title = `${w.kinds[notice.kind]}: ${fill(w.to, { order: notice.orderNumber, recipient: notice.recipient })}`;
  const hidden = [
    { kind: "hidden", name: "noticeId", value: noticeId },
    { kind: "hidden", name: "version", value: String(version) },
  ] as const;
  return (
    <article aria-label={title} className="grid max-w-measure gap-4 border-t border-rule pt-4">
      <h3 className="text-lg">
        <Link href={`/shop/orders/${notice.orderId}`}>{title}</Link>
      </h3>
      <p className="text-sm text-pencil">{fill(w.drafted, { at: clock(notice.draftedAt) })}</p>
      {notice.byMail ? null : <p className="text-sm text-pencil">{w.byHand}</p>}
      <ActionForm
        action={send}
        idPrefix={`send-${noticeId}-`}
        fields={[...hidden, { kind: "textarea", name: "body", label: w.body, value: notice.body, rows: 12 }]}
        submit={notice.byMail ? w.send : w.told}
        busy={w.sending}
      />
      <ActionForm
        action={drop}
        idPrefix={`drop-${noticeId}-`}
        tone="plain"
        fields={[...hidden, { kind: "text", name: "reason", label: w.dropReason }]}
        submit={w.drop}
      />
    </article>
  );
}
