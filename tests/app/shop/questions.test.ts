/** Questions in the address: what is read of them, and the words for what cannot be. */
import { describe, expect, it } from "vitest";
import { visitorAddress } from "#app/_server/address.ts";
import { breakdownSchema } from "#app/shop/(staff)/queue/breakdown/read-input.ts";
import { whatIfFields, whatIfSchema } from "#app/shop/(staff)/queue/what-if/read-input.ts";
import { safeBackPath } from "#app/shop/sign-in/back-path.ts";
import { optionChoice } from "#app/shop/strip-option-words.ts";
import words from "#content/copy/rework.json";
import type { StripOption } from "#services";

const wordsOf = (read: { success: boolean; error?: { issues: readonly { message: string }[] } | undefined }) =>
  read.error?.issues.map(({ message }) => message) ?? [];

describe("what broke", () => {
  const read = (known: object) => breakdownSchema.safeParse(known);
  it("is read on the shop's clock, metres with point or comma", () => {
    const down = { kind: "press-down", press: "press-1", from: "2026-11-16T07:30", until: "2026-11-18T16:30" };
    // Winter in Denver is seven hours behind UTC.
    expect(read(down).data).toEqual({ ...down, from: "2026-11-16T14:30:00.000Z", until: "2026-11-18T23:30:00.000Z" });
    const short = { kind: "base-short", colour: "lake", leftM: " 12,5 ", expectedOn: "2026-12-01" };
    expect(read(short).data).toEqual({ ...short, leftM: 12.5 });
    expect(read({ ...short, leftM: "999.125" }).data).toMatchObject({ leftM: 999.125 });
    expect(
      read({ kind: "ski-rebuild", pairId: "p-1", side: "R", fromStation: "base-cut", fault: "core-wrong" }).data,
    ).toMatchObject({ fromStation: "base-cut", side: "R" });
  });
  it("is told by field, with what was typed unless nothing was", () => {
    expect(wordsOf(read({ kind: "press-down", press: "", from: "", until: "soon" }))).toEqual([
      "Press: choose one",
      "From: a day and a time are needed",
      "Until: a day and a time are needed",
    ]);
    const short = { kind: "base-short", colour: "", leftM: "", expectedOn: "x" };
    expect(wordsOf(read(short))).toEqual([
      "Base colour: choose one",
      "Left on the roll: a number of metres is needed, such as 12.5",
      "Expected on: a day is needed",
    ]);
    expect(wordsOf(read({ ...short, colour: "lake", leftM: "1000", expectedOn: "2026-12-01" }))).toEqual([
      "Left on the roll: a number of metres is needed, such as 12.5, not “1000”",
    ]);
    const rebuild = { kind: "ski-rebuild", pairId: "", side: "L", fromStation: "", fault: "none" };
    const [pair, station, fault] = wordsOf(read(rebuild));
    expect([pair, fault]).toEqual(["Pair: choose one", "What is wrong: choose one"]);
    expect(station).not.toContain("not “");
  });
});

describe("what if", () => {
  const read = (known: object) => whatIfSchema.safeParse(known);
  it("is read in whole numbers and factors", () => {
    expect(read({ kind: "club-order", pairs: "8" }).data).toEqual({ kind: "club-order", pairs: 8 });
    expect(read({ kind: "rework", factor: "1,5" }).data).toEqual({ kind: "rework", factor: 1.5 });
    expect(read({ kind: "supplier-lead", station: "5", weeks: "12" }).data).toMatchObject({ weeks: 12 });
  });
  it("is told by field", () => {
    expect(wordsOf(read({ kind: "club-order", pairs: "" }))).toEqual(["Pairs: a whole number is needed"]);
    expect(wordsOf(read({ kind: "club-order", pairs: "1000" }))).toEqual([
      "Pairs: a whole number is needed, not “1000”",
    ]);
    expect(wordsOf(read({ kind: "rework", factor: "much" }))).toEqual([
      "Rework: a number such as 2 or 1.5 is needed, not “much”",
    ]);
    expect(wordsOf(read({ kind: "closure", from: "x", until: "2026-12-01" }))).toEqual(["From: a day is needed"]);
  });
});

