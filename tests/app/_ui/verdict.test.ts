/** Words before numbers: what is said of compared pairs, and what one choice will feel like. */
import { describe, expect, it } from "vitest";
import type { ComparedPair } from "#app/_ui/compare/candidates.ts";
import { verdictOf } from "#app/_ui/compare/verdict.ts";
import { choiceFeelText } from "#app/_ui/sheet/choice-feel.ts";
import compareWords from "#content/copy/compare.json";
import sheetWords from "#content/copy/sheet.json";
import { shapeAtLength } from "#engine/geometry";
import { catalog } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";

interface Told {
  readonly model: string;
  readonly flexRatio?: number;
  readonly massG?: number;
  readonly cents?: number | null;
}

function pairOf({ model, flexRatio = 1, massG = 1700, cents = 159_000 }: Told): ComparedPair {
  const row = catalog.build.models.find(({ id }) => id === model);
  if (!row) throw new Error(model);
  const shape = shapeAtLength(row.shape, row.shape.refLengthCm);
  return partly<ComparedPair>({
    spec: { flexRatio },
    solved: { build: { shape }, flexWithPlate: { massKg: massG / 1000 } },
    assessment: { price: cents === null ? null : { totalCents: cents } },
  } as never);
}

const verdict = (...pairs: readonly Told[]) =>
  verdictOf(
    pairs.map(pairOf),
    pairs.map((_, i) => "ABC"[i] ?? ""),
    compareWords,
  );

describe("the verdict of a comparison", () => {
  it("says nothing of a pair alone, and that equal ones are alike", () => {
    expect(verdict({ model: "midlow-95" })).toEqual([]);
    expect(verdict({ model: "midlow-95" }, { model: "midlow-95" })).toEqual([compareWords.verdict.alike]);
  });

  it("names both ends of what differs, with their numbers", () => {
    const said = verdict(
      { model: "drifthold-117", massG: 2100, cents: 169_000 },
      { model: "kerfline-68", massG: 1600 },
    );
    expect(said[0]).toMatch(/^B turns shorter, A longer \(sidecut 12\.\d m and 20\.\d m\)\.$/);
    expect(said[1]).toBe("A carries more in soft snow, B is quicker from edge to edge (waist 117 mm and 68 mm).");
    expect(said).toContain("B is the lighter, A the heavier (1600 g and 2100 g a ski).");
    expect(said).toContain("B costs $1,590, A $1,690, with tax and shipping.");
  });

  it.each([
    [29, false],
    [30, true],
  ])("tells %i g a ski: %s", (grams, isTold) => {
    const said = verdict({ model: "midlow-95", massG: 1700 }, { model: "midlow-95", massG: 1700 + grams });
    expect(said.some((sentence) => sentence.includes("lighter"))).toBe(isTold);
  });

  it("tells five per cent of stiffness and not four; leaves the price out where one pair has none", () => {
    const both = (flexRatio: number) => verdict({ model: "midlow-95" }, { model: "midlow-95", flexRatio });
    expect(both(1.05).join(" ")).toContain("B is the stiffer");
    expect(both(1.04)).toEqual([compareWords.verdict.alike]);
    const said = verdict({ model: "midlow-95", cents: null }, { model: "midlow-95", cents: 200_000 });
    expect(said).toEqual([compareWords.verdict.alike]);
  });
});

describe("what a choice will feel like", () => {
  const w = sheetWords.choiceFeel;
  it.each([
    [{ twistPercent: 4, massG: 0 }, "Holds its edge better on hard snow."],
    [{ twistPercent: 3.9, massG: 49 }, w.hardly],
    [
      { twistPercent: -4, massG: 50 },
      "Gives way sooner on hard snow, kinder in bumps, heavier to carry, calmer in crud.",
    ],
    [{ twistPercent: 0, massG: -50 }, "Lighter to carry and to swing."],
  ])("%o", (effect, text) => {
    expect(choiceFeelText(effect, sheetWords)).toBe(text);
  });

  it("says nothing before it is worked out", () => {
    expect(choiceFeelText(undefined, sheetWords)).toBe("");
  });
});
