"use client";
/** Where the call stands: how many answers are in, and the next question that nobody has asked yet. */
import { Button } from "#app/_ui/button.tsx";
import { useSheetAround } from "#app/_ui/sheet/sheet-context.client.ts";
import type { SheetState } from "#app/_ui/sheet/use-sheet.client.ts";
import { fill, wordOf } from "#app/_ui/words.ts";
import type { CallWords } from "./words";

/** The questions of a call that are open, in the order in which they are asked; the sheet takes the answers in any. */
function openQuestions(sheet: SheetState, words: CallWords): readonly string[] {
  const answers = sheet.answers as Readonly<Record<string, unknown>>;
  return Object.keys(words.questions).filter((key) => answers[key] === undefined);
}

/** The next that nobody passed over; undefined when there is none. */
export function nextQuestion(sheet: SheetState, words: CallWords): string | undefined {
  return openQuestions(sheet, words).find((key) => sheet.asked[key] !== "refused");
}

export function NextQuestion({ words }: { readonly words: CallWords }) {
  const { sheet } = useSheetAround();
  const all = Object.keys(words.questions).length;
  const next = nextQuestion(sheet, words);
  const progress = fill(words.progress, { answered: all - openQuestions(sheet, words).length, all });
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
          <Button size="small" onClick={() => sheet.setField(`asked.${next}`, "refused")}>
            {words.notSaid}
          </Button>
        </>
      )}
      <span className="text-pencil">{progress}</span>
    </p>
  );
}
