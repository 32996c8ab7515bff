/** Which passwords are refused, and what counts as this machine: tables, without a database. */
import { describe, expect, it } from "vitest";
import { isLoopback } from "#auth/door";
import { weakPassword } from "#auth/weak-passwords";

describe("passwords", () => {
  const known = ["Ola Brandreth", "ola@thistle-yard.example", "Thistle Yard", "Lower Fennick"];

  // NIST SP 800-63B-4, 3.1.1.2: 15 characters where it is the only proof, at least 64 taken, common and expected ones refused.
  it.each([
    ["fourteen chars", "password-length"],
    ["x".repeat(201), "password-length"],
    ["passwordpassword", "password-guessable"],
    ["P@ssw0rd1234567890", "password-guessable"],
    ["Thistle Yard 2026!", "password-guessable"],
    ["olabrandreth2026", "password-guessable"],
    ["qwertyuiopasdfgh", "password-guessable"],
    ["aaaaaaaaaaaaaaaa", "password-guessable"],
    ["xy7xy7xy7xy7xy7xy7", "password-guessable"],
    ["1234567890123456", "password-guessable"],
    ["Welcome-Summer-2026", "password-guessable"],
    ["lower fennick ski", "password-guessable"],
  ])("%s is refused", (weak, refused) => {
    expect(weakPassword(weak, known)).toMatchObject({ code: refused, path: "password" });
  });

  it.each([
    "larch-board-seven",
    "four plain words here",
    "mein Hund frisst Gras",
    "Zq8!kW2#vB9$mN4",
    "x".repeat(3) + "kettle gravel moth ".repeat(8).trim(),
  ])("%s is taken", (fine) => {
    expect(weakPassword(fine, known)).toBeNull();
  });
});

describe("the ends of the rule", () => {
  // Letters in an order that is no word and no run. Beside a known word eight of them must be left.
  const letters = "jbvqxdkwrtzhgnmc";
  it.each([
    [letters.slice(0, 15), null],
    [letters.slice(0, 14), "password-length"],
    [
      Array.from({ length: 50 }, (_, i) => `${i}xyz`)
        .join(" ")
        .slice(0, 200),
      null,
    ],
    [
      Array.from({ length: 50 }, (_, i) => `${i}xyz`)
        .join(" ")
        .slice(0, 201),
      "password-length",
    ],
    ["🎿".repeat(14), "password-length"],
    [`password${letters.slice(0, 8)}`, null],
    [`password${letters.slice(0, 7)}`, "password-guessable"],
    // Three of a row are no run, four are.
    [`password${letters.slice(0, 5)}abc`, null],
    [`password${letters.slice(0, 7)}abcd`, "password-guessable"],
    [`password${letters.slice(0, 7)}dcba`, "password-guessable"],
    // Figures at the end count as one.
    [`password${letters.slice(0, 7)}2`, null],
    [`password${letters.slice(0, 6)}28`, "password-guessable"],
    [`password${letters.slice(0, 6)}2847`, "password-guessable"],
  ])("%s: %s", (password, refused) => {
    expect(weakPassword(password, [])?.code ?? null).toBe(refused);
  });

  it("says how many characters are left of how many", () => {
    expect(weakPassword(`password${letters.slice(0, 7)}`, [])).toMatchObject({ own: 7, needed: 8 });
    expect(weakPassword("short", [])).toMatchObject({ length: 5, min: 15, max: 200 });
  });
});

/** RFC 1122, 3.2.1.3: 127/8; RFC 4291, 2.5.3: ::1, and 2.5.5.2 for an IPv4 address written as IPv6. */
describe("an address", () => {
  it.each(["127.0.0.1", "127.9.9.9", "::1", "[::1]", "localhost", "::ffff:127.0.0.1"])("%s is this machine", (here) => {
    expect(isLoopback(here)).toBe(true);
  });

  it.each(["128.0.0.1", "10.0.0.1", "::2", "127.0.0.1.example", "localhost.example", "", "unknown"])(
    "%s is not",
    (elsewhere) => {
      expect(isLoopback(elsewhere)).toBe(false);
    },
  );
});
