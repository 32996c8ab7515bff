/** What was stored before is still understood: limits that were tightened and members that came later are no reason not to. */
import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import { readEvent } from "#schemas/events";
import { idOf } from "#schemas/ids";
import { sheetContent, storedDateRange, storedFit, storedPairSpec, storedRights } from "#schemas/stored/index";

const entry = (value: unknown) => ({ value, version: 1, by: "Desk 1", at: "2026-11-10T17:00:00.000Z" });

describe("stored data", () => {
  it("keeps a specification that could not be typed today, and forgets members nobody knows", () => {
    const spec = {
      model: "midlow-95",
      lengthCm: 300,
      core: "aspen-ash",
      reinforcements: [],
      flexRatio: 9,
      graphic: { kind: "house", layout: "same", windows: [] },
      base: { left: "black", right: "black", inlay: "none" },
      mount: { offsetMm: 400 },
      finish: { baseBevelDeg: 9, sideAngleDeg: 9, detuneTipMm: 0, detuneTailMm: 0, structure: "M" },
      tipTailProtectors: false,
    };
    expect(storedPairSpec.parse({ ...spec, wax: "hot" })).toEqual(spec);
    expect(storedPairSpec.safeParse({ ...spec, lengthCm: "178" }).success).toBe(false);
  });

  it("reads a range of before the days of ten, eighty and ninety-five per cent were told", () => {
    const basis = { queueRevision: 1, runs: 200, seed: 7, at: "2026-11-10T17:00:00.000Z" };
    const range = { p50: "2026-12-01", p90: "2026-12-08", workingDays: { p50: 15, p90: 20 }, drivers: [], basis };
    expect(storedDateRange.parse(range)).toEqual(range);
  });

  it("reads a quote of before its numbers carried a spread", () => {
    const recommendation = { wantedWaistMm: 95, choices: [], flags: [] };
    const fit = { recommendation, flags: [], modelName: "Midlow 95", flexClassLabel: "3, balanced" };
    const numbers = { massKg: 1.7, springCentreNPerMm: 5, sidecutRadiusM: 17 };
    expect(storedFit.parse({ ...fit, ...numbers })).not.toHaveProperty("spread");
  });

  it("tells a basis of rights that is none from one that is", () => {
    expect(storedRights.safeParse({ basis: "found it", name: "R" }).success).toBe(false);
    expect(storedRights.parse({ basis: "own", name: "R" })).toEqual({ basis: "own", name: "R" });
  });
});

describe("a sheet's fields", () => {
  it("are read by meaning, cleared ones left out", () => {
    const content = sheetContent({
      "answers.heightCm": entry(182),
      "answers.ability": entry(null),
      "typed.height": entry({ unit: "cm", cm: 182 }),
      "choices.destination": entry("collect"),
      "contact.name": entry("Robin Alder"),
      "asked.ageYears": entry("refused"),
      notes: entry("left-handed"),
      "acks.wide-for-piste": entry({ reason: "rides powder", byOwner: true }),
    });
    expect(content).toEqual({
      answers: { heightCm: 182 },
      typed: { height: { unit: "cm", cm: 182 } },
      said: {},
      choices: { destination: "collect" },
      contact: { name: "Robin Alder" },
      asked: { ageYears: "refused" },
      notes: "left-handed",
      flagAcks: [
        {
          code: "wide-for-piste",
          reason: "rides powder",
          byOwner: true,
          by: "Desk 1",
          at: "2026-11-10T17:00:00.000Z",
        },
      ],
    });
  });

  it("are refused by the path of the one that is none", () => {
    expect(() => sheetContent({ "answers.ability": entry("a bit") })).toThrow(/ability/);
    expect(() => sheetContent({ "acks.mixed-units": entry("yes") })).toThrow();
  });
});

describe("an event", () => {
  it("comes back with its kind's own particulars", () => {
    const data = { promisedOn: "2026-12-08", from: null, class: "promise", reason: "the clock started" };
    expect(readEvent("promise-fixed", data)).toEqual({
      kind: "promise-fixed",
      data: { ...data, promisedOn: isoDate("2026-12-08") },
    });
  });

  it("of a kind nobody writes, or older than its kind, is kept as it stands", () => {
    expect(readEvent("pair-blessed", { by: "water" })).toEqual({
      kind: "other",
      was: "pair-blessed",
      data: { by: "water" },
    });
    expect(readEvent("promise-fixed", { promisedOn: "soon" })).toMatchObject({ kind: "other", was: "promise-fixed" });
    expect(readEvent("toString", {})).toMatchObject({ kind: "other", was: "toString" });
  });
});

describe("an id", () => {
  it("is not made of nothing", () => {
    expect(() => idOf("order", "")).toThrow(/no order id/);
    expect(idOf("order", "o-1")).toBe("o-1");
  });
});
