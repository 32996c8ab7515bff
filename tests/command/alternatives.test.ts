import { describe, expect, it } from "vitest";
import { runVerb } from "./run-verb";

const spec = { model: "midlow-95", lengthCm: 178, core: "maple-poplar-planted", reinforcements: ["metal-pair"] };

interface Told {
  readonly massG: number;
  readonly priceCents: number;
  readonly isCurrent: boolean;
  readonly isPareto: boolean;
}

describe("pairwright alternatives", () => {
  it("tells the shop's builds of the same flex, which nothing beats, and the cheapest 150 g lighter", () => {
    const { exitCode, json } = runVerb(["alternatives"], { ...spec, lighterByG: 150, priceBook: "PB-3" });
    expect(exitCode).toBe(0);
    // 7 blends × 32 sets, counted by hand from the catalogue.
    const { flexNotReached, clashing, withoutPrice } = json.leftOut;
    expect(json.options.length + flexNotReached + clashing + withoutPrice).toBe(224);
    const options: readonly Told[] = json.options;
    expect(options.filter((each) => each.isCurrent)).toHaveLength(1);
    for (const each of options) {
      const beaten = options.some(
        (other) =>
          other.massG <= each.massG &&
          other.priceCents <= each.priceCents &&
          (other.massG < each.massG || other.priceCents < each.priceCents),
      );
      expect(each.isPareto).toBe(!beaten);
    }
    expect(json.answer.kind).toBe("found");
    expect(json.answer.option.change.massG).toBeLessThanOrEqual(-150);
  });

  it("names the lightest when nothing is as light as asked, and answers nothing unasked", () => {
    const touring = { model: "upleigh-92", lengthCm: 174, core: "aspen-ash" };
    const far = runVerb(["alternatives"], { ...touring, lighterByG: 4000 }).json;
    expect(far.answer).toMatchObject({ kind: "not-so-light", wantedG: 4000 });
    const lightest = Math.min(...far.options.map((each: Told) => each.massG));
    expect(far.answer.lightest.massG).toBe(lightest);
    expect(runVerb(["alternatives"], touring).json.answer).toBeNull();
  });

  it("is described by --schema and refuses what it does not know", () => {
    const { json } = runVerb(["alternatives", "--schema"]);
    expect(Object.keys(json.input.properties)).toEqual(expect.arrayContaining(["model", "lighterByG", "priceBook"]));
    expect(json.output.required).toEqual(expect.arrayContaining(["options", "leftOut", "answer"]));
    const unknown = runVerb(["alternatives"], { ...spec, heavierByG: 10 });
    expect(unknown.exitCode).toBe(2);
    expect(unknown.json.invalid[0]).toMatchObject({ path: "heavierByG" });
    expect(runVerb(["alternatives"], { ...spec, lighterByG: -1 }).exitCode).toBe(2);
    expect(runVerb(["alternatives"], { ...spec, core: "oak" }).json.refusal).toMatchObject({ code: "unknown-item" });
  });
});
