"use client";
/** The sheet that the page is about, for what stands deep inside it. */
import { createContext, useContext } from "react";
import type { EngineCatalog } from "#engine/assessment";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export interface SheetAround {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

export const Around = createContext<SheetAround | null>(null);

/** @throws when there is no sheet around */
export function useSheetAround(): SheetAround {
  const around = useContext(Around);
  if (around === null) throw new Error("no sheet around");
  return around;
}
