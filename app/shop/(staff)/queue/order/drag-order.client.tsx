"use client";
/** Makes the rows of the order draggable: dropping one opens the same preview as the buttons do. */
import { useRouter } from "next/navigation";
import { useEffect, useRef } from "react";

const pairOf = (row: Element | null) => row?.querySelector<HTMLElement>("[data-pair]")?.dataset.pair;

export function DragOrder({ hint }: { readonly hint: string }) {
  const router = useRouter();
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    const body = place.current?.parentElement?.querySelector("tbody");
    if (!body) return;
    const stop = new AbortController();
    const { signal } = stop;
    let dragged: string | undefined;
    for (const row of body.rows) {
      if (row.querySelector<HTMLElement>("[data-pair]")?.dataset.movable !== "yes") continue;
      row.draggable = true;
      row.style.cursor = "grab";
    }
    const rowOf = (event: DragEvent) => (event.target as Element).closest("tr");
    const mark = (row: Element | null) => {
      for (const each of body.rows) each.style.boxShadow = each === row ? "inset 0 2px 0 var(--color-larch)" : "";
    };
    body.addEventListener(
      "dragstart",
      (event) => {
        dragged = pairOf(rowOf(event));
        event.dataTransfer?.setData("text/plain", dragged ?? "");
      },
      { signal },
    );
    body.addEventListener(
      "dragover",
      (event) => {
        if (dragged === undefined) return;
        event.preventDefault();
        mark(rowOf(event));
      },
      { signal },
    );
    body.addEventListener(
      "drop",
      (event) => {
        event.preventDefault();
        const before = pairOf(rowOf(event));
        mark(null);
        if (dragged === undefined || before === undefined || before === dragged) return;
        router.push(`/shop/queue/order?move=${dragged}&before=${before}`);
      },
      { signal },
    );
    body.addEventListener(
      "dragend",
      () => {
        dragged = undefined;
        mark(null);
      },
      { signal },
    );
    return () => stop.abort();
  }, [router]);
  return (
    <p ref={place} className="mt-2 text-sm text-pencil max-md:hidden">
      {hint}
    </p>
  );
}
