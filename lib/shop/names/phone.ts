/**
 * One form for each phone number, so that a caller is known again however the number was typed: "+" and digits as in
 * ITU-T E.164 (at most 15 digits). A number without a country is taken as a home number.
 */
import { accept, type Outcome, refuse } from "#engine/units";

const homeCountry = "1";
const homeDigits = 10;
const e164 = { min: 7, max: 15 } as const;

export function normalisePhone(typed: string, path = "phone"): Outcome<string> {
  const text = typed.trim();
  const digits = text.replaceAll(/\D/g, "");
  const hasOddSigns = /[^\d+().\-/\s]/.test(text);
  if (hasOddSigns || digits.length < e164.min || digits.length > e164.max) {
    return refuse({ code: "invalid-phone", path, value: typed, minDigits: e164.min, maxDigits: e164.max });
  }
  if (text.startsWith("+")) return accept(`+${digits}`);
  if (digits.startsWith("00")) return accept(`+${digits.slice(2)}`);
  if (digits.length === homeDigits + homeCountry.length && digits.startsWith(homeCountry)) return accept(`+${digits}`);
  return accept(`+${homeCountry}${digits}`);
}
