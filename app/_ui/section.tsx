/**
 * One section of the sheet. Closed, it shows its answer in one line; open, it shows the fields in place. A native
 * disclosure, so it works by keyboard and without JavaScript, and the browser's page search opens it.
 */
import type { ReactNode } from "react";

export interface SheetSectionProps {
  readonly id: string;
  readonly title: string;
  /** The answer in one line, shown beside the title. */
  readonly answer: ReactNode;
  /** "done" and "attention" carry a sign as well as a colour. */
  readonly state?: "todo" | "done" | "attention";
  readonly open?: boolean;
  readonly onToggle?: (open: boolean) => void;
  readonly children: ReactNode;
}

const signs = {
  todo: { sign: "○", word: "to do", colour: "text-pencil" },
  done: { sign: "✓", word: "answered", colour: "text-moss" },
  attention: { sign: "!", word: "needs a word", colour: "text-iron font-bold" },
} as const;

export function SheetSection({ id, title, answer, state = "todo", open, onToggle, children }: SheetSectionProps) {
  const mark = signs[state];
  return (
    <details
      id={id}
      open={open}
      onToggle={onToggle ? (event) => onToggle(event.currentTarget.open) : undefined}
      className="border-t border-rule last-of-type:border-b"
    >
      <summary className="chevron flex min-h-14 flex-wrap items-baseline gap-x-3 py-3 hover:bg-sheet">
        <span className={`w-4 flex-none text-center ${mark.colour}`} aria-hidden="true">
          {mark.sign}
        </span>
        <h2 className="flex-none text-lg max-sm:flex-1 sm:w-36">
          {title}
          <span className="sr-only">, {mark.word}</span>
        </h2>
        <span className="min-w-0 flex-1 text-pencil max-sm:basis-full max-sm:pl-11">{answer}</span>
      </summary>
      <div className="grid grid-cols-1 gap-6 pt-2 pb-8 sm:pl-11 in-data-dense:gap-4 in-data-dense:pb-4 in-data-dense:sm:pl-0">
        {children}
      </div>
    </details>
  );
}

/** A small disclosure inside a section: reasons, a table, an explanation. */
export function More({
  summary,
  children,
  open,
}: {
  readonly summary: ReactNode;
  readonly children: ReactNode;
  readonly open?: boolean;
}) {
  return (
    <details open={open} className="min-w-0">
      <summary className="chevron inline-flex min-h-9 items-center gap-2 text-tarn underline decoration-1 underline-offset-4">
        {summary}
      </summary>
      <div className="pt-2 pb-3">{children}</div>
    </details>
  );
}
