/** The workshop's own graphics, worked out from parameters: no picture file, sharp at any size, the same on screen and paper. */
import type { HouseGraphic } from "#engine/configuration";
import type { Mark, Paint } from "../types";
import type { Draw, PatternArea } from "./area";
import { branch } from "./branch";
import { earlierDrawings } from "./earlier";
import { folds } from "./folds";
import { relief } from "./relief";
import { shards } from "./shards";

export type { PatternArea } from "./area";

const drawings: Readonly<Record<HouseGraphic["pattern"], Draw>> = { ...earlierDrawings, branch, relief, folds, shards };

/** The marks of a house graphic, from the ground up; the outline that clips them is the caller's. */
export function housePattern(
  { pattern, colours }: Pick<HouseGraphic, "pattern" | "colours">,
  area: PatternArea,
): readonly Mark[] {
  return drawings[pattern](area, colours).flatMap(({ d, fill, stroke, strokeWidthMm = 0 }): Mark[] => [
    ...(fill === undefined ? [] : [{ kind: "fill", d, paint: fill as Paint, evenOdd: true } as const]),
    ...(stroke === undefined || strokeWidthMm === 0
      ? []
      : [{ kind: "line", d, paint: stroke as Paint, widthMm: strokeWidthMm } as const]),
  ]);
}

/** The second ski of an "alternate" pair takes the palette the other way round. */
export function otherPalette(graphic: HouseGraphic): HouseGraphic {
  return { ...graphic, colours: [...graphic.colours].reverse() };
}
