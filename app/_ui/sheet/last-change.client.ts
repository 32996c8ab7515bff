"use client";
/** What the last change did to stiffness, mass, price and date, until the next one. The date follows a moment after the rest. */
import { useEffect, useRef, useState } from "react";
import { roundForPeople, textForPeople } from "#engine/units";
import { moneyChangeText } from "../money";
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

/** What is compared; each as the sheet shows it. */
interface Standing {
  readonly choice: string;
  /** Before tax, as beside every option. */
  readonly exTaxCents: number;
  readonly springNPerMm: number;
  readonly massG: number;
}

/** All of it from one assessment: what was chosen this very moment is not weighed and priced yet. */
function standingOf({ assessment }: SheetState): Standing | null {
  const { spec, price, flex, finishedFlex } = assessment;
  if (!spec || !price || !flex || !finishedFlex) return null;
  return {
    choice: `${price.destination} ${JSON.stringify(spec)}`,
    exTaxCents: price.exTaxCents + price.shippingCents,
    springNPerMm: flex.springCentreNPerMm,
    massG: finishedFlex.massKg * 1000,
  };
}

function partsOf(before: Standing, after: Standing, words: SheetWords): readonly string[] {
  const w = words.change;
  const percent = roundForPeople((after.springNPerMm / before.springNPerMm - 1) * 100);
  const grams = roundForPeople(after.massG - before.massG);
  const signed = (value: number) => `${value > 0 ? "+" : "−"}${textForPeople(Math.abs(value), 0)}`;
  const cents = after.exTaxCents - before.exTaxCents;
  return [
    percent === 0 ? w.sameStiffness : fill(w.stiffness, { percent: signed(percent) }),
    grams === 0 ? w.sameMass : fill(w.mass, { grams: signed(grams) }),
    cents === 0 ? w.samePrice : fill(w.price, { money: moneyChangeText(cents) }),
  ];
}

/** Empty until something changed; then stiffness, mass, price before tax and, once the shop has worked it out, the date. */
export function useLastChange(sheet: SheetState, words: SheetWords): string {
  const now = standingOf(sheet);
  const range = sheet.dateRange;
  const last = useRef<Standing | null>(null);
  const lastRange = useRef(range);
  const [parts, setParts] = useState<readonly string[]>([]);
  const [date, setDate] = useState("");
  useEffect(() => {
    if (now === null) return;
    const before = last.current;
    last.current = now;
    if (before === null || before.choice === now.choice) return;
    setParts(partsOf(before, now, words));
    setDate("");
  }, [now?.choice, now, words]);
  useEffect(() => {
    if (range === null) return;
    if (lastRange.current !== null && lastRange.current !== range) {
      setDate(dateChangeText(lastRange.current.p90, range.p90, words));
    }
    lastRange.current = range;
  }, [range, words]);
  if (parts.length === 0) return date === words.change.sameDate ? "" : date;
  return [...parts, date].filter(Boolean).join(", ");
}
