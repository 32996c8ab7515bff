"use client";
/** The skier's own part of a sheet that somebody else works on: the answers, saved and followed like the whole sheet. */
import { type ReactNode, useActionState, useMemo, useRef } from "react";
import type { EngineCatalog } from "#engine/assessment";
import type { SheetView } from "#services/views";
import { SaveTrouble } from "./save-trouble.client";
import { SectionForm } from "./section-form.client";
import { newSection, type SectionAction } from "./section-state";
import { Around } from "./sheet-context.client";
import { valuesOf } from "./sheet-values";
import { type SheetActions, useSheet } from "./use-sheet.client";
import { useTypedBefore } from "./use-typed-before.client";
import type { SheetWords } from "./words";
import { YouSection } from "./you-section.client";

export function AnswersSheet({
  catalog,
  initial,
  words,
  preferImperial = false,
  actions,
  children,
}: {
  readonly catalog: EngineCatalog;
  readonly initial: SheetView;
  readonly words: SheetWords;
  readonly preferImperial?: boolean;
  readonly actions: Omit<SheetActions, "assess"> & { readonly post: SectionAction };
  readonly children?: ReactNode;
}) {
  const [posted, post] = useActionState(actions.post, newSection);
  // Price and date are the other's to see.
  const unpriced = useMemo(
    () => ({ ...actions, assess: async () => ({ ok: false, message: "" }) as const }),
    [actions],
  );
  const sheet = useSheet(catalog, initial, unpriced, posted.refused);
  const place = useRef<HTMLDivElement>(null);
  useTypedBefore(place);
  const now = {
    values: valuesOf(sheet.view),
    spec: null,
    totalCents: null,
    catalog,
    units: {
      height: sheet.typed.height?.unit ?? (preferImperial ? "ft-in" : "cm"),
      mass: sheet.typed.mass?.unit ?? (preferImperial ? "lb" : "kg"),
    },
  } as const;
  return (
    <Around value={{ sheet, catalog, words }}>
      <div ref={place} className="mx-auto grid w-full max-w-page gap-6 px-4 pb-8 sm:px-6">
        <SaveTrouble sheet={sheet} words={words} />
        <SectionForm
          section="you"
          title={words.sections.you}
          now={now}
          sheet={sheet}
          words={words}
          posted={posted}
          post={post}
        >
          <YouSection sheet={sheet} catalog={catalog} words={words} preferImperial={preferImperial} />
        </SectionForm>
        {children}
      </div>
      <aside className="no-print sticky bottom-0 z-10 border-t border-ink bg-paper">
        <p role="status" className="mx-auto max-w-page px-4 py-3 text-sm text-pencil sm:px-6">
          {sheet.save === "arriving" ? <noscript>{words.save.noScripts}</noscript> : words.save[sheet.save]}
        </p>
      </aside>
    </Around>
  );
}
