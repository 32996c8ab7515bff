"use client";
/** Alt and a digit lead to a section of the sheet, Alt 9 to the end of the call. The keys stand there to be seen. */
import { useEffect } from "react";
import type { SheetWords } from "#app/_ui/sheet/words.ts";
import type { CallWords } from "./words";

/** Opens what is closed and puts the cursor into its first field. */
function goTo(id: string): void {
  const place = document.getElementById(id);
  if (!place) return;
  if (place instanceof HTMLDetailsElement) place.open = true;
  place.scrollIntoView({ block: "start" });
  place
    .querySelector<HTMLElement>("input:not([type=hidden]), select, textarea, button, summary")
    ?.focus({ preventScroll: true });
}

export function ShortcutKeys({
  sections,
  words,
}: {
  readonly sections: SheetWords["sections"];
  readonly words: CallWords;
}) {
  const keys = [...Object.entries(sections), ["end", words.end] as const].map(([id, label], index, all) => ({
    id,
    label,
    digit: index === all.length - 1 ? 9 : index + 1,
  }));
  useEffect(() => {
    const ids = new Map([...Object.keys(sections).map((id, i) => [`Digit${i + 1}`, id] as const), ["Digit9", "end"]]);
    const pressed = (event: KeyboardEvent) => {
      const id = event.altKey && !event.ctrlKey && !event.metaKey ? ids.get(event.code) : undefined;
      if (id === undefined) return;
      event.preventDefault();
      goTo(id);
    };
    window.addEventListener("keydown", pressed);
    return () => window.removeEventListener("keydown", pressed);
  }, [sections]);
  return (
    <nav aria-label={words.shortcuts} className="flex flex-wrap items-center gap-x-4 gap-y-1 text-sm">
      {keys.map(({ id, label, digit }) => (
        <a
          key={id}
          href={`#${id}`}
          aria-keyshortcuts={`Alt+${digit}`}
          className="inline-flex min-h-9 items-center gap-1.5"
          onClick={(event) => {
            event.preventDefault();
            goTo(id);
          }}
        >
          <kbd className="border border-control px-1 font-mono text-xs text-pencil no-underline">Alt {digit}</kbd>
          {label}
        </a>
      ))}
    </nav>
  );
}
