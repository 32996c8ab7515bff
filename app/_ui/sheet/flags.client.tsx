"use client";
/** What makes a person stop: flags of the fit, options that clash, and the way to a human. Never clamped away. */
import { useState } from "react";
import type { Conflict } from "#engine/assessment";
import type { FitFlag } from "#engine/fit";
import { Button } from "../button";
import { TextAreaField, TextField } from "../field";
import { moneyChangeText } from "../money";
import { Notice, type Tone } from "../notice";
import { signedText } from "../signed";
import { fill } from "../words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

/** Flags that hold for the skier or for the model on the sheet; those of other models say nothing here. */
export function flagsThatHold(sheet: SheetState): readonly FitFlag[] {
  const flags = sheet.assessment.recommendation?.flags ?? [];
  const model = sheet.assessment.spec?.model;
  return flags.filter((flag) => flag.model === undefined || flag.model === model);
}

const toneOf: Readonly<Record<FitFlag["blocks"], Tone>> = { sale: "iron", build: "amber", nothing: "amber" };

export function Flags({
  sheet,
  words,
  staff,
}: {
  readonly sheet: SheetState;
  readonly words: SheetWords;
  /** Staff see what to say; the skier sees what it means. */
  readonly staff?: boolean | undefined;
}) {
  const title = { sale: words.flags.stop, build: words.flags.build, nothing: words.flags.careful };
  const flags = flagsThatHold(sheet);
  if (flags.length === 0) return null;
  return (
    <div className="grid gap-3">
      {flags.map((flag) => (
        <Notice key={flag.code} tone={toneOf[flag.blocks]} title={title[flag.blocks]} live="polite">
          <p>{flag.message}</p>
          {staff ? <p className="border-l-2 border-control pl-3 italic">{flag.script}</p> : null}
          {flag.suggestion ? <Suggestion flag={flag} sheet={sheet} /> : null}
        </Notice>
      ))}
    </div>
  );
}

function Suggestion({ flag, sheet }: { readonly flag: FitFlag; readonly sheet: SheetState }) {
  const suggestion = flag.suggestion;
  if (!suggestion) return null;
  const take = () => {
    if (suggestion.typed?.height) sheet.setTyped("height", suggestion.typed.height);
    if (suggestion.typed?.mass) sheet.setTyped("mass", suggestion.typed.mass);
    if (!suggestion.typed) {
      const key = suggestion.path.replace(/^answers\./, "") as keyof SheetState["answers"];
      sheet.setAnswer(key, suggestion.value as never);
    }
  };
  return (
    <p>
      <Button onClick={take}>{suggestion.label}</Button>
    </p>
  );
}

/** Options that clash, each with its ways out and what a way changes. */
export function Conflicts({
  conflicts,
  sheet,
  words,
  text,
  tone,
}: {
  readonly conflicts: readonly Conflict[];
  readonly sheet: SheetState;
  readonly words: SheetWords;
  /** A refusal in words. */
  readonly text: (conflict: Conflict) => string;
  readonly tone: Tone;
}) {
  return (
    <>
      {conflicts.map((conflict) => (
        <Notice
          key={`${conflict.code} ${conflict.path ?? ""}`}
          tone={tone}
          title={tone === "iron" ? words.flags.conflict : words.flags.careful}
          live="polite"
        >
          <p>{text(conflict)}</p>
          {conflict.ways.length > 0 ? (
            <ul className="grid gap-2">
              {conflict.ways.map((way) => (
                <li key={`${way.code} ${way.label}`} className="flex flex-wrap items-baseline gap-x-4 gap-y-1">
                  {Object.keys(way.choices).length > 0 ? (
                    <Button size="small" onClick={() => sheet.setChoices(way.choices)}>
                      {way.label}
                    </Button>
                  ) : (
                    <span>{way.label}</span>
                  )}
                  {way.effect ? (
                    <span className="measure text-sm text-pencil">
                      {moneyChangeText(way.effect.priceCents)}, {signedText(way.effect.massG)} g a pair,{" "}
                      {signedText(way.effect.stiffnessPercent)} % stiffness
                    </span>
                  ) : null}
                </li>
              ))}
            </ul>
          ) : null}
        </Notice>
      ))}
    </>
  );
}

/** Leaves a number with the owner. Everything typed stays; nothing is promised. */
export function AskPerson({
  sheet,
  words,
  ask,
  title,
}: {
  readonly sheet: SheetState;
  readonly words: SheetWords;
  readonly title: string;
  readonly ask: (note: string) => Promise<{ readonly ok: boolean; readonly message?: string }>;
}) {
  const [note, setNote] = useState("");
  const [answer, setAnswer] = useState<{ readonly ok: boolean; readonly message: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const { phone = "", email = "" } = sheet.contact;
  const told =
    phone || !email ? fill(words.flags.callSent, { phone: phone || "you" }) : fill(words.flags.mailSent, { email });
  const send = async () => {
    setBusy(true);
    await sheet.flush();
    const reply = await ask(note.trim() || words.flags.callDefault).catch(() => ({
      ok: false,
      message: words.save.waiting,
    }));
    setBusy(false);
    setAnswer({ ok: reply.ok, message: reply.ok ? told : (reply.message ?? "") });
  };
  if (sheet.view.review && !answer) {
    return <Notice tone="moss" title={told} />;
  }
  return (
    <section aria-label={title} className="grid max-w-measure gap-4 border border-rule bg-sheet p-4">
      <div>
        <h3 className="font-semibold">{title}</h3>
        <p className="text-pencil">{words.flags.callLead}</p>
      </div>
      <TextField
        id="ask-name"
        name="name"
        label={words.price.name}
        autoComplete="name"
        value={sheet.contact.name ?? ""}
        onChange={(event) => sheet.setContact("name", event.target.value || undefined)}
      />
      <TextField
        id="ask-phone"
        name="phone"
        type="tel"
        label={words.price.phone}
        autoComplete="tel"
        value={phone}
        error={sheet.errors["contact.phone"]}
        onChange={(event) => sheet.setContact("phone", event.target.value || undefined)}
      />
      <TextField
        id="ask-email"
        name="email"
        type="email"
        label={words.price.email}
        hint={words.flags.mailHint}
        autoComplete="email"
        value={email}
        error={sheet.errors["contact.email"]}
        onChange={(event) => sheet.setContact("email", event.target.value || undefined)}
      />
      <TextAreaField
        id="ask-note"
        name="note"
        label={words.flags.callNote}
        optional
        value={note}
        onChange={(event) => setNote(event.target.value)}
      />
      <p>
        <Button tone="primary" aria-disabled={busy} onClick={send}>
          {words.flags.callSend}
        </Button>
      </p>
      {answer ? <Notice tone={answer.ok ? "moss" : "iron"} title={answer.message} live="polite" /> : null}
    </section>
  );
}

export function stopsSale(sheet: SheetState): boolean {
  return flagsThatHold(sheet).some((flag) => flag.blocks === "sale");
}
