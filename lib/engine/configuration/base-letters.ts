/** Letters cut into the base: how high they can be on this ski, where they lie, and how many pieces they make. */
import { halfWidthAt, type SkiShape } from "#engine/geometry";
import type { BaseLetterRules } from "./types";

export interface LetterRow {
  readonly capHeightMm: number;
  /** From the tip; the row reads along the ski. */
  readonly fromXMm: number;
  readonly toXMm: number;
  /** Spaces left out. */
  readonly letters: number;
  /** Closed counters, as in O and A: loose pieces of the ski's own base that go back into the letter. */
  readonly islands: number;
}

const STEP_MM = 1;

/**
 * The highest letters, in whole millimetres from the shop's height down, that leave `fromEdgeMm` of base on both sides all
 * along the row and end before the heel.
 *
 * @param edgeWidthMm of the steel, which is no base
 * @returns null when not even the lowest letters fit
 */
export function letterRow(
  text: string,
  shape: SkiShape,
  edgeWidthMm: number,
  rules: BaseLetterRules,
): LetterRow | null {
  const characters = [...text.trim()];
  const drawn = characters.filter((character) => character.trim() !== "");
  const fromXMm = shape.tipLengthMm + rules.fromShoulderMm;
  const lastXMm = shape.lengthMm - shape.tailLengthMm - rules.fromShoulderMm;
  for (let capHeightMm = rules.capHeightMm; capHeightMm >= rules.leastCapHeightMm; capHeightMm -= STEP_MM) {
    const toXMm = fromXMm + characters.length * rules.advance * capHeightMm;
    const roomMm = 2 * (narrowestHalfMm(shape, fromXMm, toXMm) - edgeWidthMm - rules.fromEdgeMm);
    if (toXMm > lastXMm || roomMm < capHeightMm) continue;
    const islands = drawn.reduce((sum, character) => sum + (rules.islands[character] ?? 0), 0);
    return { capHeightMm, fromXMm, toXMm, letters: drawn.length, islands };
  }
  return null;
}

const SAMPLES = 24;

function narrowestHalfMm(shape: SkiShape, fromMm: number, toMm: number): number {
  const ends = Math.min(toMm, shape.lengthMm);
  return Math.min(
    ...Array.from({ length: SAMPLES + 1 }, (_, i) => halfWidthAt(shape, fromMm + ((ends - fromMm) * i) / SAMPLES)),
  );
}
