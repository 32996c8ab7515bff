/** Bevels and structure for a skier on a kind of ski, read from the shop's table. */
import { abilityThatCounts } from "./answers";
import type { Ability, BevelRow, Finish, FinishTable, FitAnswers, FitCoefficients } from "./types";

export interface FinishAdvice {
  readonly finish: Finish;
  /** Row of the table that it comes from. */
  readonly row: string;
}

/** @throws RangeError when no row of the table holds */
export function recommendFinish(
  answers: FitAnswers,
  use: string,
  table: FinishTable,
  coefficients: FitCoefficients,
): FinishAdvice {
  const ability = abilityThatCounts(answers, coefficients);
  const row = table.bevels.find((each) => holds(each, use, ability));
  if (row === undefined)
    throw new RangeError(`no row of the finish table holds for use "${use}" and ability "${ability}"`);
  const structure =
    answers.homeSnow === undefined ? table.structureUnanswered : table.structureBySnow[answers.homeSnow];
  const { baseBevelDeg, sideAngleDeg, detuneTipMm, detuneTailMm } = row;
  return { finish: { baseBevelDeg, sideAngleDeg, detuneTipMm, detuneTailMm, structure }, row: row.id };
}

function holds(row: BevelRow, use: string, ability: Ability): boolean {
  return (row.uses?.includes(use) ?? true) && (row.abilities?.includes(ability) ?? true);
}
