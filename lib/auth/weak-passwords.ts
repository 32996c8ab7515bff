/**
 * Which passwords are refused: too short, or too little left of them once everything is taken away that whoever guesses tries
 * first. Length first: 15 characters where the password is the only proof (NIST SP 800-63B-4, section 3.1.1.2), no rule about
 * capitals or signs, no change by the calendar, and a list of what is commonly used or expected here.
 */
import type { Refusal } from "#engine/units";

/** Characters. The most keeps the time of one hash bounded; NIST asks for at least 64. */
export const passwordLength = { min: 15, max: 200 } as const;

/** So many characters must be left that are neither a known word nor a run nor a repetition. Shop practice, no source. */
const ownCharacters = 8;

/**
 * Beginnings and middles of passwords that every collection of leaked ones is full of; written down for this project from
 * common knowledge, copied from no list. Lower case, with figures in the place of letters read as letters.
 */
const commonWords: readonly string[] = [
  ...["password", "passwort", "passwd", "passphrase", "passcode", "motdepasse", "contrasena", "geheim", "secret"],
  ...[
    "qwerty",
    "qwertz",
    "azerty",
    "asdf",
    "zxcv",
    "yxcv",
    "qazwsx",
    "1q2w3e",
    "abcd",
    "letmein",
    "welcome",
    "willkommen",
  ],
  ...[
    "admin",
    "administrator",
    "root",
    "user",
    "guest",
    "test",
    "demo",
    "default",
    "changeme",
    "login",
    "master",
    "system",
  ],
  ...["iloveyou", "loveyou", "sunshine", "princess", "dragon", "monkey", "football", "baseball", "superman", "batman"],
  ...["shadow", "michael", "jordan", "charlie", "trustno", "whatever", "starwars", "computer", "internet", "freedom"],
  ...["summer", "winter", "spring", "autumn", "monday", "friday", "january", "december", "correcthorsebatterystaple"],
  ...["pairwright", "workshop", "skis", "ski", "snow", "owner", "maker", "desk", "shop", "floor"],
];

const runs = ["abcdefghijklmnopqrstuvwxyz", "01234567890", "qwertyuiop", "qwertzuiop", "asdfghjkl", "zxcvbnm"];
const leastRun = 4;

/** What stands for a letter in passwords that were meant to be clever. */
const letterFor: Readonly<Record<string, string>> = {
  "0": "o",
  "1": "i",
  "3": "e",
  "4": "a",
  "5": "s",
  "7": "t",
  "@": "a",
  $: "s",
  "!": "i",
};

/**
 * Why a password is refused, or null when it is taken.
 * @param known names and words that somebody would try here: the person's, the workshop's, the address
 */
export function weakPassword(password: string, known: readonly string[], path = "password"): Refusal | null {
  const { min, max } = passwordLength;
  const { length } = [...password];
  if (length < min || length > max) return { code: "password-length", path, length, min, max };
  const own = leftOf(password, known);
  return own < ownCharacters ? { code: "password-guessable", path, own, needed: ownCharacters } : null;
}

/** How many characters are left without known words, runs and repetitions; figures and signs at the end count as one. */
function leftOf(password: string, known: readonly string[]): number {
  const lower = password.toLowerCase();
  const words = [...commonWords, ...known.flatMap((text) => text.toLowerCase().split(/[^\p{L}\p{N}]+/u))]
    .filter((word) => word.length >= 3)
    .sort((a, b) => b.length - a.length);
  const ways = [lower, [...lower].map((sign) => letterFor[sign] ?? sign).join("")];
  return Math.min(...ways.map((way) => countLeft(withoutRuns(withoutWords(way, words)))));
}

function withoutWords(text: string, words: readonly string[]): string {
  return words.reduce((rest, word) => rest.replaceAll(word, " "), text);
}

/** "4567", "dcba", "poiu": four or more in a row of an alphabet or a keyboard, either way. */
function withoutRuns(text: string): string {
  const ways = runs.flatMap((run) => [run, [...run].reverse().join("")]);
  let rest = text;
  for (const way of ways)
    for (let length = way.length; length >= leastRun; length -= 1)
      for (let at = 0; at + length <= way.length; at += 1) rest = rest.replaceAll(way.slice(at, at + length), " ");
  return rest;
}

/** What is repeated counts once: "aaaaaa", "xy7xy7xy7", and every piece that has stood there before. */
function countLeft(text: string): number {
  const pieces = new Set(
    text
      .split(/[\s\p{P}\p{S}]+/u)
      .map((piece) => piece.replace(/(.+?)\1+/gu, "$1"))
      .map((piece) => piece.replace(/\d+$/u, (end) => end.slice(0, 1)))
      .filter((piece) => piece !== ""),
  );
  return [...pieces].reduce((sum, piece) => sum + [...piece].length, 0);
}
