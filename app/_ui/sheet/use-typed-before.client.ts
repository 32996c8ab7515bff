"use client";
/**
 * What somebody typed or ticked before the page's scripts were there: read from the page before anything is drawn over it, and
 * entered again by the same events as if it were typed now.
 */
import { type RefObject, useLayoutEffect } from "react";
import { type Control, enterAgain, isChanged, typedIn } from "../typed";

export function useTypedBefore(place: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    if (place.current === null || isRestored()) return;
    const found = [...place.current.querySelectorAll<Control>("input, textarea, select")]
      .filter((control) => !["hidden", "file", "submit"].includes(control.type) && isChanged(control))
      // Of a group of radios the one that was chosen says it all.
      .filter((control) => control.type !== "radio" || (control as HTMLInputElement).checked)
      .map((control) => [control, typedIn(control)] as const);
    if (found.length === 0) return;
    // After this page is drawn, and before anybody sees it.
    queueMicrotask(() => {
      for (const [control, value] of found) enterAgain(control, value);
    });
  }, [place]);
}

/** A browser that goes back fills in what stood there then; what was saved since is the newer. */
function isRestored(): boolean {
  const [entry] = performance.getEntriesByType?.("navigation") ?? [];
  return (entry as PerformanceNavigationTiming | undefined)?.type === "back_forward";
}
