import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import type { Query } from "#app/shop/(staff)/list-href.ts";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/learning.json";
import { activeCatalog, type LearningView, readLearning } from "#services";
import { AddPair } from "./add-pair";
import { Approve, Suspects } from "./suspects";
import { BookTable, biggestChanges, DecisionTable, FactorTable, QualityTable, ResidualTable } from "./tables";

const w = words.measured;
export const metadata: Metadata = { title: w.title };

export default async function MeasuredPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const { page } = await searchParams;
  const ctx = await staffContext("/shop/measured");
  const [read, catalog] = await Promise.all([readLearning(ctx), activeCatalog(ctx)]);
  if (!read.ok || !catalog.ok) notFound();
  const view = read.value;
  const { build } = catalog.value.engine;
  const { calibration } = view;
  return (
    <Page title={w.title} lead={w.lead}>
      <State view={view} />
      <Part title={w.quality} id="quality">
        <p className="mb-3 max-w-measure text-pencil">{w.qualityNote}</p>
        <QualityTable quality={calibration.quality} />
      </Part>
      <Part title={w.suspects} id="suspects">
        <Suspects view={view} mayDecide={permit(ctx.actor, "learning.decide").ok} />
      </Part>
      <Part title={fill(w.approveTitle, { version: calibration.corrections.version })} id="approve">
        <Approve
          view={view}
          mayApprove={permit(ctx.actor, "learning.approve").ok}
          biggest={biggestChanges(calibration.factors, build.materials)}
        />
      </Part>
      <Part title={w.factors} id="factors">
        <p className="mb-3 max-w-measure text-pencil">{w.factorsNote}</p>
        <FactorTable factors={calibration.factors} materials={build.materials} />
      </Part>
      <Part title={w.residuals} id="readings">
        <ResidualTable view={view} page={page} />
      </Part>
      <Part title={w.books} id="books">
        <BookTable view={view} />
      </Part>
      <Part title={w.decisions} id="decisions">
        <DecisionTable view={view} />
      </Part>
      {permit(ctx.actor, "bench.record").ok ? (
        <Part title={w.add} id="add">
          <AddPair build={build} />
        </Part>
      ) : null}
    </Page>
  );
}

function State({ view }: { readonly view: LearningView }) {
  const [book] = view.books;
  const skis = new Set(view.calibration.residuals.map(({ skiId }) => skiId)).size;
  return (
    <div className="mb-8 grid max-w-measure gap-2">
      <p className="text-lg">{fill(w.state, { pairs: view.calibration.pairs, skis, least: view.leastPairs })}</p>
      <p>
        {book ? fill(w.inForce, { version: book.version, at: clock(book.effectiveAt), by: book.approvedBy }) : w.noBook}
      </p>
      {view.notCompared.length > 0 ? (
        <p className="text-amber">{fill(w.notCompared, { serials: view.notCompared.join(", ") })}</p>
      ) : null}
    </div>
  );
}
