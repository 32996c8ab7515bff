/** The three ends of a call besides the quote: call back, before the owner, turned down. */
import type { ReactNode } from "react";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/shop.json";
import type { SheetView } from "#services";
import { beforeOwner, callBackLater, turnCallerDown } from "../actions";

const w = words.call;

export function CallOutcomes({
  sheet,
  link,
  answersLink,
}: {
  readonly sheet: SheetView;
  readonly link: ReactNode;
  readonly answersLink: ReactNode;
}) {
  const id = { kind: "hidden", name: "sheetId", value: sheet.sheetId } as const;
  const { callBack, review } = sheet;
  return (
    <section id="end" aria-labelledby="end-title" className="grid gap-6 border-t border-ink pt-6">
      <div>
        <h2 id="end-title" className="text-xl">
          {w.end}
        </h2>
        <p className="text-pencil">{w.quoteHint}</p>
      </div>
      {callBack ? (
        <Notice
          tone="info"
          title={fill(w.callBackSet, { at: clock(callBack.at), phone: callBack.phone, reason: callBack.reason })}
        />
      ) : null}
      {review ? (
        <Notice tone="amber" title={fill(w.reviewAsked, { at: clock(review.askedAt), note: review.note })} />
      ) : null}
      <div className="grid gap-x-12 gap-y-4 *:min-w-0 lg:grid-cols-2">
        <More summary={w.callBack}>
          <ActionForm
            action={callBackLater}
            idPrefix="back-"
            fields={[
              id,
              { kind: "datetime-local", name: "at", label: w.callBackAt },
              { kind: "text", name: "reason", label: w.callBackReason, autoComplete: "off" },
              {
                kind: "text",
                name: "phone",
                label: w.callBackPhone,
                value: sheet.contact.phone ?? sheet.contact.email ?? "",
                autoComplete: "off",
              },
            ]}
            submit={w.callBackButton}
          />
        </More>
        <More summary={w.review}>
          <ActionForm
            action={beforeOwner}
            idPrefix="review-"
            tone="plain"
            fields={[id, { kind: "textarea", name: "note", label: w.reviewNote }]}
            submit={w.reviewButton}
          />
        </More>
        <More summary={w.turnDown}>
          <ActionForm
            action={turnCallerDown}
            idPrefix="down-"
            tone="danger"
            fields={[id, { kind: "textarea", name: "reason", label: w.turnDownReason }]}
            submit={w.turnDownButton}
          />
        </More>
        <More summary={w.answersTitle}>
          <p className="mb-3 max-w-measure text-sm text-pencil">{w.answersLead}</p>
          {answersLink}
        </More>
        <More summary={w.link}>{link}</More>
      </div>
    </section>
  );
}
