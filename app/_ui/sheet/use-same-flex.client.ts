"use client";
/**
 * The search for other builds of the same flex, only while somebody looks at it: in slices between which the page
 * answers as always. Taking one of the builds found compares them anew without a new search.
 */
import { useEffect, useState } from "react";
import {
  beginSameFlex,
  comparedWith,
  type EngineCatalog,
  gatherSameFlex,
  type Judged,
  judgeSameFlex,
  type SameFlexOptions,
  type SheetInput,
} from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";

export interface SameFlexState {
  /** Null until the search is through, or when the sheet has no build to compare with. */
  readonly found: SameFlexOptions | null;
  readonly isWorking: boolean;
  readonly progress: { readonly done: number; readonly all: number };
}

/** After the last change of the sheet, before a search begins. */
const settleMs = 400;
/** A slice may hold the page no longer than about a frame. */
const sliceMs = 12;

const nothingDone: SameFlexState["progress"] = { done: 0, all: 1 };

interface Kept {
  readonly key: string;
  readonly found: SameFlexOptions | null;
}

/** Everything that decides the search but the build itself, by value. */
function keyOf({ answers, choices }: SheetInput): string {
  const { core: _, reinforcements: __, ...others } = choices;
  return JSON.stringify([answers, others]);
}

export function useSameFlex(sheet: SheetInput, spec: PairSpec, catalog: EngineCatalog, isOpen: boolean): SameFlexState {
  const [kept, setKept] = useState<Kept | null>(null);
  const [progress, setProgress] = useState(nothingDone);
  const { answers, choices } = sheet;
  const key = keyOf(sheet);
  const last = kept?.key === key ? kept : null;
  const found = last?.found ? comparedWith(last.found, spec) : null;
  const isKnown = last !== null && (found !== null || last.found === null);
  const wanted = isKnown ? null : JSON.stringify([key, spec.core, spec.reinforcements]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `wanted` holds every input by value
  useEffect(() => {
    if (!isOpen || wanted === null) return;
    const end = (result: SameFlexOptions | null) => setKept({ key, found: result });
    setProgress(nothingDone);
    let timer = setTimeout(() => {
      const search = beginSameFlex({ answers, choices }, catalog);
      if (!search.ok) return end(null);
      const { value } = search;
      const judged: Judged[] = [];
      const slice = () => {
        const until = performance.now() + sliceMs;
        while (judged.length < value.candidates.length && performance.now() < until) {
          const next = value.candidates[judged.length];
          if (next) judged.push(judgeSameFlex(value, next, catalog));
        }
        if (judged.length >= value.candidates.length) return end(gatherSameFlex(value, judged));
        setProgress({ done: judged.length, all: value.candidates.length });
        timer = setTimeout(slice, 0);
      };
      slice();
    }, settleMs);
    return () => clearTimeout(timer);
  }, [catalog, isOpen, wanted]);
  return { found: found ?? last?.found ?? null, isWorking: wanted !== null, progress };
}
