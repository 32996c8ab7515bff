"use client";
/** Every station of the pair while it is being chosen; and, where the shop types, a strip of it that stays in sight. */
import { useMemo } from "react";
import { AxisChart } from "#app/_visuals/axis-chart.client.tsx";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import { assessSheet, type EngineCatalog } from "#engine/assessment";
import type { SkiFlex } from "#engine/flex";
import { More } from "../section";
import type { DrawnPair } from "./drawn-pair.client";
import { PairNumbers } from "./pair-numbers";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly pictureBase: string;
  readonly pair: DrawnPair | null;
}

/** Its place is kept from the start, so that nothing jumps when the first recommendation arrives. */
export function PairStrip({ sheet, catalog, words, pictureBase, pair }: Props) {
  return (
    <div
      className={`sheet-strip z-10 grid min-h-24 items-center gap-x-10 gap-y-2 border-y border-rule bg-paper py-3 md:sticky md:top-0 md:grid-cols-[minmax(0,42rem)_minmax(0,1fr)] ${sheet.isComputing ? "[&_svg]:opacity-70" : ""}`}
    >
      {pair ? (
        <SkiPair
          look={pair.look}
          pictureBase={pictureBase}
          orientation="lying"
          className="w-full"
          description={`${words.preview}: ${pair.title}`}
        />
      ) : (
        <div className="h-full border border-dashed border-rule" />
      )}
      <div className="min-h-20 text-sm">
        {pair ? (
          <>
            <p className="text-base font-semibold">{pair.title}</p>
            <PairNumbers sheet={sheet} catalog={catalog} words={words} pair={pair} />
          </>
        ) : (
          <p className="text-pencil">{words.previewEmpty}</p>
        )}
      </div>
    </div>
  );
}

/** The same model and length as we would build it, where the skier chose otherwise. */
function useRecommendedFlex({ sheet, catalog }: Props): SkiFlex | null {
  const { answers, choices, assessment } = sheet;
  const { core, reinforcements, flexRatio } = choices;
  const isChanged = core !== undefined || reinforcements !== undefined || flexRatio !== undefined;
  const model = assessment.spec?.model;
  const lengthCm = assessment.spec?.lengthCm;
  return useMemo(() => {
    if (!isChanged || model === undefined || lengthCm === undefined) return null;
    return assessSheet({ answers, choices: { model, lengthCm } }, catalog).flex;
  }, [isChanged, answers, model, lengthCm, catalog]);
}

export function AxisPart(
  props: Props & { readonly compareHref?: string | undefined; readonly dense?: boolean | undefined },
) {
  const { sheet, words, pair, pictureBase, dense } = props;
  const recommended = useRecommendedFlex(props);
  const { flex } = sheet.assessment;
  if (!pair || !flex) return null;
  const { shape, mountMm } = pair.look;
  return (
    <section aria-labelledby="axis-title" className="border-b border-rule py-8">
      <h2 id="axis-title" className="mb-2 text-lg">
        {words.axis}
      </h2>
      {props.compareHref ? (
        <p className="no-print mb-4">
          <a href={props.compareHref} className="inline-flex min-h-9 items-center">
            {words.compare}
          </a>
        </p>
      ) : null}
      <More summary={words.stand.numbers} open={dense === true}>
        <AxisChart
          title={pair.title}
          builds={[
            { label: pair.title, shape, flex, mountMm },
            ...(recommended ? [{ label: words.asRecommended, shape, flex: recommended, mountMm }] : []),
          ]}
          pair={{ look: pair.look, pictureBase }}
        />
      </More>
    </section>
  );
}
