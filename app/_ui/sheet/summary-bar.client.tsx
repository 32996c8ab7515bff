"use client";
/** Price and date, always in sight, and what the last change did to them. */
import { useEffect, useRef, useState } from "react";
import type { DateRange } from "#services/views";
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

/** What the last change did to price and date, until the next one. The date follows a moment after the price. */
function useLastChange(totalCents: number | null, range: DateRange | null, words: SheetWords): string {
  const [price, setPrice] = useState("");
  const [date, setDate] = useState("");
  const lastTotal = useRef<number | null>(null);
  const lastRange = useRef<DateRange | null>(null);
  useEffect(() => {
    if (totalCents === null) return;
    if (lastTotal.current !== null && lastTotal.current !== totalCents) {
      setPrice(moneyChangeText(totalCents - lastTotal.current));
      setDate("");
    }
    lastTotal.current = totalCents;
  }, [totalCents]);
  useEffect(() => {
    if (range === null) return;
    if (lastRange.current !== null && lastRange.current !== range) {
      setDate(dateChangeText(lastRange.current.p90, range.p90, words));
    }
    lastRange.current = range;
  }, [range, words]);
  if (price === "" && (date === "" || date === words.change.sameDate)) return "";
  return [price || words.change.samePrice, date].filter(Boolean).join(", ");
}

export function SummaryBar({
  sheet,
  words,
  dateRange: range = sheet.dateRange,
  children,
}: {
  readonly sheet: SheetState;
  readonly words: SheetWords;
  readonly dateRange?: DateRange | null;
  /** The one primary action, when there is one. */
  readonly children?: React.ReactNode;
}) {
  const price = sheet.assessment.price;
  const change = useLastChange(price?.totalCents ?? null, range, words);
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
        <p role="status" className="min-w-0 text-sm max-sm:basis-full sm:flex-1">
          {change ? <span className="mr-3 font-medium text-larch">{change}</span> : null}
          <span className="text-pencil">
            {sheet.save === "arriving" ? <noscript>{words.save.noScripts}</noscript> : words.save[sheet.save]}
          </span>
        </p>
        {children}
      </div>
    </aside>
  );
}