describe("a question sent without an answer", () => {
  const fieldsOf = (schema: typeof breakdownSchema | typeof whatIfSchema, known: object) =>
    Object.fromEntries(
      schema.safeParse(known).error?.issues.map(({ path, message }) => [path.join("."), message]) ?? [],
    );
  const time = (label: string) => `${label}: a day and a time are needed`;
  const day = (label: string) => `${label}: a day is needed`;
  const empty = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, ""]));

  it.each([
    ["press-down", { press: "Press: choose one", from: time("From"), until: time("Until") }],
    ["person-away", { person: "Person: choose one", from: time("From"), until: time("Until") }],
    ["supplier-late", { station: "Station: choose one", expectedOn: day("Expected on") }],
    [
      "base-short",
      {
        colour: "Base colour: choose one",
        leftM: "Left on the roll: a number of metres is needed, such as 12.5",
        expectedOn: day("Expected on"),
      },
    ],
    [
      "ski-rebuild",
      { pairId: "Pair: choose one", fromStation: "From station: choose one", fault: "What is wrong: choose one" },
    ],
    ["proof-late", { pairId: "Pair: choose one", expectedOn: day("Expected on") }],
  ])("about %s is told by the label of each field", (kind, told) => {
    const sent = { kind, ...empty(Object.keys(told)), side: "L", material: "" };
    expect(fieldsOf(breakdownSchema, sent)).toEqual(told);
  });

  it.each([
    ["hire", { stations: "Stations: numbers from 1 to 14 with commas between them are needed", from: day("From") }],
    ["second-press", { from: day("From") }],
    ["closure", { from: day("From"), until: day("Until") }],
    ["club-order", { pairs: "Pairs: a whole number is needed" }],
    ["rework", { factor: "Rework: a number such as 2 or 1.5 is needed" }],
    ["drop-mould", { from: day("From"), until: day("Until") }],
    ["supplier-lead", { station: "Station: choose one", weeks: "Weeks: a whole number is needed" }],
  ])("what if %s is told by the label of each field", (kind, told) => {
    expect(fieldsOf(whatIfSchema, { kind, ...empty(Object.keys(told)), mould: "M95-178" })).toEqual(told);
    expect(
      Object.keys(told).every((name) =>
        (whatIfFields[kind as keyof typeof whatIfFields] as readonly string[]).includes(name),
      ),
    ).toBe(true);
  });

  it("takes as much as a field is meant for", () => {
    const late = (material: string) =>
      breakdownSchema.safeParse({ kind: "supplier-late", station: "print", material, expectedOn: "2026-12-01" })
        .success;
    expect([late("x".repeat(500)), late("x".repeat(501))]).toEqual([true, false]);
    const named = (length: number) =>
      breakdownSchema.safeParse({ kind: "proof-late", pairId: "p".repeat(length), expectedOn: "2026-12-01" }).success;
    expect([named(1), named(60), named(61)]).toEqual([true, true, false]);
    const mould = (length: number) =>
      whatIfSchema.safeParse({ kind: "drop-mould", mould: "m".repeat(length), from: "2026-12-01", until: "2026-12-02" })
        .success;
    expect([mould(60), mould(61)]).toEqual([true, false]);
    // A station that the floor does not have is handed on as it was typed: the use case says so.
    expect(whatIfSchema.safeParse({ kind: "hire", stations: " 10, 11,99 ", from: "2026-12-01" }).data).toMatchObject({
      stations: ["lay-up", "press", "99"],
    });
  });
});

describe("ways out of short strips in words", () => {
  const choice = (known: object) => optionChoice({ id: "x", ...known } as unknown as StripOption);
  it("carry their figures with signs, and what to mind", () => {
    const species = {
      kind: "other-species",
      position: "I",
      from: "ash",
      species: "beech",
      massG: 12.4,
      ratioPercent: -3.21,
      thicknessMm: 0.144,
    };
    const plain = choice({ ...species, isDenseOutside: false });
    expect(plain).toMatchObject({ value: "x", label: expect.stringContaining("beech instead of ash at I") });
    for (const figure of ["+12 g", "−3.2 %", "+0.14 mm"]) expect(plain.detail).toContain(figure);
    expect(plain.detail).not.toContain("Dense wood");
    expect(choice({ ...species, isDenseOutside: true }).detail).toBe(`${plain.detail}. ${words.strips.dense}`);
    const thickness = choice({ kind: "other-thickness", modulusPercent: -4.26, thicknessMm: 0.155, massG: -6.4 });
    for (const figure of ["−4.3 %", "+0.16 mm"]) expect(thickness.label).toContain(figure);
    expect(thickness.detail).toContain("−6 g");
    const from = { kind: "take-from", fromPairId: "p-9", serial: "TY-0409" };
    expect(choice({ ...from, promisedOn: "2026-12-01", slackWorkingDays: 6 })).toMatchObject({
      label: expect.stringContaining("TY-0409, promised 1 December 2026"),
      detail: expect.stringContaining("6 working days"),
    });
    const unpromised = choice({ ...from, promisedOn: null, slackWorkingDays: null });
    expect(unpromised.label).toContain("TY-0409");
    expect(unpromised.label).not.toContain("promised 1");
    expect(unpromised.detail).toBe(words.strips["take-fromPlain"]);
    expect(choice({ kind: "wait" })).toEqual({ value: "x", label: words.strips.wait });
  });
});

describe("where a request comes from and goes back to", () => {
  it("counts proxies from the end, and believes nothing before them", () => {
    const chain = "203.0.113.9, 198.51.100.1 , 192.0.2.7";
    expect([0, 1, 2, 3, 9].map((proxies) => visitorAddress(chain, proxies))).toEqual([
      "192.0.2.7",
      "192.0.2.7",
      "198.51.100.1",
      "203.0.113.9",
      "203.0.113.9",
    ]);
    expect([visitorAddress(null, 1), visitorAddress("", 0)]).toEqual(["unknown", "unknown"]);
  });
  it("leads back into the shop only", () => {
    expect(["/shop", "/shop/orders?state=open&page=2", "/shop/pair/TY-0401"].map(safeBackPath)).toEqual([
      "/shop",
      "/shop/orders?state=open&page=2",
      "/shop/pair/TY-0401",
    ]);
    for (const bad of [
      undefined,
      "",
      "/",
      "/shopping",
      "//evil.example",
      "/shop//evil.example",
      "https://evil.example/shop",
      "/shop/\nx",
    ])
      expect(safeBackPath(bad)).toBe("/shop");
  });
});
