/** The ski on the sheet on snow, beside most skiers', and the rules from its numbers to words. */
import { describe, expect, it } from "vitest";
import { type BendInput, bendOnSnow, FEEL_SHARE, flexSteps, snowFirst, TURN_RADII_M } from "#engine/assessment";
import { catalog, specOf } from "../demo-catalog";

const spec = specOf({ flexRatio: 1 });
const base: BendInput = {
  answers: { heightCm: 178, massKg: 75, ability: "confident" },
  spec,
  massKg: 75,
  flexRatio: 1,
  edgeDeg: 45,
  snow: "packed",
};
const bend = (changes: Partial<BendInput> = {}) =>
  bendOnSnow({ ...base, ...changes }, catalog) ?? expect.fail("no bend");

describe("the ski on snow beside most skiers'", () => {
  it("is theirs when the skier is the reference skier on class 3", () => {
    const { own, most, mostKg, feel, isBuilt } = bend();
    expect(mostKg).toBe(catalog.fit.massReferenceKg);
    expect(own).toEqual(most);
    expect(feel).toBe("like");
    expect(isBuilt).toBe(true);
  });

  it("counts gear and pack, and 1/cos of the lean", () => {
    // 75 kg and 9 kg of gear at 45°: 84 · 9.80665 · √2.
    expect(bend().own.loadN).toBeCloseTo(84 * 9.80665 * Math.SQRT2, 6);
    expect(bend({ answers: { ...base.answers, packKg: 10 } }).own.loadN).toBeGreaterThan(bend().own.loadN);
  });

  it("says gives under the heavier and softer, holds under the lighter and stiffer, by the share at the ends", () => {
    for (const [changes, feel] of [
      [{ flexRatio: 0.85 }, "gives"],
      [{ flexRatio: 1.17 }, "holds"],
      [{ massKg: 100 }, "gives"],
      [{ massKg: 55 }, "holds"],
      [{ massKg: 78 }, "like"],
    ] as const) {
      const found = bend(changes);
      const share = found.own.endsShare / found.most.endsShare;
      expect(found.feel, JSON.stringify(changes)).toBe(feel);
      expect(share >= 1 + FEEL_SHARE, JSON.stringify(changes)).toBe(feel === "holds");
      expect(share <= 1 - FEEL_SHARE, JSON.stringify(changes)).toBe(feel === "gives");
    }
  });

  it("keeps its word for a skier whose flex follows the weight as the fit does", () => {
    // (m + 9)/84 to the power of 0.8 of the fit: the ski bends much as most skiers' do, whatever the weight.
    for (const massKg of [65, 75, 88]) {
      const flexRatio = ((massKg + 9) / 84) ** catalog.fit.massExponent;
      expect(bend({ massKg, flexRatio }).feel, `${massKg} kg`).toBe("like");
    }
  });

  it("calls a turn by its radius, and flat what is not tipped", () => {
    const [short, long] = TURN_RADII_M;
    for (const edgeDeg of [0, 4, 5, 20, 35, 45, 60]) {
      const { turn, own } = bend({ edgeDeg });
      const wanted = own.turnRadiusM < short ? "short" : own.turnRadiusM < long ? "middle" : "long";
      expect(turn, `${edgeDeg}`).toBe(edgeDeg < 5 ? "flat" : wanted);
    }
    expect(bend({ edgeDeg: 60 }).turn).toBe("short");
    expect(bend({ edgeDeg: 5 }).turn).toBe("long");
  });

  it("tells a flex that is not built, and shows the nearest that is", () => {
    // With 9 mm under the boot a Pathwick with metal and carbon is stiffer than 0.62 in any cloth.
    const reinforcements = ["metal-pair", "carbon-biax"];
    const stiff = specOf({ model: "pathwick-75", lengthCm: 170, reinforcements });
    const found = bend({ spec: stiff, flexRatio: 0.62 });
    expect(found.isBuilt).toBe(false);
    expect(found.flexRatio).toBeGreaterThan(0.62 * 1.05);
  });

  it("knows nothing of a snow, a model or a catalogue that has none", () => {
    expect(bendOnSnow({ ...base, snow: "concrete" }, catalog)).toBeNull();
    expect(bendOnSnow({ ...base, spec: { ...spec, model: "nobody" } }, catalog)).toBeNull();
    const { snow: _, ...without } = catalog;
    expect(bendOnSnow(base, without)).toBeNull();
  });

  it("begins on the snow that the skier skis most, else on the usual one", () => {
    const first = (answers: BendInput["answers"]) => snowFirst(answers, catalog)?.id;
    expect([first({ homeSnow: "icy" }), first({ homeSnow: "deep" }), first({ homeSnow: "mixed" }), first({})]).toEqual([
      "hard",
      "soft",
      "packed",
      "packed",
    ]);
    const { snow: _, ...without } = catalog;
    expect(snowFirst({}, without)).toBeUndefined();
  });

  it("steps through the classes by their middle, and stays at the sheet's own flex in its class", () => {
    expect(flexSteps(1.02, catalog).map(({ flexRatio }) => flexRatio)).toEqual([
      expect.closeTo(0.7, 9),
      expect.closeTo(0.85, 9),
      1.02,
      expect.closeTo(1.165, 9),
      expect.closeTo(1.35, 9),
    ]);
  });
});
