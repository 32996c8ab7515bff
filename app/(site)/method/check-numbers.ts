/** How a checked value is written: six digits, powers of ten where a number is very large or small. */

/** A number, or numbers in rows, as in content/method-checks.json. */
export type Values = number | readonly number[] | readonly (readonly number[])[];

export function plainNumber(value: number, digits = 6): string {
  const size = Math.abs(value);
  if (size === 0) return "0";
  if (size >= 1e6 || size < 1e-3) {
    const [mantissa = "", power = "0"] = Number(value.toPrecision(digits)).toExponential().split("e");
    return `${signed(mantissa)} · 10${raised(Number(power))}`;
  }
  return signed(String(Number(value.toPrecision(digits))));
}

/** Lines of a value: one for a number or a list, one per row of a matrix. What is nothing beside its neighbours is 0. */
export function linesOf(values: Values): readonly string[] {
  if (typeof values === "number") return [plainNumber(values)];
  const rows = values.every((value) => typeof value === "number") ? [values] : values;
  const largest = Math.max(...rows.flat().map(Math.abs));
  const written = (value: number) => plainNumber(Math.abs(value) < 1e-9 * largest ? 0 : value);
  return rows.map((row) => [row].flat().map(written).join("  "));
}

/** Ends of a case's names, longest first, and the unit each stands for. */
const UNITS = [
  ["_kg_m3", "kg/m³"],
  ["_g_cm3", "g/cm³"],
  ["_g_m2", "g/m²"],
  ["_Pa_m2", "Pa·m²"],
  ["_Pa_m", "Pa·m"],
  ["_N_mm", "N/mm"],
  ["_mm4", "mm⁴"],
  ["_Nm2", "N·m²"],
  ["_Nmm", "N·mm"],
  ["_GPa", "GPa"],
  ["_MPa", "MPa"],
  ["_kPa", "kPa"],
  ["_Nm", "N·m"],
  ["_mm", "mm"],
  ["_kg", "kg"],
  ["_Hz", "Hz"],
  ["_rad", "rad"],
  ["_N", "N"],
  ["_m", "m"],
] as const;

/** "Ex_GPa" → "Ex, GPa"; a unit may also stand before a word, as in "EI_Nm2 UD" and "zbar_mm_from_bottom". */
export function nameForPeople(name: string): string {
  for (const [ending, unit] of UNITS) {
    const bare = name.replace(new RegExp(`${ending}(?=$| |_from)`), "");
    if (bare !== name) return `${bare.replaceAll("_", " ")}, ${unit}`;
  }
  return name.replaceAll("_", " ");
}

/** A share as percent with two digits that count; below a millionth of a percent it is rounding. */
export const percent = (share: number): string => (share < 1e-8 ? "0 %" : `${plainNumber(100 * share, 2)} %`);

const signed = (text: string) => text.replace("-", "−");
const raised = (power: number) =>
  String(power).replaceAll(/./g, (sign) => "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"["-0123456789".indexOf(sign)] ?? "");
