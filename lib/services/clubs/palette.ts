/** A club's palette as the choices that a skier's sheet begins with. */
import type { GraphicSpec, PairSpec } from "#engine/configuration";
import type { ClubPalette } from "./views";

/** Ahead of the binding of every model; the sheet moves it where it reads best. */
const nameAtMm = 520;
const nameHeightMm = 28;

/** @param skierName "" leaves the name out */
export function paletteGraphic({ house, isNamed }: ClubPalette, skierName: string): GraphicSpec {
  const text = skierName.trim().toUpperCase();
  return {
    kind: "house",
    house,
    layout: "same",
    windows: [],
    ...(isNamed && text !== "" ? { text: { text, xMm: nameAtMm, capHeightMm: nameHeightMm } } : {}),
  };
}

/** Whether a pair has left the club's colours or graphic. */
export function leavesPalette(spec: PairSpec, palette: ClubPalette): boolean {
  const { base, graphic } = spec;
  const isSameBase = base.left === palette.base.left && base.right === palette.base.right;
  return !isSameBase || graphic.kind !== "house" || graphic.house !== palette.house;
}
