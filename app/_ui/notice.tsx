/** A message that stands out: always a word and a sign with the colour, so that it reads in black and white. */
import type { ReactNode } from "react";
import { arrival } from "./arrival";
import { cx } from "./cx";

export type Tone = "info" | "moss" | "amber" | "iron";

const tones: Readonly<Record<Tone, { sign: string; word: string; text: string; edge: string }>> = {
  info: { sign: "i", word: "Note", text: "text-tarn", edge: "border-tarn" },
  moss: { sign: "✓", word: "Good", text: "text-moss", edge: "border-moss" },
  amber: { sign: "!", word: "Careful", text: "text-amber", edge: "border-amber" },
  iron: { sign: "✕", word: "Stop", text: "text-iron", edge: "border-iron" },
};

export interface NoticeProps {
  readonly tone: Tone;
  /** Replaces the tone's own word: "Check your weight". */
  readonly title?: ReactNode;
  readonly children?: ReactNode;
  /** Read out at once (an error after an action) or when the reader gets there. */
  readonly live?: "assertive" | "polite";
  /** Reading goes on here when the page arrives with it, with scripts or without. */
  readonly takesFocus?: boolean;
  readonly id?: string;
}

export function Notice({ tone, title, children, live, takesFocus, id }: NoticeProps) {
  const { sign, word, text, edge } = tones[tone];
  return (
    <div
      id={id}
      role={live === "assertive" ? "alert" : live === "polite" ? "status" : undefined}
      {...(takesFocus ? arrival : {})}
      className={cx("flex gap-3 border-l-4 bg-sheet px-4 py-3", edge)}
    >
      <span aria-hidden="true" className={cx("w-4 flex-none text-center font-mono font-bold", text)}>
        {sign}
      </span>
      <div className="min-w-0 flex-1">
        <p className={cx("font-semibold", text)}>{title ?? word}</p>
        {children ? <div className="mt-1 grid gap-2">{children}</div> : null}
      </div>
    </div>
  );
}

/** A state in one word with its sign: "✓ on time". */
export function Badge({ tone, children }: { readonly tone: Tone; readonly children: ReactNode }) {
  const { sign, text } = tones[tone];
  return (
    <span
      className={cx("inline-flex items-baseline gap-1 border border-current px-1.5 text-sm whitespace-nowrap", text)}
    >
      <span aria-hidden="true" className="font-mono">
        {sign}
      </span>
      {children}
    </span>
  );
}
