"use client";
/** What of the page is not saved, and why. */
import { Button } from "../button";
import { Notice } from "../notice";
import { listText } from "../words";
import { fieldName } from "./field-words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export function SaveTrouble({ sheet, words }: { readonly sheet: SheetState; readonly words: SheetWords }) {
  return (
    <>
      {sheet.save === "waiting" ? <Notice tone="amber" title={words.save.waiting} live="polite" /> : null}
      {sheet.isOutOfDate ? (
        <Notice tone="amber" title={words.save.outOfDate} live="polite">
          <p>
            <Button size="small" onClick={() => location.reload()}>
              {words.save.reload}
            </Button>
          </p>
        </Notice>
      ) : null}
      {sheet.errors.sheet ? <Notice tone="iron" title={sheet.errors.sheet} live="polite" /> : null}
      {sheet.conflicts.length > 0 ? (
        <p className="text-amber">
          {words.save.elsewhere} {listText(sheet.conflicts.map(({ path }) => fieldName(path, words)))}
        </p>
      ) : null}
    </>
  );
}
