/** What the floor took against what dates are made with, and the book that would follow from it. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/learning.json";
import { type FloorLearningView, readFloorLearning } from "#services";
import { approve } from "./actions";
import { Paces } from "./paces";
import { BooksTable, LeftOutTable, StationsTable, WrongTable } from "./tables";

const w = words.floor;
export const metadata: Metadata = { title: w.title };

export default async function FloorTimesPage() {
  const ctx = await staffContext("/shop/floor-times");
  const read = await readFloorLearning(ctx);
  if (!read.ok) notFound();
  const view = read.value;
  return (
    <Page wide title={w.title} lead={w.lead}>
      <State view={view} />
      <Part title={w.stations} id="stations">
        <p className="mb-3 max-w-measure text-pencil">{w.stationsNote}</p>
        <Paces view={view} />
        <StationsTable view={view} />
      </Part>
      <Part title={w.wrong} id="wrong">
        <p className="mb-3 max-w-measure text-pencil">{w.wrongNote}</p>
        <WrongTable view={view} />
      </Part>
      <Part title={w.leftOutTitle} id="left-out">
        <p className="mb-3 max-w-measure text-pencil">{w.leftOutNote}</p>
        <LeftOutTable view={view} />
      </Part>
      <Part title={fill(w.approveTitle, { version: view.learning.proposal.version })} id="approve">
        <Approve view={view} mayApprove={permit(ctx.actor, "learning.approve").ok} />
      </Part>
      <Part title={w.books} id="books">
        <BooksTable view={view} />
      </Part>
    </Page>
  );
}

function State({ view: { learning, leastPairs, books } }: { readonly view: FloorLearningView }) {
  const { workingDays, fromDate, toDate, pairs } = learning;
  const [book] = books;
  return (
    <div className="mb-8 grid max-w-measure gap-2">
      <p className="text-lg">
        {fill(w.state, { workingDays, from: dayText(fromDate), to: dayText(toDate), pairs, least: leastPairs })}
      </p>
      <p>
        {book === undefined
          ? w.noBook
          : fill(w.inForce, {
              version: book.version,
              at: clock(book.effectiveAt),
              by: book.approvedBy,
              reason: book.reason,
            })}
      </p>
    </div>
  );
}

function Approve({ view, mayApprove }: { readonly view: FloorLearningView; readonly mayApprove: boolean }) {
  const { learning, leastPairs, fingerprint } = view;
  const { version } = learning.proposal;
  return (
    <div className="grid max-w-measure gap-4">
      <p>{w.approveEffect}</p>
      {learning.enoughPairs ? null : (
        <Notice tone="amber" title={fill(w.approveWait, { pairs: learning.pairs, least: leastPairs })} />
      )}
      {mayApprove ? (
        <ActionForm
          action={approve}
          idPrefix="approve-floor-"
          fields={[
            { kind: "hidden", name: "fingerprint", value: fingerprint },
            { kind: "text", name: "reason", label: w.approveReason, hint: w.approveReasonHint, autoComplete: "off" },
          ]}
          submit={fill(w.approveButton, { version })}
          busy={w.approving}
        />
      ) : (
        <p className="text-sm text-pencil">{w.approveOwner}</p>
      )}
    </div>
  );
}
