/** What the parts of the graphic section share. */
import type { EngineCatalog } from "#engine/assessment";
import type { GraphicSpec, PairSpec } from "#engine/configuration";
import type { SkiShape } from "#engine/geometry";
import type { RightsStatement } from "#services/views";
import { moneyChangeText } from "../money";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export interface PictureActions {
  readonly uploadUrl: string;
  /** The picture is at this address, a slash and its id. */
  readonly pictureBase: string;
  readonly stateRights: (
    artworkId: string,
    basis: RightsStatement["basis"],
    name: string,
  ) => Promise<{ readonly ok: boolean; readonly message?: string }>;
}

export interface GraphicSectionProps {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly pictures: PictureActions;
}

export interface GraphicPartProps extends GraphicSectionProps {
  readonly spec: PairSpec;
  readonly shape: SkiShape;
  readonly set: (part: Partial<GraphicSpec>) => void;
}

/** Where lettering begins to stand. */
export function firstText(shape: SkiShape): { readonly xMm: number; readonly capHeightMm: number } {
  return { xMm: Math.round(shape.tipLengthMm + 230), capHeightMm: 28 };
}

export function optionPrice(catalog: EngineCatalog, code: string): string {
  return moneyChangeText(catalog.priceBook.optionCents[code]?.cents ?? 0);
}
