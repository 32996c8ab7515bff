/**
 * One form for each telephone number, so that a caller is known again however the number was typed: E.164, as the
 * library of numbering plans reads it. A number without a country is one of the shop's own country. What counts is
 * whether a number is possible by its length: examples for books (555-01xx) and ranges opened last week are, too.
 */

import { isSupportedCountry, type PhoneNumber, parsePhoneNumberFromString } from "libphonenumber-js/min";
import { accept, type Outcome, refuse } from "#engine/units";
import { currentCatalog } from "#shop/catalogue/current";

const homeCountry = () => currentCatalog().shop.country;

/** The number as E.164. Refuses `invalid-phone`. */
export function normalisePhone(typed: string, path = "phone", home = homeCountry()): Outcome<string> {
  const number = possibleNumber(typed, home);
  if (number === null) return refuse({ code: "invalid-phone", path, value: typed });
  return accept(number.number);
}

/**
 * Every form under which this number may be stored, E.164 first. Earlier versions kept the digits nearly as they were
 * typed, under +1 where no country was named; such rows are found and get their E.164 when they are next written.
 */
export function storedForms(typed: string, home = homeCountry()): readonly string[] {
  const number = possibleNumber(typed, home);
  const earlier = [earlierForm(typed), ...(number === null ? [] : earlierSpellings(number))];
  const own = number === null ? [] : [number.number];
  return [...new Set([...own, ...earlier.filter((form) => form !== null && isNobodyElse(form, number))])] as string[];
}

/** Runs of digits that a search for this text looks for within stored numbers: as typed, and of the whole number. */
export function digitsToFind(text: string): readonly string[] {
  const typed = text.replaceAll(/\D/g, "");
  if (typed.length < fewestDigitsToFind) return [];
  return [...new Set([typed, ...storedForms(text).map((form) => form.slice(1))])];
}

const fewestDigitsToFind = 4;

function possibleNumber(typed: string, country: string): PhoneNumber | null {
  // "00" is what most of the world dials before a country; the shop's own country may dial something else.
  const text = typed.trim().replace(/^0\s*0/, "+");
  const home = isSupportedCountry(country) ? { defaultCountry: country } : {};
  const number = parsePhoneNumberFromString(text, { ...home, extract: false });
  return number?.isPossible() ? number : null;
}

/** The rule of earlier versions. */
function earlierForm(typed: string): string | null {
  const text = typed.trim();
  const digits = text.replaceAll(/\D/g, "");
  if (/[^\d+().\-/\s]/.test(text) || digits.length < 7 || digits.length > 15) return null;
  if (text.startsWith("+")) return `+${digits}`;
  if (digits.startsWith("00")) return `+${digits.slice(2)}`;
  return digits.length === 11 && digits.startsWith("1") ? `+${digits}` : `+1${digits}`;
}

/** What that rule made of the two usual spellings of a number abroad: +44 (0)20 … and 011 44 20 … */
function earlierSpellings({ countryCallingCode, nationalNumber }: PhoneNumber): readonly string[] {
  if (countryCallingCode === "1") return [];
  return [`+${countryCallingCode}0${nationalNumber}`, `+1011${countryCallingCode}${nationalNumber}`];
}

/** False for an old form that some numbering plan gives out as another number: it may be somebody else's. */
function isNobodyElse(form: string, number: PhoneNumber | null): boolean {
  const read = parsePhoneNumberFromString(form, { extract: false });
  return !read?.isValid() || read.number === number?.number;
}
