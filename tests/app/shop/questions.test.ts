/** Questions in the address: what is read of them, and the words for what cannot be. */
import { describe, expect, it } from "vitest";
import { visitorAddress } from "#app/_server/address.ts";
import { breakdownSchema } from "#app/shop/(staff)/queue/breakdown/read-input.ts";
import { whatIfSchema } from "#app/shop/(staff)/queue/what-if/read-input.ts";
import { safeBackPath } from "#app/shop/sign-in/back-path.ts";

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
