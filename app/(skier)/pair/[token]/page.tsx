import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { notThere } from "#app/_server/not-there.ts";
import { PageCautions } from "#app/_server/page-cautions.tsx";
import { linkContext } from "#app/_server/request.ts";
import { DateRange, dateRangeText, dayText } from "#app/_ui/date-range.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { specFacts } from "#app/_ui/spec-facts.ts";
import { Steps } from "#app/_ui/steps.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import { PairFigure } from "#app/_visuals/pair-figure.tsx";
import cautionWords from "#content/copy/cautions.json";
import paperWords from "#content/copy/papers.json";
import promiseWords from "#content/copy/promises.json";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/skier.json";
import { idOf } from "#schemas/ids";
import { buildOfRelease, type Context, offeredMethods, type ProgressView, pairsOfOrder, readProgress } from "#services";
import { Gates } from "./gates";
import { dayIn } from "./shop-day";
import { Unconfirmed } from "./unconfirmed";

export const metadata: Metadata = { title: "Your pair", robots: { index: false } };

interface Props {
  readonly params: Promise<{ readonly token: string }>;
  readonly searchParams: Promise<{ readonly pair?: string }>;
}

export default async function PairPage({ params, searchParams }: Props) {
  const [{ token }, { pair }] = await Promise.all([params, searchParams]);
  const { ctx, subject } = await linkContext(token);
  const pairs = await pairsBehind(ctx, subject);
  const chosen = pairs.find((each) => each.pairId === pair) ?? pairs[0];
  if (!chosen) notFound();
  const [read, methods] = await Promise.all([readProgress(ctx, { pairId: chosen.pairId }), offeredMethods(ctx)]);
  if (!read.ok) notThere(read.refusal);
  const progress = read.value;
  // As it was sold: a later release may draw the same graphic otherwise.
  const release = await buildOfRelease(ctx, { hash: progress.releaseHash });
  if (!release.ok) notFound();
  const build = release.value;
  const w = words.pair;
  return (
    <Page
      title={fill(w.title, { serial: progress.serial })}
      lead={fill(w.lead, {
        model: progress.modelName,
        length: progress.lengthCm,
        flex: fill(words.flexClass, { label: progress.flexClassLabel.toLowerCase() }),
        order: progress.orderNumber,
      })}
      aside={progress.state === "cancelled" ? <Badge tone="iron">{w.cancelled}</Badge> : null}
    >
      {pairs.length > 1 ? (
        <nav aria-label={w.which} className="mb-6 flex flex-wrap gap-4">
          {pairs.map((each) => (
            <a
              key={each.pairId}
              href={`/pair/${token}?pair=${each.pairId}`}
              aria-current={each.pairId === chosen.pairId ? "page" : undefined}
            >
              {each.serial}
            </a>
          ))}
        </nav>
      ) : null}
      {subject.kind === "order" && progress.state !== "cancelled" ? (
        <p className="no-print mb-6 flex flex-wrap gap-x-4">
          <a href={`/files/orders/${token}`}>{paperWords.links.a4}</a>
          <a href={`/files/orders/${token}?paper=letter`}>{paperWords.links.letter}</a>
          <a href={`/files/orders/${token}?prices=no`}>{paperWords.links.withoutPrices}</a>
        </p>
      ) : null}
      <div className="grid grid-cols-1 gap-x-12 lg:grid-cols-2">
        <div>
          {progress.unconfirmed === null ? (
            <When progress={progress} />
          ) : (
            <Part title={w.when} id="when">
              <Unconfirmed progress={progress} token={token} canAnswer={subject.kind === "order"} />
            </Part>
          )}
          <Part title={w.waiting} id="waiting">
            <Gates progress={progress} token={token} methods={methods} canAnswer={subject.kind === "order"} />
          </Part>
        </div>
        <Part title={w.where} id="where">
          <Steps
            label={w.where}
            steps={progress.steps.map((step) => ({
              title: step.label,
              state: step.state === "to-come" ? "next" : step.state,
              detail: step.at ? dayIn(step.at) : undefined,
            }))}
          />
        </Part>
      </div>
      <Part title={words.quote.ski} id="ski">
        <PairFigure spec={progress.spec} build={build} pictureBase={`/files/artwork/${token}`} />
        <div className="mt-6">
          <Facts columns={2} facts={specFacts(progress.spec, build, sheetWords)} />
        </div>
      </Part>
      <Part title={cautionWords.title} id="cautions">
        <PageCautions page="pair" soldFor={[progress.soldFor]} />
      </Part>
    </Page>
  );
}

async function pairsBehind(ctx: Context, subject: { readonly kind: string; readonly id: string }) {
  if (subject.kind === "pair") return [{ pairId: idOf("pair", subject.id), serial: "" }];
  if (subject.kind !== "order") return [];
  const pairs = await pairsOfOrder(ctx, { orderId: idOf("order", subject.id) });
  return pairs.ok ? pairs.value : [];
}

function When({ progress }: { readonly progress: ProgressView }) {
  const w = words.pair;
  const { dateRange, promisedOn, dateHistory, slotLost } = progress;
  return (
    <Part title={w.when} id="when">
      {slotLost ? (
        <div className="mb-4">
          <Notice tone="amber" title={promiseWords.skier[slotLost.reason]} />
        </div>
      ) : null}
      {promisedOn ? (
        <p className="text-lg">
          {w.promised} <strong className="whitespace-nowrap">{dayText(promisedOn)}</strong>
        </p>
      ) : (
        <>
          <p className="text-lg">
            {w.estimate} <DateRange from={dateRange.p50} to={dateRange.p90} shares={dateRange.shares} withYear />.
          </p>
          <p className="mt-1 text-pencil">{w.estimateNote}</p>
        </>
      )}
      <div className="mt-4">
        {dateHistory.length > 0 ? (
          <Table
            caption={w.history}
            dense
            columns={[
              { key: "at", head: "On", cell: (row) => dayIn(row.at) },
              { key: "range", head: "Ready", cell: (row) => dateRangeText(row.from, row.to, true) },
              { key: "why", head: "Why", cell: (row) => wordOf(w.historyWhy, row.why) },
            ]}
            rows={dateHistory}
            rowKey={(row) => `${row.at}${row.to}`}
          />
        ) : (
          <Notice tone="info" title={w.historyEmpty} />
        )}
      </div>
    </Part>
  );
}
