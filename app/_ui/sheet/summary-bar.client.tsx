"use client";
/** What stays in sight: on a narrow screen the pair itself with its name, then price, date and what the last change did. */
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import type { DateRange } from "#services/views";
import { dateRangeText } from "../date-range";
import { moneyText } from "../money";
import { fill } from "../words";
import type { DrawnPair } from "./drawn-pair.client";
import { useLastChange } from "./last-change.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export interface SummaryBarProps {
  readonly sheet: SheetState;
  readonly words: SheetWords;
  /** Where the page knows a later one than the sheet; absent = the sheet's own. */
  readonly dateRange?: DateRange | null;
  readonly pair: DrawnPair | null;
  readonly pictureBase: string;
  /** Raises the standing figure over the page; absent where it stands beside the sheet at every width. */
  readonly onRaise?: (() => void) | undefined;
  /** The one primary action, when there is one. */
  readonly children?: React.ReactNode;
}

export function SummaryBar({
  sheet,
  words,
  dateRange: range = sheet.dateRange,
  pair,
  pictureBase,
  onRaise,
  children,
}: SummaryBarProps) {
  const { price } = sheet.assessment;
  const change = useLastChange(sheet, words);
  return (
    <aside
      aria-label={`${words.sections.price}, ${words.sections.date.toLowerCase()}`}
      className="no-print sticky bottom-0 z-10 border-t border-ink bg-paper"
    >
      <div className="mx-auto grid max-w-page gap-x-8 gap-y-1 px-4 py-2 sm:px-6">
        {pair && onRaise ? (
          <button
            type="button"
            onClick={onRaise}
            aria-label={fill("{show}: {title}", { show: words.stand.show, title: pair.title })}
            className="block w-full py-1 lg:hidden"
          >
            <SkiPair
              look={pair.look}
              pictureBase={pictureBase}
              orientation="lying"
              gapMm={10}
              className={`mx-auto w-full max-w-xl ${sheet.isComputing ? "opacity-60" : ""}`}
            />
          </button>
        ) : null}
        <div className="flex flex-wrap items-end gap-x-4 gap-y-1 sm:gap-x-6">
          {pair && onRaise ? (
            <p className="min-w-0 max-w-28 lg:hidden">
              <span className="block text-xs text-pencil">{words.sections.ski}</span>
              <span className="block text-sm font-medium">{pair.title}</span>
            </p>
          ) : null}
          <p>
            <span className="block text-xs text-pencil">{words.change.priceCaption}</span>
            <output className={`block text-sm font-medium sm:text-base ${sheet.isComputing ? "opacity-60" : ""}`}>
              {price ? moneyText(price.totalCents) : "—"}
            </output>
          </p>
          <p>
            <span className="block text-xs text-pencil">{words.change.dateCaption}</span>
            <output className="block text-sm">{range ? dateRangeText(range.p50, range.p90) : "—"}</output>
          </p>
          <p role="status" className="min-w-0 text-xs max-sm:basis-full sm:flex-1 sm:text-sm">
            {change ? <span className="mr-3 font-medium text-larch">{change}</span> : null}
            <span className="text-pencil">
              {sheet.save === "arriving" ? <noscript>{words.save.noScripts}</noscript> : words.save[sheet.save]}
            </span>
          </p>
          {children}
        </div>
      </div>
    </aside>
  );
}
