"use client";
/**
 * A section of the sheet as a form. Without scripts its button saves what was changed and the page comes back with what was not
 * taken; with scripts every field saves itself, and sending the form only saves at once what waits.
 */
import { createContext, type ReactNode, useContext } from "react";
import { Button } from "../button";
import { Notice } from "../notice";
import { fill } from "../words";
import { type FormSection, type SheetNow, shownFields } from "./section-fields";
import { newSection, type SectionState } from "./section-state";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

const Posted = createContext<SectionState>(newSection);

/** What a control of this name was sent with and not taken, and why; undefined when it was. */
export function usePosted(name: string): { readonly typed: string; readonly wrong: string } | undefined {
  const { typed, wrong } = useContext(Posted);
  const message = wrong[name];
  return message === undefined ? undefined : { typed: typed[name] ?? "", wrong: message };
}

export function SectionForm({
  section,
  title,
  now,
  sheet,
  words,
  posted,
  post,
  children,
}: {
  readonly section: FormSection;
  readonly title: string;
  readonly now: SheetNow;
  readonly sheet: SheetState;
  readonly words: SheetWords;
  readonly posted: SectionState;
  readonly post: ((form: FormData) => void) | undefined;
  readonly children: ReactNode;
}) {
  const isOurs = posted.section === section;
  const isRefused = isOurs && Object.keys(posted.wrong).length > 0;
  return (
    <form
      action={post}
      autoComplete="off"
      // What is wrong is said in the page's words, and the rest is saved.
      noValidate
      className="grid grid-cols-1 gap-6 in-data-dense:gap-4"
      onSubmit={(event) => {
        event.preventDefault();
        void sheet.flush();
      }}
    >
      <input type="hidden" name="section" value={section} />
      <input type="hidden" name="was" value={JSON.stringify(shownFields(section, now))} />
      {isOurs && sheet.save === "arriving" ? (
        <Notice
          tone={isRefused ? "iron" : "moss"}
          title={isRefused ? words.save.partRefused : fill(words.save.partSaved, { section: title })}
          takesFocus
        >
          {isRefused ? (
            <ul className="list-disc pl-5">
              {Object.entries(posted.wrong).map(([name, message]) => (
                <li key={name}>{message}</li>
              ))}
            </ul>
          ) : null}
        </Notice>
      ) : null}
      <Posted value={isOurs ? posted : newSection}>{children}</Posted>
      <noscript>
        <Button type="submit">{words.save.savePart}</Button>
      </noscript>
    </form>
  );
}
