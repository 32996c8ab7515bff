/** A maker's table of thirty skiers: what may stand first for each, in what length and flex (fixtures/fit/skiers.json). */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { recommend } from "#engine/fit";
import { answersSchema } from "#schemas";
import table from "../../fixtures/fit/skiers.json";

const { build, fit } = loadCatalog();

describe("a maker's thirty skiers", () => {
  it("are thirty, each with a line of judgement", () => {
    expect(table.skiers).toHaveLength(30);
    for (const { judgement } of table.skiers) expect(judgement.length).toBeGreaterThan(20);
  });

  it.each(table.skiers)("$who: $judgement", ({ answers, models, lengthCm: [shortest = 0, longest = 0], classes }) => {
    const [first] = recommend(answersSchema.parse(answers), build, fit).choices;
    expect(models).toContain(first?.model);
    expect(first?.lengthCm).toBeGreaterThanOrEqual(shortest);
    expect(first?.lengthCm).toBeLessThanOrEqual(longest);
    if (classes.length === 0) expect(first?.flexClass).toBeNull();
    else expect(classes).toContain(first?.flexClass);
  });
});
