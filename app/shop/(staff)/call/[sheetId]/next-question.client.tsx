"use client";
/** Where the call stands: how many answers are in, and the next question that nobody has asked yet. */
import { Button } from "#app/_ui/button.tsx";
import type { SheetActions } from "#app/_ui/sheet/use-sheet.client.ts";
import { fill, wordOf } from "#app/_ui/words.ts";
import type { SheetView } from "#services/views";
import type { CallWords } from "./words";

export function NextQuestion({
  view,
  words,
  save,
}: {
  readonly view: SheetView;
  readonly words: CallWords;
  readonly save: SheetActions["save"];
}) {
  // The questions of a call, in the order in which they are asked; the sheet takes the answers in any.
  const questions = Object.keys(words.questions);
  const answers = view.answers as Readonly<Record<string, unknown>>;
  const open = questions.filter((key) => answers[key] === undefined);
  const next = open.find((key) => view.asked[key] !== "refused");
  const progress = fill(words.progress, { answered: questions.length - open.length, all: questions.length });
  return (
    <p role="status" className="flex min-h-9 flex-wrap items-center gap-x-3 text-sm">
      {next === undefined ? (
        <span>{words.nextDone}</span>
      ) : (
        <>
          <span>
            <span className="text-pencil">{words.next}:</span>{" "}
            <strong className="font-semibold">{wordOf(words.questions, next)}</strong>
          </span>
          <Button size="small" onClick={() => void save({ [`asked.${next}`]: "refused" }, view.version)}>
            {words.notSaid}
          </Button>
        </>
      )}
      <span className="text-pencil">{progress}</span>
    </p>
  );
}
