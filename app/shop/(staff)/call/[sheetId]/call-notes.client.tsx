"use client";
/** What the desk writes beside the sheet: reasons against flags, and notes of the call. */
import { useState } from "react";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button } from "#app/_ui/button.tsx";
import { TextAreaField } from "#app/_ui/field.tsx";
import { Badge, Notice, type Tone } from "#app/_ui/notice.tsx";
import type { SheetActions } from "#app/_ui/sheet/use-sheet.client.ts";
import { fill } from "#app/_ui/words.ts";
import type { FitFlag } from "#engine/fit";
import type { FlagAck, SheetId, SheetView } from "#services/views";
import { answerForFlag, quoteAllTheSame } from "../actions";
import type { CallWords } from "./words";

const tones: Readonly<Record<FitFlag["blocks"], Tone>> = { sale: "iron", build: "amber", nothing: "info" };

export function CallFlags({
  flags,
  liftable,
  acks,
  sheetId,
  words,
  isOwner,
}: {
  readonly flags: readonly FitFlag[];
  readonly liftable: readonly string[];
  readonly acks: readonly FlagAck[];
  readonly sheetId: SheetId;
  readonly words: CallWords;
  readonly isOwner: boolean;
}) {
  const isStopped = liftable.some((code) => !acks.some((ack) => ack.code === code && ack.byOwner));
  return (
    <section aria-labelledby="flags-title" className="grid gap-3">
      <h2 id="flags-title" className="text-lg">
        {words.flags}
      </h2>
      {flags.length === 0 ? <p className="text-pencil">{words.noFlags}</p> : null}
      {flags.map((flag) => {
        const ack = acks.find((each) => each.code === flag.code);
        const needsOwner = flag.blocks === "sale" && !ack?.byOwner;
        return (
          <div key={flag.code} className="grid gap-2 border-l-2 border-rule pl-4">
            <p className="flex flex-wrap items-baseline gap-3">
              <Badge tone={tones[flag.blocks]}>{words.flagBlocks[flag.blocks]}</Badge>
              <span>{flag.message}</span>
            </p>
            {ack ? <p>{fill(words.acked, { by: ack.by, reason: ack.reason })}</p> : null}
            {needsOwner && !isOwner ? <p className="text-sm text-pencil">{words.ackOwner}</p> : null}
            {ack === undefined && !(needsOwner && isOwner) ? (
              <ActionForm
                action={answerForFlag}
                idPrefix={`ack-${flag.code}-`}
                tone="plain"
                size="small"
                fields={[
                  { kind: "hidden", name: "sheetId", value: sheetId },
                  { kind: "hidden", name: "code", value: flag.code },
                  { kind: "text", name: "reason", label: words.ackReason, autoComplete: "off" },
                ]}
                submit={words.ackButton}
              />
            ) : null}
          </div>
        );
      })}
      {isOwner && isStopped ? <AllowSale sheetId={sheetId} words={words} /> : null}
    </section>
  );
}

/** An owner's word against everything that stops the sale now; the quote is then made like any other. */
function AllowSale({ sheetId, words }: { readonly sheetId: SheetId; readonly words: CallWords }) {
  return (
    <div className="grid max-w-measure gap-2 border border-rule bg-sheet p-4">
      <h3 className="font-semibold">{words.allow}</h3>
      <p className="text-pencil">{words.allowLead}</p>
      <ActionForm
        action={quoteAllTheSame}
        idPrefix="allow-"
        fields={[
          { kind: "hidden", name: "sheetId", value: sheetId },
          { kind: "textarea", name: "reason", label: words.allowReason },
        ]}
        submit={words.allowButton}
      />
    </div>
  );
}

export function CallNotes({
  view,
  words,
  save,
}: {
  readonly view: SheetView;
  readonly words: CallWords;
  readonly save: SheetActions["save"];
}) {
  const [notes, setNotes] = useState(view.notes ?? "");
  const [answer, setAnswer] = useState<{ readonly ok: boolean; readonly message: string } | null>(null);
  const keep = async () => {
    const reply = await save({ notes: notes.trim() || null }, view.version).catch(() => null);
    const conflict = reply?.ok ? reply.conflicts[0] : undefined;
    if (reply?.ok && !conflict) setAnswer({ ok: true, message: words.notesDone });
    else setAnswer({ ok: false, message: reply?.ok ? String(conflict?.theirs ?? "") : (reply?.message ?? "") });
  };
  return (
    <section aria-labelledby="notes-title" className="grid max-w-measure gap-3">
      <h2 id="notes-title" className="sr-only">
        {words.notes}
      </h2>
      <TextAreaField
        id="call-notes"
        name="notes"
        label={words.notes}
        hint={words.notesHint}
        value={notes}
        error={answer && !answer.ok ? answer.message : undefined}
        onChange={(event) => setNotes(event.target.value)}
      />
      <p>
        <Button onClick={keep}>{words.notesSave}</Button>
      </p>
      {answer?.ok ? <Notice tone="moss" title={answer.message} live="polite" /> : null}
    </section>
  );
}
