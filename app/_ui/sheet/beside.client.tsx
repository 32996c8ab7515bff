"use client";
/** A control with what is to be decided about it right below: both values in words, and whose counts. */
import type { ReactNode } from "react";
import { useContext } from "react";
import { Button } from "../button";
import { Notice } from "../notice";
import { fill } from "../words";
import { fieldName, valueText } from "./field-words";
import { Around } from "./sheet-context.client";

/** As the record calls whoever came by a link. */
const guest = "skier";

/** @param paths the fields that this control changes */
export function Beside({ paths, children }: { readonly paths: readonly string[]; readonly children: ReactNode }) {
  const around = useContext(Around);
  const found = around?.sheet.conflicts.filter(({ path }) => paths.includes(path)) ?? [];
  // The frame stays as it is, so that a control that is being typed into goes on being the same one.
  return (
    <div className="grid min-w-0 gap-2">
      {children}
      {found.map(({ path, yours, theirs, by }) => {
        if (around === null) return null;
        const { sheet, words } = around;
        const mine = valueText(path, yours, around);
        const other = valueText(path, theirs, around);
        return (
          <div key={path} data-conflict={path} className="max-w-measure">
            <Notice tone="amber" live="polite" title={fill(words.save.conflict, { field: fieldName(path, words) })}>
              <p>
                {fill(words.save.conflictText, {
                  yours: mine,
                  by: by === guest ? words.save.skier : by,
                  theirs: other,
                })}
              </p>
              <p className="flex flex-wrap gap-3">
                <Button size="small" onClick={() => sheet.decide(path, "mine")}>
                  {fill(words.save.keepMine, { value: mine })}
                </Button>
                <Button size="small" onClick={() => sheet.decide(path, "theirs")}>
                  {fill(words.save.takeTheirs, { value: other })}
                </Button>
              </p>
            </Notice>
          </div>
        );
      })}
    </div>
  );
}
