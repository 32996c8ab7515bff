import type { Metadata } from "next";
import { comparePage } from "#app/_server/compare-page.tsx";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import words from "#content/copy/compare.json";
import { idOf } from "#schemas/ids";
import { putOnSheet } from "./actions";

export const metadata: Metadata = { title: words.title };

interface Props {
  readonly params: Promise<{ readonly sheetId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function CallComparePage({ params, searchParams }: Props) {
  const sheetId = idOf("sheet", (await params).sheetId);
  return comparePage({
    ctx: await staffContext(`/shop/call/${sheetId}/compare`),
    sheetId,
    search: await searchParams,
    backHref: `/shop/call/${sheetId}`,
    say,
    take: { action: putOnSheet, key: { name: "sheetId", value: sheetId }, submit: words.take.buttonStaff },
  });
}
