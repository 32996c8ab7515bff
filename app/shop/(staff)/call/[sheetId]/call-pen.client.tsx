"use client";
/** Who has the draft, as it is this very moment; the way to take it, to take it back or to put it down; or why it is closed. */
import { useState } from "react";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { useSheetAround } from "#app/_ui/sheet/sheet-context.client.ts";
import { fill } from "#app/_ui/words.ts";
import type { SheetView } from "#services/views";
import { changedCopy, putDown, takeOver } from "../actions";
import type { CallWords } from "./words";

/** Somebody else works on it. */
export function isTheirs({ state, lease }: SheetView): boolean {
  return state === "open" && lease !== null && !lease.isMine;
}

export function CallPen({ words: w }: { readonly words: CallWords }) {
  const { view } = useSheetAround().sheet;
  const { lease } = view;
  const [wasMine, setWasMine] = useState(lease?.isMine ?? false);
  if (lease?.isMine && !wasMine) setWasMine(true);
  const id = [{ kind: "hidden", name: "sheetId", value: view.sheetId }] as const;
  if (view.state !== "open") {
    return (
      <Notice tone="info" title={fill(w.closed[view.state], { reason: view.turnedDown ?? "" })}>
        <p className="flex flex-wrap gap-4">
          {view.quotes.map((quote) => (
            <a key={quote.quoteId} href={`/shop/quotes/${quote.quoteId}`}>
              {quote.number}
            </a>
          ))}
        </p>
        <ActionForm action={changedCopy} idPrefix="copy-" tone="plain" size="small" fields={id} submit={w.copy} />
      </Notice>
    );
  }
  if (lease !== null && isTheirs(view)) {
    return (
      <Notice tone="amber" live="polite" title={fill(wasMine ? w.taken : w.lease, { holder: lease.holder })}>
        <p>{wasMine ? w.takenText : w.leaseText}</p>
        <p>{w.readOnly}</p>
        <ActionForm
          action={takeOver}
          idPrefix="take-"
          size="small"
          fields={id}
          submit={wasMine ? w.takeBack : w.takeOver}
        />
      </Notice>
    );
  }
  return (
    <div className="flex flex-wrap items-baseline gap-x-4 text-sm text-pencil">
      {lease ? <p>{w.mine}</p> : null}
      {lease ? (
        <ActionForm action={putDown} idPrefix="put-" tone="plain" size="small" fields={id} submit={w.putDown} />
      ) : (
        <ActionForm action={takeOver} idPrefix="take-" tone="plain" size="small" fields={id} submit={w.takeOver} />
      )}
    </div>
  );
}
