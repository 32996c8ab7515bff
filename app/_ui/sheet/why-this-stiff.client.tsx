"use client";
/** "Why this stiff?": the skier's own numbers, most skiers', and what a change would do. Worked out only while open. */
import { useDeferredValue, useMemo, useState } from "react";
import {
  type EngineCatalog,
  MASS_STEP_KG,
  type SkiersBand,
  type StiffnessStory,
  stiffnessStory,
  type WhatIf,
} from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { newtonsPerCm } from "#engine/flex";
import { poundsFromKg, roundForPeople, textForPeople } from "#engine/units";
import { Table } from "../table";
import { fill } from "../words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly spec: PairSpec;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  /** Of the shop's own orders; without it a stated population stands in. */
  readonly band?: SkiersBand | null | undefined;
}

export function WhyThisStiff(props: Props) {
  const [open, setOpen] = useState(false);
  const { sheet, words } = props;
  if (!sheet.assessment.recommendation) return null;
  return (
    <details className="min-w-0" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="chevron inline-flex min-h-9 items-center gap-2 text-tarn underline decoration-1 underline-offset-4">
        {words.ski.stiff.summary}
      </summary>
      {open ? <Story {...props} /> : null}
    </details>
  );
}

function Story({ sheet, spec, catalog, words, band }: Props) {
  const input = useMemo(() => ({ answers: sheet.answers, spec }), [sheet.answers, spec]);
  const settled = useDeferredValue(input);
  const story = useMemo(() => stiffnessStory(settled.answers, settled.spec, catalog, band), [settled, catalog, band]);
  if (!story) return null;
  const isImperial = sheet.typed.mass?.unit === "lb";
  return (
    <div className="grid grid-cols-1 gap-3 pt-2 pb-3">
      <Sentences story={story} words={words} isImperial={isImperial} />
      <Changes story={story} words={words} isImperial={isImperial} />
      <p className="max-w-measure text-sm text-pencil">
        {fill(words.ski.stiff.formula, { exponent: plainText(story.massExponent), version: story.fitVersion })}
      </p>
    </div>
  );
}

interface PartProps {
  readonly story: StiffnessStory;
  readonly words: SheetWords;
  /** The skier gave the weight in pounds: weights in pounds, and inches beside what a hand can measure. */
  readonly isImperial: boolean;
}

function Sentences({ story, words, isImperial }: PartProps) {
  const w = words.ski.stiff;
  const { now, band, place, twist } = story;
  return (
    <div className="grid max-w-measure gap-2">
      <p>
        {fill(w.bend, {
          mass: massOf(story.riderKg, isImperial),
          gear: massOf(story.gearKg, isImperial),
          bend: bendOf(now.bendMm, isImperial),
          percent: textForPeople(now.bendPercent, 1),
          span: roundForPeople(story.spanMm),
          ten: textForPeople(story.bendUnderTenKgMm, 1),
        })}
      </p>
      {band && place ? (
        <p>
          {fill(w[band.from], {
            model: story.modelName,
            low: textForPeople(band.lowPercent, 1),
            high: textForPeople(band.highPercent, 1),
            count: band.count,
          })}{" "}
          {w.places[place]}
        </p>
      ) : null}
      <p>
        {fill(w.twist, {
          moment: roundForPeople(twist.edgeMomentNm),
          degrees: textForPeople(twist.degrees, 1),
          reference: massOf(twist.referenceKg, isImperial),
          referenceDegrees: textForPeople(twist.referenceDegrees, 1),
          wanted: textForPeople(twist.wantedTorsion, 2),
          built: textForPeople(twist.builtTorsion, 2),
        })}
      </p>
      <p className="text-sm text-pencil">{w.caution}</p>
    </div>
  );
}

function Changes({ story, words, isImperial }: PartProps) {
  const w = words.ski.stiff;
  const { now } = story;
  const isNow = (row: WhatIf) => row.change === "now";
  const value = (row: WhatIf, of: (each: WhatIf) => number, decimals: number) => (
    <>
      {textForPeople(of(row), decimals)}
      {isNow(row) ? null : <span className="block text-sm text-pencil">{signed(of(row) - of(now), decimals)}</span>}
    </>
  );
  const flexClass = (row: WhatIf) => `, ${row.flexClass ?? w.outside}`;
  const step = massOf(MASS_STEP_KG, isImperial);
  return (
    <Table<WhatIf>
      caption={w.table}
      dense
      rows={[now, ...story.whatIfs]}
      rowKey={(row) => row.change}
      columns={[
        { key: "change", head: w.columns.change, cell: (row) => fill(w.changes[row.change], { step }) },
        { key: "length", head: w.columns.length, numeric: true, cell: (row) => value(row, (each) => each.lengthCm, 0) },
        {
          key: "flex",
          head: w.columns.flex,
          numeric: true,
          cell: (row) => (
            <>
              {textForPeople(row.flexRatio, 2)}
              {flexClass(row)}
              {isNow(row) ? null : (
                <span className="block text-sm text-pencil">{signed(row.flexRatio - now.flexRatio, 2)}</span>
              )}
            </>
          ),
        },
        {
          key: "spring",
          head: w.columns.spring,
          numeric: true,
          cell: (row) => value(row, (each) => newtonsPerCm(each.springCentreNPerMm), 1),
        },
        { key: "bend", head: w.columns.bend, numeric: true, cell: (row) => value(row, (each) => each.bendMm, 0) },
        {
          key: "percent",
          head: w.columns.percent,
          numeric: true,
          cell: (row) => value(row, (each) => each.bendPercent, 1),
        },
      ]}
    />
  );
}

const MM_PER_INCH = 25.4;
const plainText = (value: number) => String(roundForPeople(value, 2));

function massOf(kg: number, isImperial: boolean): string {
  return isImperial ? `${roundForPeople(poundsFromKg(kg))} lb` : `${plainText(roundForPeople(kg, 1))} kg`;
}

function bendOf(mm: number, isImperial: boolean): string {
  const text = `${roundForPeople(mm)} mm`;
  return isImperial ? `${text} (${textForPeople(mm / MM_PER_INCH, 1)} in)` : text;
}

/** A difference with its sign; what rounds away is said to be the same. */
function signed(difference: number, decimals: number): string {
  const size = textForPeople(Math.abs(difference), decimals);
  if (Number(size) === 0) return "=";
  return `${difference < 0 ? "−" : "+"}${size}`;
}
