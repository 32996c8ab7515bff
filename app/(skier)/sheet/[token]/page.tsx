import type { Metadata } from "next";
import { cookies } from "next/headers";
import { notFound } from "next/navigation";
import { notThere } from "#app/_server/not-there.ts";
import { sheetCautions } from "#app/_server/page-cautions.tsx";
import { linkContext } from "#app/_server/request.ts";
import { Sheet } from "#app/_ui/sheet/sheet.client.tsx";
import refusalWords from "#content/copy/refusals.json";
import words from "#content/copy/sheet.json";
import pageWords from "#content/copy/skier.json";
import { idOf } from "#schemas/ids";
import { activeCatalog, readSheet, skierBand } from "#services";
import {
  askPerson,
  assessSheetNow,
  makeQuote,
  postQuote,
  postSection,
  reloadSheet,
  saveFields,
  statePictureRights,
} from "../actions";

export const metadata: Metadata = { title: pageWords.sheet.title, robots: { index: false } };

export default async function SheetPage({ params }: { readonly params: Promise<{ readonly token: string }> }) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "sheet");
  const [sheet, catalog, band] = await Promise.all([
    readSheet(ctx, { sheetId: idOf("sheet", subject.id) }),
    activeCatalog(ctx),
    skierBand(ctx),
  ]);
  if (!sheet.ok) notThere(sheet.refusal);
  if (!catalog.ok) notFound();
  const units = (await cookies()).get("units")?.value;
  const w = pageWords.sheet;
  return (
    <Sheet
      heading={
        <div className="pt-6">
          <h1 className="text-2xl">{w.title}</h1>
          <p className="mt-1 max-w-measure text-pencil">{words.save.link}</p>
        </div>
      }
      catalog={catalog.value.engine}
      initial={sheet.value}
      words={words}
      closed={w.closed}
      refusalWords={refusalWords}
      cautions={sheetCautions()}
      band={band.ok ? band.value : null}
      preferImperial={units === "imperial"}
      compareHref={`/sheet/${token}/compare`}
      actions={{
        save: saveFields.bind(null, token),
        assess: assessSheetNow.bind(null, token),
        reload: reloadSheet.bind(null, token),
        quote: makeQuote.bind(null, token),
        post: postSection.bind(null, token),
        postQuote: postQuote.bind(null, token),
        liveUrl: `/sheet/${token}/live`,
        ask: askPerson.bind(null, token),
      }}
      pictures={{
        uploadUrl: `/files/artwork/${token}`,
        pictureBase: `/files/artwork/${token}`,
        stateRights: statePictureRights.bind(null, token),
      }}
    />
  );
}
