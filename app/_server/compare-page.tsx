/** The page that compares pairs, for the skier's link and for the call alike: only the door and the words differ. */
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { readCompareQuery } from "#app/_ui/compare/candidates.ts";
import { CompareView } from "#app/_ui/compare/compare-view.tsx";
import words from "#content/copy/compare.json";
import type { Refusal } from "#engine/units";
import { activeCatalog, type Context, readSheet, type SheetId } from "#services";
import type { FormState } from "./form-state";
import { otherSheetOf } from "./other-sheet";

interface Door {
  readonly ctx: Context;
  readonly sheetId: SheetId;
  readonly search: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly backHref: string;
  /** A clash of the build in words. */
  readonly say: (refusal: Refusal) => string;
  /** Takes a pair onto the sheet; `key` is the hidden field that opens this door again. */
  readonly take: {
    readonly action: (previous: FormState, form: FormData) => Promise<FormState>;
    readonly key: { readonly name: string; readonly value: string };
    readonly submit: string;
  };
}

export async function comparePage({ ctx, sheetId, search, backHref, say, take }: Door): Promise<ReactNode> {
  const query = readCompareQuery(search);
  const [sheet, catalog, other] = await Promise.all([
    readSheet(ctx, { sheetId }),
    activeCatalog(ctx),
    otherSheetOf(query.other, sheetId),
  ]);
  if (!sheet.ok || !catalog.ok) notFound();
  const hidden = (name: string, value: string) => ({ kind: "hidden", name, value }) as const;
  return (
    <CompareView
      sheet={sheet.value}
      other={other}
      query={query}
      catalog={catalog.value.engine}
      words={words}
      backHref={backHref}
      clashText={({ assessment }) => assessment.conflicts.map(say).join(" ") || null}
      take={(id) => (
        <ActionForm
          action={take.action}
          idPrefix={`take-${id}-`}
          tone="plain"
          size="small"
          fields={[
            hidden(take.key.name, take.key.value),
            hidden("candidate", id),
            hidden("other", id === "other" ? query.other : ""),
            hidden("version", String(sheet.value.version)),
          ]}
          submit={take.submit}
        />
      )}
    />
  );
}
