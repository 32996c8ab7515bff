import type { Metadata } from "next";
import { PageCautions } from "#app/_server/page-cautions.tsx";
import { staffContext } from "#app/_server/request.ts";
import { ButtonLink } from "#app/_ui/button.tsx";
import { Empty } from "#app/_ui/empty.tsx";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { orderTones } from "#app/shop/(staff)/order-tones.ts";
import { CautionReminder } from "#app/shop/caution-reminder.tsx";
import { History } from "#app/shop/history.tsx";
import { refusedPage } from "#app/shop/refused-page.tsx";
import { say } from "#app/shop/say.ts";
import { permit } from "#auth";
import learning from "#content/copy/learning.json";
import reworkWords from "#content/copy/rework.json";
import words from "#content/copy/shop.json";
import { findPairByCode, readPair, type ScanResult } from "#services";
import { PairAxis } from "./axis";
import { PairBench } from "./bench";
import { Documents, PairFacts, Serials } from "./facts";
import { Now } from "./now";
import { type AskedRework, Rework } from "./rework";
import { Operations, Parts, Strips, Thickness } from "./tables";

const w = words.pair;
export const metadata: Metadata = { title: "Pair" };

interface Props {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly print?: string } & AskedRework>;
}

/** The address that a printed code scans to: /shop/pair/TY-0417?print=3, or the serial of one ski. */
export default async function PairPage({ params, searchParams }: Props) {
  const [{ code }, { print, ...asked }] = await Promise.all([params, searchParams]);
  const ctx = await staffContext(`/shop/pair/${code}${print ? `?print=${print}` : ""}`);
  const scan = await findPairByCode(ctx, { code: print ? `${code}?print=${print}` : code });
  if (!scan.ok) {
    return (
      <Page title={code}>
        <Empty title={say(scan.refusal)}>{words.search.noneHint}</Empty>
      </Page>
    );
  }
  const read = await readPair(ctx, { pairId: scan.value.pairId });
  if (!read.ok) return refusedPage(read.refusal);
  const pair = read.value;
  return (
    <Page
      title={fill(w.title, { serial: pair.serial })}
      lead={fill(w.lead, {
        model: pair.modelName,
        revision: pair.modelRevision,
        length: pair.spec.lengthCm,
        flex: pair.flexClassLabel.toLowerCase(),
        skier: pair.skierFirstName,
      })}
      aside={<Badge tone={orderTones[pair.state]}>{words.orders.states[pair.state]}</Badge>}
    >
      <Scanned scan={scan.value} />
      <CautionReminder ctx={ctx} />
      <Part title={w.next} id="now">
        <Now pair={pair} mayTick={permit(ctx.actor, "pair.work").ok} />
        <div className="mt-4">
          <PageCautions page="shop-pair" size="floor" />
        </div>
      </Part>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-2">
        <div>
          <Part title={w.where} id="where">
            <PairFacts pair={pair} seesOrder={permit(ctx.actor, "order.read").ok} />
          </Part>
          <Part title={w.serials} id="serials">
            <Serials pair={pair} />
          </Part>
        </div>
        <div>
          <Part title={w.documents} id="documents">
            <Documents pair={pair} />
          </Part>
          <Part title={w.strips} id="strips">
            {pair.isStripsShort ? (
              <p className="mb-3 flex flex-wrap items-center gap-3">
                <Badge tone="amber">{reworkWords.rework.short}</Badge>
                <a href={`/shop/strips/${pair.serial}`}>{reworkWords.rework.shortLink}</a>
              </p>
            ) : null}
            <Strips pair={pair} />
          </Part>
        </div>
      </div>
      <Part title={learning.bench.title} id="bench">
        <PairBench ctx={ctx} pair={pair} />
      </Part>
      <Part title={w.axis} id="axis">
        <PairAxis ctx={ctx} pair={pair} />
      </Part>
      {pair.state === "building" || pair.state === "ready" ? (
        <Part title={reworkWords.rework.title} id="rework">
          {permit(ctx.actor, "pair.rework").ok ? (
            <Rework ctx={ctx} pair={pair} asked={asked} />
          ) : (
            <p className="text-pencil">{w.deskOnly}</p>
          )}
        </Part>
      ) : null}
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-2">
        <Part title={w.thickness} id="thickness">
          <Thickness pair={pair} />
        </Part>
        <Part title={w.operations} id="operations">
          <Operations pair={pair} />
        </Part>
      </div>
      <Part title={w.parts} id="parts">
        <Parts pair={pair} />
      </Part>
      <Part title={w.history} id="history">
        <History events={pair.history} title={w.history} />
      </Part>
      <p>
        <ButtonLink href="/shop/queue">{words.queue.title}</ButtonLink>
      </p>
    </Page>
  );
}

/** What the code stood for: one ski, or a print that no longer counts. */
function Scanned({ scan }: { readonly scan: ScanResult }) {
  return (
    <div className="grid gap-3">
      {scan.side ? <p className="text-lg font-semibold">{fill(w.scanned, { side: w.sides[scan.side] })}</p> : null}
      {scan.isScrapped ? <Notice tone="iron" live="assertive" title={reworkWords.rework.scrappedScan} /> : null}
      {scan.isVoid && scan.print ? (
        <Notice
          tone="iron"
          live="assertive"
          title={fill(w.voidPrint, { print: scan.print.print, reason: scan.print.voided?.reason ?? "" })}
        />
      ) : null}
    </div>
  );
}
