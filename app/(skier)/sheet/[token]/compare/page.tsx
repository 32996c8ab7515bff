import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { otherSheetOf } from "#app/_server/other-sheet.ts";
import { linkContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { readCompareQuery } from "#app/_ui/compare/candidates.ts";
import { CompareView } from "#app/_ui/compare/compare-view.tsx";
import words from "#content/copy/compare.json";
import refusalWords from "#content/copy/refusals.json";
import { wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { activeCatalog, readSheet } from "#services";
import { takeOntoSheet } from "./actions";

export const metadata: Metadata = { title: words.title, robots: { index: false } };

interface Props {
  readonly params: Promise<{ readonly token: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function ComparePage({ params, searchParams }: Props) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "sheet");
  const sheetId = idOf("sheet", subject.id);
  const query = readCompareQuery(await searchParams);
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
      backHref={`/sheet/${token}`}
      clashText={({ assessment }) => assessment.conflicts.map((each) => wordsFor(each, refusalWords)).join(" ") || null}
      take={(id) => (
        <ActionForm
          action={takeOntoSheet}
          idPrefix={`take-${id}-`}
          tone="plain"
          size="small"
          fields={[
            hidden("token", token),
            hidden("candidate", id),
            hidden("other", id === "other" ? query.other : ""),
            hidden("version", String(sheet.value.version)),
          ]}
          submit={words.take.button}
        />
      )}
    />
  );
}
