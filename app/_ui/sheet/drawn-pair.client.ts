"use client";
/** The pair that the sheet describes, ready to be drawn, with the words that stand beside it. */
import { useMemo } from "react";
import { type EngineCatalog, feelOf } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { type PairLook, pairLook, withThickness } from "#engine/scene";
import { fill } from "../words";
import { choiceFor, modelName } from "./labels";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export interface DrawnPair {
  readonly spec: PairSpec;
  readonly look: PairLook;
  /** "Midlow 95, 178 cm". */
  readonly title: string;
  /** What it will feel like; empty until it is solved. */
  readonly feel: string;
}

export function useDrawnPair(sheet: SheetState, catalog: EngineCatalog, words: SheetWords): DrawnPair | null {
  const { spec, assessment } = sheet;
  const { finishedFlex } = assessment;
  return useMemo(() => {
    const look = spec && pairLook(spec, catalog.build);
    if (!spec || !look) return null;
    const ownRatio = choiceFor(assessment, spec.model)?.flexRatio;
    return {
      spec,
      look: withThickness(look, finishedFlex?.stations),
      title: `${modelName(catalog, spec.model)}, ${spec.lengthCm} cm`,
      feel: finishedFlex ? feelText(words, feelOf(spec, look.shape, finishedFlex, ownRatio)) : "",
    };
  }, [catalog, spec, assessment, finishedFlex, words]);
}

function feelText({ feel }: SheetWords, all: ReturnType<typeof feelOf>): string {
  const told = all.map(({ about, word }) => [about, (feel[about] as Readonly<Record<string, string>>)[word] ?? word]);
  return fill(feel.sentence, Object.fromEntries(told));
}
