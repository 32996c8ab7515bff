"use client";
/** What the desk writes beside the sheet: reasons against flags, and notes of the call. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { TextAreaField } from "#app/_ui/field.tsx";
import { Badge, type Tone } from "#app/_ui/notice.tsx";
import { Beside } from "#app/_ui/sheet/beside.client.tsx";
import { useSheetAround } from "#app/_ui/sheet/sheet-context.client.ts";
import { fill } from "#app/_ui/words.ts";
import type { FitFlag } from "#engine/fit";
import type { FlagAck, SheetId } from "#services/views";
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

/** Saved like every other field. */
export function CallNotes({ words }: { readonly words: CallWords }) {
  const { sheet } = useSheetAround();
  return (
    <section aria-labelledby="notes-title" className="grid max-w-measure gap-3">
      <h2 id="notes-title" className="sr-only">
        {words.notes}
      </h2>
      <Beside paths={["notes"]}>
        <TextAreaField
          id="call-notes"
          name="notes"
          label={words.notes}
          hint={words.notesHint}
          value={sheet.notes ?? ""}
          error={sheet.errors.notes}
          onChange={(event) => sheet.setField("notes", event.target.value || null)}
        />
      </Beside>
    </section>
  );
}
