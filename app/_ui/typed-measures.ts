/** Height and mass in words: as typed, and in the other system beside it. */
import {
  feetInchesFromCm,
  heightCm,
  massKg,
  poundsFromKg,
  type TypedHeight,
  type TypedMass,
  textForPeople,
} from "#engine/units";

/** At most `decimals` digits, no trailing zeros: what a person would type. */
export function plain(value: number, decimals: number): string {
  return String(Number(textForPeople(value, decimals)));
}

/** The height in the other system, for the line under the box. */
export function otherHeight(height: TypedHeight): string {
  if (height.unit === "ft-in") return `${textForPeople(heightCm(height), 1)} cm`;
  const { feet, inches } = feetInchesFromCm(height.cm);
  return `${feet} ft ${plain(inches, 1)} in`;
}

export function otherMass(mass: TypedMass): string {
  return mass.unit === "lb" ? `${textForPeople(massKg(mass), 1)} kg` : `${textForPeople(poundsFromKg(mass.kg), 1)} lb`;
}

/** The words as typed, for a closed section: "5 ft 7 in". */
export function heightText(height: TypedHeight): string {
  return height.unit === "cm" ? `${plain(height.cm, 2)} cm` : `${height.feet} ft ${plain(height.inches, 2)} in`;
}

export function massText(mass: TypedMass): string {
  return mass.unit === "kg" ? `${plain(mass.kg, 2)} kg` : `${plain(mass.lb, 2)} lb`;
}
