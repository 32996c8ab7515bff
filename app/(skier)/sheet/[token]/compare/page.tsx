import type { Metadata } from "next";
import { comparePage } from "#app/_server/compare-page.tsx";
import { linkContext } from "#app/_server/request.ts";
import words from "#content/copy/compare.json";
import refusalWords from "#content/copy/refusals.json";
import { wordsFor } from "#schemas";
import { idOf } from "#schemas/ids";
import { takeOntoSheet } from "./actions";

export const metadata: Metadata = { title: words.title, robots: { index: false } };

interface Props {
  readonly params: Promise<{ readonly token: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function ComparePage({ params, searchParams }: Props) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "sheet");
  return comparePage({
    ctx,
    sheetId: idOf("sheet", subject.id),
    search: await searchParams,
    backHref: `/sheet/${token}`,
    say: (refusal) => wordsFor(refusal, refusalWords),
    take: { action: takeOntoSheet, key: { name: "token", value: token }, submit: words.take.button },
  });
}
