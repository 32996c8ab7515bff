/** Notices a mass typed in the other unit, and offers the mass that was probably meant. */
import { kgFromPounds, poundsFromKg, textForPeople } from "#engine/units";
import { bodyMassIndex } from "./answers";
import type { FitAnswers, FlagLimits, FlagSuggestion, TypedMeasures } from "./types";

/** One measure in each system: 180 lb beside 180 cm. */
export function hasMixedUnits(typed: TypedMeasures | undefined): boolean {
  if (typed?.height === undefined || typed.mass === undefined) return false;
  return (typed.height.unit === "cm") !== (typed.mass.unit === "kg");
}

/**
 * The same number read in the other unit, if that makes a believable body: too heavy in kg may be pounds, too light in
 * pounds may be kg. Null when neither does.
 */
export function massSlip(answers: FitAnswers, limits: FlagLimits): FlagSuggestion | null {
  const { heightCm, massKg } = answers;
  const isBelievable = (kg: number) => {
    const index = bodyMassIndex(heightCm, kg);
    return index >= limits.bodyMassIndexMin && index <= limits.bodyMassIndexMax;
  };
  const asPounds = kgFromPounds(massKg);
  if (isBelievable(asPounds)) {
    const label = `${textForPeople(massKg, decimalsOf(massKg))} lb (${textForPeople(asPounds, 1)} kg)?`;
    return { path: "massKg", value: asPounds, label, typed: { mass: { unit: "lb", lb: massKg } } };
  }
  const asKg = poundsFromKg(massKg);
  if (isBelievable(asKg)) {
    const kg = answers.typed?.mass?.unit === "lb" ? answers.typed.mass.lb : asKg;
    const label = `${textForPeople(kg, decimalsOf(kg))} kg (${textForPeople(poundsFromKg(kg), 1)} lb)?`;
    return { path: "massKg", value: kg, label, typed: { mass: { unit: "kg", kg } } };
  }
  return null;
}

function decimalsOf(value: number): 0 | 1 {
  return Number.isInteger(value) ? 0 : 1;
}
