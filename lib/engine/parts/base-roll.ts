/** What a pair takes off the rolls of base sheet, and for which pairs a roll does not last. */
import type { PairSpec } from "#engine/configuration";
import type { PartLine, PartsList, PartsRules } from "./types";

export interface BaseUse {
  /** Base colour id. */
  readonly colour: string;
  /** As the shelves name it. */
  readonly material: string;
  /** The same sheet whatever its colour. */
  readonly sheet: string;
  /** Length of roll, m. */
  readonly needM: number;
}

const mmPerM = 1000;

/** A base sheet in a colour, as the shelves name it. @param sheet the sheet whatever its colour */
export function baseMaterial(sheet: string, colourLabel: string): string {
  return `${sheet}, ${colourLabel}`;
}

/**
 * Length of roll for each colour of a pair. Two skis of one colour lie side by side where the roll is wide enough:
 * 2 × (W + margin) ≤ roll width (2 × (132 + 10) = 284 mm of 300 mm; common practice, no source); each ski of
 * a two-coloured pair takes its own length, and letters come out of the same sheets.
 *
 * @throws RangeError when the parts list has no bases
 */
export function baseUse(spec: PairSpec, { lines }: PartsList, { cut }: PartsRules): readonly BaseUse[] {
  const [left, right] = (["base-left", "base-right"] as const).map((code) => lines.find((line) => line.code === code));
  if (left?.lengthMm == null || right?.lengthMm == null || left.widthMm == null) {
    throw new RangeError("baseUse: the parts list has no bases");
  }
  const use = (colour: string, { material, sheet = material }: PartLine, lengthMm: number): BaseUse => ({
    colour,
    material,
    sheet,
    needM: lengthMm / mmPerM,
  });
  if (spec.base.left !== spec.base.right) {
    return [use(spec.base.left, left, left.lengthMm), use(spec.base.right, right, right.lengthMm)];
  }
  const widestMm = left.widthMm - cut.baseExtraWidthMm;
  const isSideBySide = 2 * (widestMm + cut.baseNestMarginMm) <= cut.baseRollWidthMm;
  return [use(spec.base.left, left, left.lengthMm * (isSideBySide ? 1 : 2))];
}

/**
 * Serves pairs from a roll in the order given; who finds too little goes without, and a later one that needs less may still be
 * served.
 *
 * @param leftM what is left of the roll, m
 * @returns which of the needs are served, and how much is lacking for all, m
 */
export function serveFromRoll(
  needsM: readonly number[],
  leftM: number,
): { readonly isServed: readonly boolean[]; readonly shortM: number } {
  let left = leftM;
  const isServed = needsM.map((needM) => {
    const fits = needM <= left + 1e-9;
    if (fits) left -= needM;
    return fits;
  });
  const needed = needsM.reduce((sum, needM) => sum + needM, 0);
  return { isServed, shortM: Math.max(0, needed - leftM) };
}
