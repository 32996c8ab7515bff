import type { Metadata } from "next";
import { cookies } from "next/headers";
import { notFound } from "next/navigation";
import { notThere } from "#app/_server/not-there.ts";
import { linkContext } from "#app/_server/request.ts";
import { AnswersSheet } from "#app/_ui/sheet/answers-sheet.client.tsx";
import words from "#content/copy/sheet.json";
import pageWords from "#content/copy/skier.json";
import { idOf } from "#schemas/ids";
import { activeCatalog, readAnswers } from "#services";
import { postAnswers, reloadAnswers, saveAnswerFields } from "../actions";

const w = pageWords.answers;
export const metadata: Metadata = { title: w.title, robots: { index: false } };

export default async function AnswersPage({ params }: { readonly params: Promise<{ readonly token: string }> }) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "answers");
  const [sheet, catalog] = await Promise.all([
    readAnswers(ctx, { sheetId: idOf("sheet", subject.id) }),
    activeCatalog(ctx),
  ]);
  if (!sheet.ok) notThere(sheet.refusal);
  if (!catalog.ok) notFound();
  const units = (await cookies()).get("units")?.value;
  return (
    <>
      <div className="mx-auto w-full max-w-page px-4 pt-6 sm:px-6">
        <h1 className="text-2xl">{w.title}</h1>
        <p className="mt-1 mb-6 max-w-measure text-pencil">{w.lead}</p>
      </div>
      <AnswersSheet
        catalog={catalog.value.engine}
        initial={sheet.value}
        words={words}
        preferImperial={units === "imperial"}
        actions={{
          save: saveAnswerFields.bind(null, token),
          reload: reloadAnswers.bind(null, token),
          post: postAnswers.bind(null, token),
          liveUrl: `/answers/${token}/live`,
        }}
      >
        <p className="max-w-measure text-pencil">{w.done}</p>
      </AnswersSheet>
    </>
  );
}
