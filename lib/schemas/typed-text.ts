/**
 * Reads and writes body measures as people say them on the phone: "182", "1.82 m", "5 ft 7", "5'7\"", "82 kg", "149 lb".
 * What was said is kept as it was said; the SI value stands beside it.
 */
import { accept, type Outcome, refuse, type TypedHeight, type TypedMass, textForPeople } from "#engine/units";

export type UnreadMeasure = {
  readonly code: "measure-not-understood";
  readonly path: string;
  readonly value: string;
  readonly forms: string;
};

const number = String.raw`(\d+(?:[.,]\d+)?)`;
const feetInches = new RegExp(
  String.raw`^(\d+)\s*(?:ft|feet|foot|')\s*(?:${number}\s*(?:in|inch|inches|"|'')?)?$`,
  "i",
);
const metres = new RegExp(String.raw`^${number}\s*m$`, "i");
const centimetres = new RegExp(String.raw`^${number}\s*(?:cm)?$`, "i");
const pounds = new RegExp(String.raw`^${number}\s*(?:lb|lbs|pound|pounds)$`, "i");
const kilograms = new RegExp(String.raw`^${number}\s*(?:kg|kilo|kilos)?$`, "i");

/** A bare number is centimetres. Refuses what it cannot read; limits are the schema's business. */
export function readHeight(text: string): Outcome<TypedHeight, UnreadMeasure> {
  const said = text.trim().replaceAll("’", "'").replaceAll("”", '"').replaceAll("″", '"').replaceAll("′", "'");
  const imperial = feetInches.exec(said);
  if (imperial) return accept({ unit: "ft-in", feet: value(imperial[1]), inches: value(imperial[2] ?? "0") });
  const inMetres = metres.exec(said);
  if (inMetres) return accept({ unit: "cm", cm: Math.round(value(inMetres[1]) * 1e6) / 1e4 });
  const inCm = centimetres.exec(said);
  if (inCm) return accept({ unit: "cm", cm: value(inCm[1]) });
  return refuse({
    code: "measure-not-understood",
    path: "heightCm",
    value: text,
    forms: "182 cm, 1.82 m or 5 ft 7 in",
  });
}

/** A bare number is kilograms. */
export function readMass(text: string): Outcome<TypedMass, UnreadMeasure> {
  const said = text.trim();
  const inPounds = pounds.exec(said);
  if (inPounds) return accept({ unit: "lb", lb: value(inPounds[1]) });
  const inKg = kilograms.exec(said);
  if (inKg) return accept({ unit: "kg", kg: value(inKg[1]) });
  return refuse({ code: "measure-not-understood", path: "massKg", value: text, forms: "82 kg or 149 lb" });
}

function value(digits = ""): number {
  return Number(digits.replace(",", "."));
}

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
