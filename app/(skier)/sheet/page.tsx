import type { Metadata } from "next";
import { readCookie } from "#app/_server/cookies.ts";
import { ButtonLink } from "#app/_ui/button.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page } from "#app/_ui/page.tsx";
import { SubmitButton } from "#app/_ui/submit-button.client.tsx";
import { fill } from "#app/_ui/words.ts";
import refusalWords from "#content/copy/refusals.json";
import words from "#content/copy/skier.json";
import { startSheet } from "./actions";
import { sheetCookie } from "./sheet-cookie";

export const metadata: Metadata = { title: words.start.title };

interface Props {
  readonly searchParams: Promise<{ readonly wait?: string }>;
}

export default async function StartPage({ searchParams }: Props) {
  const { wait } = await searchParams;
  const last = await readCookie(sheetCookie);
  const w = words.start;
  return (
    <Page title={w.title} lead={w.lead}>
      <ol className="mb-8 grid max-w-measure list-decimal gap-2 pl-6">
        {w.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {wait !== undefined && /^\d{1,3}$/.test(wait) ? (
        <div className="mb-6 max-w-measure">
          <Notice tone="amber" title={fill(refusalWords["budget-used"], { minutes: wait })} takesFocus />
        </div>
      ) : null}
      <form action={startSheet} className="flex flex-wrap gap-4">
        {last ? (
          <ButtonLink tone="primary" href={`/sheet/${last}`}>
            {w.resume}
          </ButtonLink>
        ) : null}
        <SubmitButton tone={last ? "plain" : "primary"} busy={w.busy}>
          {w.button}
        </SubmitButton>
      </form>
      <p className="mt-6 max-w-measure text-sm text-pencil">{w.privacy}</p>
    </Page>
  );
}
