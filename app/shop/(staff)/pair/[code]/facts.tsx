/** Where the pair is, its serials, its papers. */
import { ButtonLink } from "#app/_ui/button.tsx";
import { dateRangeText, dayText, shareText } from "#app/_ui/date-range.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { Badge, type Tone } from "#app/_ui/notice.tsx";
import { plusMinus } from "#app/_ui/plus-minus.ts";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import paperWords from "#content/copy/papers.json";
import copy from "#content/copy/rework.json";
import words from "#content/copy/shop.json";
import { nineOfTen } from "#engine/configuration";
import { newtonsPerCm } from "#engine/flex";
import { textForPeople } from "#engine/units";
import type { PairView } from "#services";

const w = words.pair;
const { rework } = copy;
const skiTones: Readonly<Record<PairView["skis"][number]["state"], Tone>> = {
  good: "moss",
  held: "amber",
  scrapped: "iron",
};

export function PairFacts({ pair, seesOrder }: { readonly pair: PairView; readonly seesOrder: boolean }) {
  const { flex, spread, twinLimits } = pair;
  const done = pair.operations.filter((operation) => operation.state === "done").length;
  const { springSpans: spans } = pair;
  const over = (text: string, spanMm: number) =>
    fill(w.qcNames.springOver, { spring: text, spanMm: textForPeople(spanMm) });
  const spring = (nPerMm: number, spanMm: number) => over(textForPeople(newtonsPerCm(nPerMm), 1), spanMm);
  const centre = newtonsPerCm(flex.springCentreNPerMm);
  const apart = (text: string, limit: string) => fill(w.qcNames.twins, { apart: text, limit });
  return (
    <>
      <Facts
        facts={[
          { name: words.queue.heads.progress, value: `${done}/${pair.operations.length}`, measure: true },
          {
            name: w.promise,
            value: pair.promisedOn
              ? dayText(pair.promisedOn)
              : pair.expected
                ? `${w.noPromise}, ${dateRangeText(pair.expected.p50, pair.expected.p90, true)}, ${shareText(pair.expected.p50, pair.expected.p90, pair.expected.shares)}`
                : w.noPromise,
          },
          ...(seesOrder
            ? [{ name: w.order, value: <a href={`/shop/orders/${pair.orderId}`}>{pair.orderNumber}</a> }]
            : []),
          { name: w.mould, value: pair.mould, measure: true },
          { name: w.revision, value: String(pair.revision), measure: true },
        ]}
      />
      <h3 className="mt-6 mb-2 font-semibold">{w.qc}</h3>
      <Facts
        facts={[
          {
            name: w.qcNames.spring,
            value: over(plusMinus(centre, spread?.springCentre && spread.springCentre * centre, 1), spans.centreMm),
            measure: true,
          },
          { name: w.qcNames.fore, value: spring(flex.springForebodyNPerMm, spans.forebodyMm), measure: true },
          { name: w.qcNames.after, value: spring(flex.springAfterbodyNPerMm, spans.afterbodyMm), measure: true },
          { name: w.qcNames.mass, value: `${plusMinus(flex.massKg * 1000, spread?.massG)} g`, measure: true },
          { name: w.qcNames.balance, value: `${textForPeople(flex.balancePointMm, 0)} mm`, measure: true },
          {
            name: w.qcNames.ratio,
            value: `${textForPeople(pair.core.achievedRatio, 3)} / ${textForPeople(pair.spec.flexRatio, 3)}`,
            measure: true,
          },
          ...(spread
            ? [
                {
                  name: w.qcNames.twinSpring,
                  value: apart(
                    `${textForPeople(100 * nineOfTen(spread.twins.springCentre), 1)} %`,
                    twinLimits.springCentre,
                  ),
                  measure: true,
                },
                {
                  name: w.qcNames.twinMass,
                  value: apart(`${textForPeople(nineOfTen(spread.twins.massG))} g`, twinLimits.mass),
                  measure: true,
                },
              ]
            : []),
        ]}
      />
      {spread ? <p className="mt-2 text-sm text-pencil">{w.qcNames.nineOfTen}</p> : null}
    </>
  );
}

export function Serials({ pair }: { readonly pair: PairView }) {
  return (
    <Facts
      facts={pair.skis.map((ski) => ({
        name:
          ski.build === 1 ? w.sides[ski.side] : fill(rework.builtAgain, { side: w.sides[ski.side], build: ski.build }),
        value: (
          <span className="flex flex-wrap items-baseline gap-3">
            <span className="measure">{ski.serial}</span>
            <Badge tone={skiTones[ski.state]}>{w.skiStates[ski.state]}</Badge>
            {ski.location ? (
              <span className="text-sm text-pencil">{fill(rework.parkedAt, { location: ski.location })}</span>
            ) : null}
          </span>
        ),
      }))}
    />
  );
}

export function Documents({ pair }: { readonly pair: PairView }) {
  const last = pair.prints.at(-1);
  const papers = [
    { href: `/files/pairs/${pair.pairId}/build-sheet`, label: w.buildSheet },
    { href: `/files/pairs/${pair.pairId}/kit-list`, label: w.kitList },
    { href: `/files/pairs/${pair.pairId}/labels`, label: w.labels },
    ...(pair.gates.proof === "not-needed"
      ? []
      : [{ href: `/files/proofs/shop/${pair.pairId}`, label: paperWords.links.proof }]),
  ];
  return (
    <>
      <ul className="grid gap-2">
        {papers.map(({ href, label }) => (
          <li key={href} className="flex flex-wrap items-center gap-2">
            <span className="w-28">{label}</span>
            <ButtonLink href={href} aria-label={`${label}, A4`}>
              A4
            </ButtonLink>
            <ButtonLink href={`${href}?paper=letter`} aria-label={`${label}, Letter`}>
              Letter
            </ButtonLink>
          </li>
        ))}
      </ul>
      <p className="mt-2 text-sm text-pencil">
        {w.printNote}{" "}
        {last ? fill(w.lastPrint, { print: last.print, at: clock(last.printedAt), by: last.printedBy }) : null}
      </p>
    </>
  );
}
