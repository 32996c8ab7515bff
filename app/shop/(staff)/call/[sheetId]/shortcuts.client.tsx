"use client";
/**
 * Alt and a digit lead to the first field of a section, Alt 9 to the end of the call, Alt 0 to the next answer that is missing.
 * The keys stand there to be seen.
 */
import { useEffect, useRef } from "react";
import { useSheetAround } from "#app/_ui/sheet/sheet-context.client.ts";
import type { SheetWords } from "#app/_ui/sheet/words.ts";
import { nextQuestion } from "./next-question.client";
import type { CallWords } from "./words";

const fields = "input:not([type=hidden], [type=range]), select, textarea";

/** The control that a key lands on: of radios the chosen one. */
function landOn(found: readonly HTMLElement[]): HTMLElement | undefined {
  const [first] = found.filter((each) => !each.matches(":disabled"));
  if (!(first instanceof HTMLInputElement) || first.type !== "radio") return first;
  const group = found.filter((each) => each instanceof HTMLInputElement && each.name === first.name);
  return group.find((each) => (each as HTMLInputElement).checked) ?? first;
}

/** Opens what is closed and puts the cursor into its first field. */
function goTo(id: string): void {
  const place = document.getElementById(id);
  if (!place) return;
  if (place instanceof HTMLDetailsElement) place.open = true;
  place.scrollIntoView({ block: "start" });
  const field = landOn([...place.querySelectorAll<HTMLElement>(fields)]);
  (field ?? place.querySelector<HTMLElement>("button, summary"))?.focus({ preventScroll: true });
}

/** Where a question is answered, by the name of its control. */
const controlOf: Readonly<Record<string, string>> = {
  heightCm: "height",
  massKg: "mass",
  offPistePercent: "offPiste",
  currentSki: "currentLength",
};

function askNext(question: string): void {
  const name = controlOf[question] ?? question;
  const field = landOn([...document.querySelectorAll<HTMLElement>(`#you [name="${name}"]`)]);
  if (field === undefined) return;
  for (let place = field.parentElement; place; place = place.parentElement) {
    if (place instanceof HTMLDetailsElement) place.open = true;
  }
  field.focus();
  field.scrollIntoView({ block: "center" });
}

export function ShortcutKeys({
  sections,
  words,
}: {
  readonly sections: SheetWords["sections"];
  readonly words: CallWords;
}) {
  const { sheet } = useSheetAround();
  const next = useRef<string>(undefined);
  next.current = nextQuestion(sheet, words);
  const keys = [
    ...Object.entries(sections).map(([id, label], index) => ({ id, label, digit: index + 1 })),
    { id: "end", label: words.end, digit: 9 },
    { id: "next", label: words.nextMissing, digit: 0 },
  ];
  const press = (id: string) => {
    if (id === "next" && next.current !== undefined) askNext(next.current);
    else goTo(id === "next" ? "end" : id);
  };
  const pressNow = useRef(press);
  pressNow.current = press;
  useEffect(() => {
    const ids = new Map([
      ...Object.keys(sections).map((id, i) => [`Digit${i + 1}`, id] as const),
      ["Digit9", "end"],
      ["Digit0", "next"],
    ]);
    const pressed = (event: KeyboardEvent) => {
      const id = event.altKey && !event.ctrlKey && !event.metaKey ? ids.get(event.code) : undefined;
      if (id === undefined) return;
      event.preventDefault();
      pressNow.current(id);
    };
    window.addEventListener("keydown", pressed);
    return () => window.removeEventListener("keydown", pressed);
  }, [sections]);
  return (
    <nav aria-label={words.shortcuts} className="flex flex-wrap items-center gap-x-4 gap-y-1 text-sm">
      {keys.map(({ id, label, digit }) => (
        <a
          key={id}
          href={id === "next" ? "#you" : `#${id}`}
          aria-keyshortcuts={`Alt+${digit}`}
          className="inline-flex min-h-9 items-center gap-1.5"
          onClick={(event) => {
            event.preventDefault();
            press(id);
          }}
        >
          <kbd className="border border-control px-1 font-mono text-xs text-pencil no-underline">Alt {digit}</kbd>
          {label}
        </a>
      ))}
    </nav>
  );
}
