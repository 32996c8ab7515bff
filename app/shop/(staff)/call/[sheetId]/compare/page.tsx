import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { otherSheetOf } from "#app/_server/other-sheet.ts";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { readCompareQuery } from "#app/_ui/compare/candidates.ts";
import { CompareView } from "#app/_ui/compare/compare-view.tsx";
import { say } from "#app/shop/say.ts";
import words from "#content/copy/compare.json";
import { idOf } from "#schemas/ids";
import { activeCatalog, readSheet } from "#services";
import { putOnSheet } from "./actions";

export const metadata: Metadata = { title: words.title };

interface Props {
  readonly params: Promise<{ readonly sheetId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function CallComparePage({ params, searchParams }: Props) {
  const sheetId = idOf("sheet", (await params).sheetId);
  const ctx = await staffContext(`/shop/call/${sheetId}/compare`);
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
      backHref={`/shop/call/${sheetId}`}
      clashText={({ assessment }) => assessment.conflicts.map(say).join(" ") || null}
      take={(id) => (
        <ActionForm
          action={putOnSheet}
          idPrefix={`take-${id}-`}
          tone="plain"
          size="small"
          fields={[
            hidden("sheetId", sheetId),
            hidden("candidate", id),
            hidden("other", id === "other" ? query.other : ""),
            hidden("version", String(sheet.value.version)),
          ]}
          submit={words.take.buttonStaff}
        />
      )}
    />
  );
}
