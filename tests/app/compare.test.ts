/** What an address asks to be compared, and what taking a pair writes. Models and lengths: tests/services/scenarios/01, worked by hand. */
import { describe, expect, it } from "vitest";
import {
  comparedPair,
  offeredModels,
  readCompareQuery,
  takingPatch,
  tickedOf,
  tokenIn,
} from "#app/_ui/compare/candidates.ts";
import { assessSheet, type SheetInput } from "#engine/assessment";
import { catalog } from "../engine/demo-catalog";

const token = "Ab_-".repeat(10).concat("xyz");
const own: SheetInput = {
  answers: { heightCm: 182, massKg: 82, ability: "confident", temperament: "steady", offPistePercent: 40 },
  choices: {},
};
const assessment = assessSheet(own, catalog);

describe("the other sheet's link", () => {
  it("is read from a whole address, from its end, and from what hangs behind it", () => {
    for (const link of [
      token,
      `/sheet/${token}`,
      `https://skis.example/sheet/${token}`,
      `https://skis.example/sheet/${token}/compare?show=sheet`,
      `https://skis.example/sheet/${token}#ski`,
    ])
      expect(tokenIn(link)).toBe(token);
  });

  it("is not found in anything else", () => {
    for (const link of ["", "hello", `${token}x`, token.slice(1), `${token.slice(1)}!`])
      expect(tokenIn(link)).toBeNull();
  });
});

describe("what is compared", () => {
  it("reads one tick and several, each once", () => {
    expect(readCompareQuery({ show: "sheet" })).toEqual({ show: ["sheet"], other: "" });
    expect(readCompareQuery({ show: ["sheet", "midlow-84", "sheet"], other: ` ${token} ` })).toEqual({
      show: ["sheet", "midlow-84"],
      other: token,
    });
  });

  it("reads no more of an address than a person would put there", () => {
    const many = Array.from({ length: 41 }, (_, index) => `m-${index}`);
    expect(readCompareQuery({ show: many }).show).toEqual(many.slice(0, 40));
    expect(readCompareQuery({ other: "x".repeat(401) }).other).toBe("x".repeat(400));
    expect(readCompareQuery({ other: [token, "y"] })).toEqual({ show: [], other: token });
    expect(readCompareQuery({})).toEqual({ show: [], other: "" });
    const offered = offeredModels(assessment, [], catalog);
    expect(tickedOf({ show: [], other: token }, assessment, offered)).toEqual(["sheet"]);
  });

  it("begins with the sheet and the best two other models", () => {
    const offered = offeredModels(assessment, [], catalog);
    const ticked = tickedOf({ show: [], other: "" }, assessment, offered);
    expect(ticked).toHaveLength(3);
    expect(ticked[0]).toBe("sheet");
    // Scenario 1: Midlow 84 is the sheet's own, so Midlow 95 comes first of the others.
    expect(ticked[1]).toBe("midlow-95");
    expect(ticked).not.toContain("midlow-84");
  });

  it("keeps a model of the address that is no longer recommended, and drops what the shop does not build", () => {
    const unranked = catalog.build.models.find(
      (model) =>
        model.state === "active" && !assessment.recommendation?.choices.some((choice) => choice.model === model.id),
    );
    const show = ["sheet", unranked?.id ?? "", "no-such-model"];
    const offered = offeredModels(assessment, show, catalog);
    expect(offered.earlier).toEqual([unranked?.id]);
    expect(tickedOf({ show, other: "" }, assessment, offered)).toEqual(["sheet", unranked?.id]);
  });

  it("shows a model in the length that fits, with the sheet's own options", () => {
    const choices = { lengthCm: 166, flexRatio: 0.8, reinforcements: ["carbon-stringers"] };
    const pair = comparedPair("midlow-95", { own: { ...own, choices }, other: null }, catalog);
    // Scenario 1: Midlow 95 wants 175.8 cm, nearest 178; k 1.07.
    expect(pair?.spec).toMatchObject({ model: "midlow-95", lengthCm: 178, reinforcements: ["carbon-stringers"] });
    expect(pair?.spec.flexRatio).toBeCloseTo(1.07, 2);
  });

  it("is null where there is no ski yet", () => {
    expect(comparedPair("sheet", { own: { answers: {}, choices: {} }, other: null }, catalog)).toBeNull();
    expect(comparedPair("other", { own, other: null }, catalog)).toBeNull();
  });
});

describe("taking a pair", () => {
  it("chooses a model and gives its length and flex back to the fit", () => {
    expect(takingPatch("midlow-95", null, catalog)).toEqual({
      "choices.model": "midlow-95",
      "choices.lengthCm": null,
      "choices.flexRatio": null,
    });
  });

  it("takes the other sheet's build but not its picture", () => {
    const other: SheetInput = { ...own, choices: { model: "midlow-95", lengthCm: 178, flexRatio: 0.95 } };
    const patch = takingPatch("other", other, catalog);
    expect(patch).toMatchObject({
      "choices.model": "midlow-95",
      "choices.lengthCm": 178,
      "choices.flexRatio": 0.95,
      "choices.tipTailProtectors": false,
    });
    expect(Object.keys(patch ?? {})).not.toContain("choices.graphic");
  });

  it("takes nothing that is not there", () => {
    expect(takingPatch("other", null, catalog)).toBeNull();
    expect(takingPatch("no-such-model", null, catalog)).toBeNull();
    expect(takingPatch("sheet", null, catalog)).toBeNull();
  });
});
