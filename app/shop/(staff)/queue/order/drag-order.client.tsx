"use client";
/** Makes the rows of the order draggable: dropping one opens the same preview as the buttons do. */
import { useRouter } from "next/navigation";
import { useEffect, useRef } from "react";

const pairOf = (row: Element | null | undefined) => row?.querySelector<HTMLElement>("[data-pair]")?.dataset.pair;

export function DragOrder({
  hint,
  behind,
}: {
  readonly hint: string;
  /** The pair that stands behind the last row, "" where none does. */
  readonly behind: string;
}) {
  const router = useRouter();
  const place = useRef<HTMLParagraphElement>(null);
  const dragged = useRef<string | undefined>(undefined);
  // After every drawing: the page is read again while it is open, and its rows change.
  useEffect(() => {
    const body = place.current?.parentElement?.querySelector("tbody");
    if (!body) return;
    const stop = new AbortController();
    const { signal } = stop;
    for (const row of body.rows) {
      const isMovable = row.querySelector<HTMLElement>("[data-pair]")?.dataset.movable === "yes";
      row.draggable = isMovable;
      row.style.cursor = isMovable ? "grab" : "";
    }
    const rowOf = (event: DragEvent) => (event.target as Element).closest("tr");
    /** The row to stand before; undefined behind the last. */
    const target = (event: DragEvent): HTMLTableRowElement | undefined => {
      const row = rowOf(event);
      if (row === null) return undefined;
      const { top, height } = row.getBoundingClientRect();
      const index = row.sectionRowIndex + (event.clientY > top + height / 2 ? 1 : 0);
      return body.rows[index];
    };
    const mark = (event: DragEvent | null) => {
      const before = event === null ? undefined : target(event);
      const last = event !== null && before === undefined ? body.rows[body.rows.length - 1] : undefined;
      for (const row of body.rows) {
        row.style.boxShadow =
          row === before ? "inset 0 2px 0 var(--larch)" : row === last ? "inset 0 -2px 0 var(--larch)" : "";
      }
    };
    const on = <K extends "dragstart" | "dragover" | "drop" | "dragend">(name: K, act: (event: DragEvent) => void) =>
      body.addEventListener(name, act, { signal });
    on("dragstart", (event) => {
      dragged.current = pairOf(rowOf(event));
      document.body.dataset.dragging = "";
      event.dataTransfer?.setData("text/plain", dragged.current ?? "");
    });
    on("dragover", (event) => {
      if (dragged.current === undefined) return;
      event.preventDefault();
      mark(event);
    });
    on("drop", (event) => {
      event.preventDefault();
      const before = pairOf(target(event)) ?? behind;
      mark(null);
      if (dragged.current === undefined || before === dragged.current) return;
      router.push(`/shop/queue/order?move=${dragged.current}&before=${before}`);
    });
    on("dragend", () => {
      dragged.current = undefined;
      delete document.body.dataset.dragging;
      mark(null);
    });
    return () => stop.abort();
  });
  return (
    <p ref={place} className="mt-2 text-sm text-pencil max-md:hidden">
      {hint}
    </p>
  );
}
