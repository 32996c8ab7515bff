/** Bevels, detuning and structure by use, ability and snow: the shop's own table (common practice, no source). */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type Ability, type FitAnswers, recommendFinish } from "#engine/fit";

const { finish, fit } = loadCatalog();
const abilities: readonly Ability[] = ["learning", "improving", "confident", "expert"];

/** Rows for learning, improving, confident, expert. */
const rows: Readonly<Record<string, readonly [string, string, string, string]>> = {
  carving: ["learning", "learning", "piste-strong", "carving-expert"],
  frontside: ["learning", "learning", "piste-strong", "piste-strong"],
  "all-mountain narrow": ["learning", "learning", "all-round", "all-round"],
  "all-mountain wide": ["learning", "learning", "all-round", "all-round"],
  freeride: ["learning", "learning", "deep", "deep"],
  powder: ["learning", "learning", "deep", "deep"],
  touring: ["learning", "learning", "all-round", "all-round"],
  park: ["park", "park", "park", "park"],
};

/** Base bevel °, side angle °, detune at tip and tail mm. */
const numbers: Readonly<Record<string, readonly [number, number, number, number]>> = {
  park: [1.5, 2, 150, 150],
  learning: [1, 2, 100, 100],
  "carving-expert": [0.5, 3, 20, 10],
  "piste-strong": [0.75, 3, 30, 30],
  deep: [1, 2, 150, 100],
  "all-round": [1, 2, 80, 50],
};

const cells = Object.entries(rows).flatMap(([use, byAbility]) =>
  abilities.map((ability, index) => ({ use, ability, row: byAbility[index] ?? "" })),
);

function at(use: string, answers: Partial<FitAnswers>) {
  return recommendFinish({ heightCm: 178, massKg: 78, ability: "confident", ...answers }, use, finish, fit);
}

describe("finish", () => {
  it.each(cells)("$use, $ability: $row", ({ use, ability, row }) => {
    const advice = at(use, { ability });
    const { baseBevelDeg, sideAngleDeg, detuneTipMm, detuneTailMm } = advice.finish;
    expect(advice.row).toBe(row);
    expect([baseBevelDeg, sideAngleDeg, detuneTipMm, detuneTailMm]).toEqual(numbers[row]);
  });

  it.each([
    ["icy", "F"],
    ["firm", "M"],
    ["mixed", "M"],
    ["soft", "MC"],
    ["deep", "F"],
    [undefined, "M"],
  ] as const)("structure for %s snow is %s", (homeSnow, structure) => {
    expect(at("carving", homeSnow === undefined ? {} : { homeSnow }).finish.structure).toBe(structure);
  });

  it("cannot advise where no row holds", () => {
    const bare = { ...finish, bevels: finish.bevels.filter((row) => row.id === "park") };
    const answers = { heightCm: 178, massKg: 78, ability: "confident" } as const;
    expect(() => recommendFinish(answers, "carving", bare, fit)).toThrow(/use "carving" and ability "confident"/);
  });
});
