/** Writes body measures as people said them: what was said is kept as it was said; the SI value stands beside it. */
import { type TypedHeight, type TypedMass, textForPeople } from "#engine/units";

/** As it was said: "5 ft 7 in", "182 cm". */
export function heightText(height: TypedHeight): string {
  if (height.unit === "cm") return `${plain(height.cm)} cm`;
  return `${height.feet} ft ${plain(height.inches)} in`;
}

/** As it was said: "149 lb", "82 kg". */
export function massText(mass: TypedMass): string {
  return mass.unit === "kg" ? `${plain(mass.kg)} kg` : `${plain(mass.lb)} lb`;
}

/** Up to two decimals, none that are not there. */
function plain(amount: number): string {
  return String(Number(textForPeople(amount, 2)));
}
