/**
 * Body measures in both systems. Conversion factors are exact by definition
 * (international yard and pound agreement, 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg).
 */
const CM_PER_INCH = 2.54;
const KG_PER_POUND = 0.45359237;
const INCHES_PER_FOOT = 12;

export function cmFromFeetInches(feet: number, inches: number): number {
  return (feet * INCHES_PER_FOOT + inches) * CM_PER_INCH;
}

export function kgFromPounds(pounds: number): number {
  return pounds * KG_PER_POUND;
}

export function poundsFromKg(kg: number): number {
  return kg / KG_PER_POUND;
}

export function feetInchesFromCm(cm: number): { readonly feet: number; readonly inches: number } {
  const total = cm / CM_PER_INCH;
  const feet = Math.floor(total / INCHES_PER_FOOT);
  return { feet, inches: total - feet * INCHES_PER_FOOT };
}

/** Of a possible person, wider than the fit accepts: an unlikely measure is a flag with a script, not a refusal. */
export const heightLimitsCm = { min: 90, max: 250 } as const;
export const massLimitsKg = { min: 15, max: 300 } as const;

/** A height as it was typed, kept for ever beside the centimetres it means. */
export type TypedHeight =
  | { readonly unit: "cm"; readonly cm: number }
  | { readonly unit: "ft-in"; readonly feet: number; readonly inches: number };

/** A mass as it was typed. */
export type TypedMass = { readonly unit: "kg"; readonly kg: number } | { readonly unit: "lb"; readonly lb: number };

export function heightCm(height: TypedHeight): number {
  return height.unit === "cm" ? height.cm : cmFromFeetInches(height.feet, height.inches);
}

export function massKg(mass: TypedMass): number {
  return mass.unit === "kg" ? mass.kg : kgFromPounds(mass.lb);
}
