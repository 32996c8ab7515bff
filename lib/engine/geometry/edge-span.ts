import type { SkiShape } from "./types";

/** Where the steel of a partial wrap begins and ends, mm from the tip: half of the surplus beyond shoulder and heel each. */
export function edgeSpanMm(
  shape: SkiShape,
  edgeBeyondSidecutMm: number,
): { readonly fromMm: number; readonly toMm: number } {
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  return { fromMm: shape.tipLengthMm - edgeBeyondSidecutMm / 2, toMm: heelMm + edgeBeyondSidecutMm / 2 };
}
