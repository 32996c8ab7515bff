"use client";
/** Price and date, always in sight, and what the last change did to them. */
import { useEffect, useRef, useState } from "react";
import { dateRangeText } from "../date-range";
import { moneyChangeText, moneyText } from "../money";
import { fill } from "../words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

const dayMs = 86_400_000;

/** "same week", "3 days later": the later date of the range decides. */
function dateChangeText(before: string, after: string, words: SheetWords): string {
  const days = Math.round((Date.parse(after) - Date.parse(before)) / dayMs);
  if (days === 0) return words.change.sameDate;
  // ISO weeks begin on Monday; 1970-01-05 was one.
  const week = (iso: string) => Math.floor((Date.parse(iso) / dayMs - 4) / 7);
  if (week(before) === week(after)) return words.change.sameWeek;
  return fill(days > 0 ? words.change.later : words.change.earlier, { days: Math.abs(days) });
}

/** What the last change of the sheet did to a value, until the next one. */
function useChange<T>(value: T | null, text: (before: T, after: T) => string): string {
  const [change, setChange] = useState("");
  const last = useRef<T | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new value makes a change
  useEffect(() => {
    if (value !== null && last.current !== null) setChange(text(last.current, value));
    if (value !== null) last.current = value;
  }, [value]);
  return change;
}

export function SummaryBar({
  sheet,
  words,
  children,
}: {
  readonly sheet: SheetState;
  readonly words: SheetWords;
  /** The one primary action, when there is one. */
  readonly children?: React.ReactNode;
}) {
  const price = sheet.assessment.price;
  const range = sheet.dateRange;
  const priceChange = useChange(price?.totalCents ?? null, (before: number, after: number) =>
    after === before ? words.change.samePrice : moneyChangeText(after - before),
  );
  const dateChange = useChange(range?.p90 ?? null, (before: string, after: string) =>
    dateChangeText(before, after, words),
  );
  const change = [priceChange, dateChange].filter(Boolean).join(", ");
  return (
    <aside
      aria-label={`${words.sections.price}, ${words.sections.date.toLowerCase()}`}
      className="no-print sticky bottom-0 z-10 border-t border-ink bg-paper"
    >
      <div className="mx-auto flex max-w-page flex-wrap items-center gap-x-8 gap-y-1 px-4 py-2 sm:px-6">
        <p className="flex items-baseline gap-2">
          <span className="text-sm text-pencil max-sm:sr-only">{words.sections.price}</span>
          <output className={`text-lg font-medium ${sheet.isComputing ? "opacity-60" : ""}`}>
            {price ? moneyText(price.totalCents) : "—"}
          </output>
        </p>
        <p className="flex items-baseline gap-2">
          <span className="text-sm text-pencil max-sm:sr-only">{words.sections.date}</span>
          <output className="text-base">{range ? dateRangeText(range.p50, range.p90) : "—"}</output>
        </p>
        <p role="status" className="min-w-0 flex-1 text-sm">
          {change ? <span className="text-larch">{change}</span> : null}
          <span className="ml-3 text-pencil">
            {sheet.save === "saved"
              ? words.save.saved
              : sheet.save === "saving"
                ? words.save.saving
                : words.save.waiting}
          </span>
        </p>
        {children}
      </div>
    </aside>
  );
}
