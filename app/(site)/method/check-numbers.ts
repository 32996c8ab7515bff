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

/** Lines of a value: one for a number or a list, one per row of a matrix. */
export function linesOf(values: Values, digits?: number): readonly string[] {
  if (typeof values === "number") return [plainNumber(values, digits)];
  const rows = values.every((value) => typeof value === "number") ? [values] : values;
  return rows.map((row) =>
    [row]
      .flat()
      .map((value) => plainNumber(value, digits))
      .join("  "),
  );
}

/** A share as percent with two digits that count; below a millionth of a percent it is rounding. */
export const percent = (share: number): string => (share < 1e-8 ? "0 %" : `${plainNumber(100 * share, 2)} %`);

const signed = (text: string) => text.replace("-", "−");
const raised = (power: number) =>
  String(power).replaceAll(/./g, (sign) => "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"["-0123456789".indexOf(sign)] ?? "");
