import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  beginSameFlex,
  comparedWith,
  type EngineCatalog,
  lighterBy,
  paretoSet,
  type SameFlexOption,
  type SameFlexOptions,
  type SheetChoices,
  sameFlexOptions,
  twistStiffness,
} from "#engine/assessment";
import { catalog } from "../demo-catalog";

function found(choices: SheetChoices, given: EngineCatalog = catalog): SameFlexOptions {
  const outcome = sameFlexOptions({ answers: {}, choices }, given);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

const midlow: SheetChoices = { model: "midlow-95", lengthCm: 178, core: "aspen-ash", flexRatio: 1.1 };
const midlowFound = found(midlow);
/** A shop with the blends named only, so that a question about one of them is quick. */
function shopWith(...blends: readonly string[]): EngineCatalog {
  const build = { ...catalog.build, blends: catalog.build.blends.filter((each) => blends.includes(each.id)) };
  return { ...catalog, build };
}

const window = { fromXMm: 400, toXMm: 600, halfWidthMm: 15 };
const clear = { kind: "house", house: "contour-lines", layout: "same", windows: [window] } as const;
const key = (each: { readonly core: string; readonly reinforcements: readonly string[] }) =>
  [each.core, ...each.reinforcements.toSorted()].join(" ");

/** Of the shop's bench rules. */
const tolerance = catalog.build.rules.bench?.flexTolerance.share ?? 0;

describe("sameFlexOptions", () => {
  // Counted by hand from content/catalog: 7 blends for all-mountain wide. Six reinforcements; of the plies (carbon ±45 two;
  // flax, basalt and aramid one each) at most two go in: none, 3 single, 3 pairs, carbon alone = 8; times stringers or
  // not, times metal or not = 32 sets.
  it("tries every blend with every set of reinforcements that the shop can lay up: 7 × 32", () => {
    const { options, leftOut } = midlowFound;
    expect(options).toHaveLength(7 * 32);
    expect(leftOut).toEqual({ clashing: 0, flexNotReached: 0, withoutPrice: 0 });
    expect(new Set(options.map(key)).size).toBe(7 * 32);
  });

  it("adds no metal to a model that has its own (7 × 16), nor to a touring ski (4 × 16)", () => {
    for (const [model, lengthCm, count] of [
      ["kerfline-68", 168, 7 * 16],
      ["upleigh-92", 174, 4 * 16],
    ] as const) {
      const { options, leftOut } = found({ model, lengthCm });
      expect(options.length + leftOut.flexNotReached).toBe(count);
      expect(options.filter((each) => each.reinforcements.includes("metal-pair"))).toEqual([]);
    }
  });

  it("counts metal once where a shop keeps two kinds of it", () => {
    const metal = catalog.build.reinforcements.find((each) => each.id === "metal-pair");
    if (!metal) throw new Error("no metal in the demo catalogue");
    const { build } = shopWith("aspen-ash");
    const reinforcements = [metal, { ...metal, id: "metal-two" }];
    const { options } = found(midlow, { ...catalog, build: { ...build, reinforcements } });
    expect(options.map(key)).toEqual(["aspen-ash", "aspen-ash metal-pair", "aspen-ash metal-two"]);
  });

  it("keeps the flex: every ratio within the shop's tolerance of the wanted one, springs as far apart as the ratios", () => {
    const { options, now } = midlowFound;
    for (const each of options) {
      expect(Math.abs(each.achievedRatio / 1.1 - 1)).toBeLessThanOrEqual(tolerance);
      const byRatio = 100 * (each.achievedRatio / now.achievedRatio - 1);
      expect(Math.abs(each.change.springCentrePercent - byRatio)).toBeLessThan(0.1);
    }
    const exact = options.filter((each) => Math.abs(each.achievedRatio / 1.1 - 1) <= 0.01);
    expect(exact.length / options.length).toBeGreaterThan(0.9);
  });

  it("leaves out what a core at its limits cannot bring to the flex, and names the limit", () => {
    // As soft as 0.62 a Pathwick with metal and carbon is stiffer than wanted with the least core under the boot.
    const { options, leftOut, limitedBy } = found(
      { model: "pathwick-75", flexRatio: 0.62 },
      shopWith("aspen-ash", "beech-poplar"),
    );
    expect(leftOut.flexNotReached).toBeGreaterThan(0);
    expect(options.length + leftOut.flexNotReached).toBe(2 * 32);
    expect(limitedBy).toContain("boot-floor");
    const missed = options.filter((each) => Math.abs(each.achievedRatio / 0.62 - 1) > tolerance);
    expect(missed).toEqual([]);
  });

  it("prices each by the book: PB-3 stringers 90, metal 180 and a selected core 80, with 6 % tax", () => {
    const change = (wanted: string) => midlowFound.options.find((each) => key(each) === wanted)?.change.priceCents;
    expect(change("aspen-ash carbon-stringers")).toBe(9540);
    expect(change("aspen-ash metal-pair")).toBe(19_080);
    expect(change("aspen-ash-window")).toBe(8480);
    expect(change("aspen-ash")).toBe(0);
  });

  it("weighs and measures as handbooks lead one to expect: stringers lighter, carbon at ±45° stiffer in twist, metal heavier", () => {
    const change = (wanted: string) => midlowFound.options.find((each) => key(each) === wanted)?.change;
    expect(change("aspen-ash carbon-stringers")?.massG).toBeLessThan(0);
    expect(change("aspen-ash carbon-stringers")?.coreMidMm).toBeLessThan(0);
    expect(change("aspen-ash carbon-biax")?.twistPercent).toBeGreaterThan(0);
    expect(change("aspen-ash metal-pair")).toMatchObject({ leadDays: 2 });
    expect(change("aspen-ash metal-pair")?.massG).toBeGreaterThan(0);
    // Birch (about 640 kg/m³) and cherry (about 560) against aspen (about 420): FPL Wood Handbook, table 5-3.
    expect(change("birch-cherry-window")?.massG).toBeGreaterThan(0);
  });

  it("marks the build on the sheet, whatever the order its reinforcements were chosen in", () => {
    const { options, now } = found(
      { ...midlow, reinforcements: ["flax", "carbon-stringers"] },
      shopWith("aspen-ash", "poplar-ash"),
    );
    const current = options.filter((each) => each.isCurrent);
    expect(current.map(key)).toEqual(["aspen-ash carbon-stringers flax"]);
    expect(current[0]).toMatchObject(now);
    expect(current[0]?.change).toEqual({
      massG: 0,
      priceCents: 0,
      springCentrePercent: 0,
      twistPercent: 0,
      leadDays: 0,
      coreMidMm: 0,
    });
  });

  it("offers nothing under a clear window that would hide the wood or should not be seen", () => {
    const { options, leftOut } = found({ ...midlow, core: "aspen-ash-window", graphic: clear });
    const selected = new Set(catalog.build.blends.filter((each) => each.isWindowGrade).map((each) => each.id));
    expect(options.length).toBeGreaterThan(0);
    expect(options.every((each) => selected.has(each.core))).toBe(true);
    // Carbon ±45, stringers, flax and metal have a part on top; basalt and aramid lie below only: 2 blends × 4 sets.
    expect(options.map(key).filter((each) => /carbon|metal/.test(each))).toEqual([]);
    expect(options.length + leftOut.clashing).toBe(7 * 32);
  });

  it("leaves to the sheet a clash that no wood and no reinforcement changes", () => {
    const base = { left: "black", right: "black", inlay: "counterchange" } as const;
    expect(found({ ...midlow, base }, shopWith("aspen-ash")).options).toHaveLength(32);
  });

  it("compares with a build that itself clashes without offering it", () => {
    const { options, now } = found({ ...midlow, core: "paulownia-poplar" }, shopWith("aspen-ash", "paulownia-poplar"));
    expect(options).toHaveLength(32);
    expect(now.core).toBe("paulownia-poplar");
    expect(options.some((each) => each.isCurrent || each.core === "paulownia-poplar")).toBe(false);
  });

  it("compares with an option taken as a new search from it would", () => {
    // Every twist is read here: few builds say as much as many.
    const { build, ...rest } = shopWith("aspen-ash", "maple-aspen");
    const few = build.reinforcements.filter(({ id }) => ["flax", "metal-pair"].includes(id));
    const shop = { ...rest, build: { ...build, reinforcements: few } };
    const taken = { core: "maple-aspen", reinforcements: ["flax"] };
    const before = found(midlow, shop);
    expect(before.options).toHaveLength(2 * 4);
    expect(comparedWith(before, taken)).toEqual(found({ ...midlow, ...taken }, shop));
    expect(comparedWith(found(midlow, shop), { core: "poplar-ash", reinforcements: [] })).toBeNull();
  });

  it("refuses a sheet without a model, and one with a core that nobody has", () => {
    expect(sameFlexOptions({ answers: {}, choices: {} }, catalog)).toMatchObject({
      ok: false,
      refusal: { code: "missing-answer", path: "choices.model" },
    });
    expect(beginSameFlex({ answers: {}, choices: { ...midlow, core: "oak" } }, catalog)).toMatchObject({
      ok: false,
      refusal: { code: "unknown-item", id: "oak" },
    });
  });
});

// θ = TL/KG of one shaft, and ∫dx/GJ of a straight GJ: (L / (b − a)) · ln(b / a) (Young & Budynas ch. 10; calculus).
describe("twistStiffness", () => {
  const along = (values: readonly (readonly [number, number])[]) =>
    values.map(([xMm, torsionalStiffnessNmm2]) => ({ xMm, torsionalStiffnessNmm2 }));

  it("is GJ/L of an even shaft, ends between stations", () => {
    const shaft = along([
      [0, 6e7],
      [500, 6e7],
      [1000, 6e7],
    ]);
    expect(twistStiffness(shaft, 100, 700)).toBeCloseTo(6e7 / 600, 6);
  });

  it("is exact where GJ tapers, and adds pieces like springs in a row", () => {
    const taper = along([
      [0, 2e7],
      [800, 8e7],
    ]);
    expect(twistStiffness(taper, 0, 800) / (6e7 / (800 * Math.log(4)))).toBeCloseTo(1, 12);
    const halves = 1 / (1 / twistStiffness(taper, 0, 300) + 1 / twistStiffness(taper, 300, 800));
    expect(twistStiffness(taper, 0, 800) / halves).toBeCloseTo(1, 12);
  });
});

describe("paretoSet", () => {
  const point = fc.record({ massG: fc.integer({ min: 0, max: 12 }), priceCents: fc.integer({ min: 0, max: 12 }) });
  type Point = { readonly massG: number; readonly priceCents: number };
  // The definition, word by word.
  const dominates = (a: Point, b: Point) =>
    a.massG <= b.massG && a.priceCents <= b.priceCents && (a.massG < b.massG || a.priceCents < b.priceCents);

  it("holds exactly what nothing dominates, in order, equals together", () => {
    fc.assert(
      fc.property(fc.array(point, { maxLength: 40 }), (points) => {
        const kept = paretoSet(points);
        expect(kept).toEqual(points.filter((each) => !points.some((other) => dominates(other, each))));
        // Whatever is outside is dominated by something inside.
        for (const each of points) {
          if (!kept.includes(each)) expect(kept.some((inside) => dominates(inside, each))).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("of the demo's builds keeps none that another beats", () => {
    const { options } = midlowFound;
    const kept = paretoSet(options);
    expect(kept).toEqual(options.filter((each) => !options.some((other) => dominates(other, each))));
    expect(kept.length).toBeGreaterThan(1);
  });
});

describe("lighterBy", () => {
  const made = (core: string, massG: number, priceCents: number, twist = 1): SameFlexOption => ({
    core,
    reinforcements: [],
    massG: 3000 + massG,
    priceCents: 1000 + priceCents,
    achievedRatio: 1,
    springCentreNPerMm: 3,
    forebodyTwistNmmPerRad: twist,
    leadDays: 0,
    coreMidMm: 10,
    isCurrent: massG === 0 && priceCents === 0,
    change: { massG, priceCents, springCentrePercent: 0, twistPercent: 0, leadDays: 0, coreMidMm: 0 },
  });
  const options = [
    made("now", 0, 0),
    made("dear", -200, 90),
    made("cheap", -150, 40),
    made("cheap-too", -150, 40, 2),
    made("short", -149, 10),
  ];

  it("takes the cheapest that is light enough, then the lightest, then the one stiffer in twist", () => {
    expect(lighterBy(options, 150)).toMatchObject({ kind: "found", option: { core: "cheap-too" } });
    expect(lighterBy(options, 151)).toMatchObject({ kind: "found", option: { core: "dear" } });
    expect(lighterBy(options, 100)).toMatchObject({ kind: "found", option: { core: "short" } });
    const tied = [...options, made("lighter", -180, 40)];
    expect(lighterBy(tied, 150)).toMatchObject({ option: { core: "lighter" } });
  });

  it("names the lightest there is when none is light enough, and none when the pair is the lightest", () => {
    expect(lighterBy(options, 201)).toMatchObject({
      kind: "not-so-light",
      wantedG: 201,
      lightest: { core: "dear", change: { massG: -200 } },
    });
    expect(lighterBy([made("now", 0, 0), made("heavy", 80, -20)], 10)).toEqual({
      kind: "not-so-light",
      wantedG: 10,
      lightest: null,
    });
    expect(lighterBy([], 10)).toMatchObject({ lightest: null });
  });

  it("answers on the demo as a search by hand does", () => {
    const { options: builds, now } = found(
      { ...midlow, core: "maple-poplar-planted", reinforcements: ["metal-pair"] },
      shopWith("aspen-ash", "maple-poplar-planted"),
    );
    const answer = lighterBy(builds, 150);
    if (answer.kind !== "found") throw new Error("no build is 150 g lighter than the heaviest");
    expect(now.massG - answer.option.massG).toBeGreaterThanOrEqual(150);
    const cheaper = builds.filter((each) => each.priceCents < answer.option.priceCents);
    expect(cheaper.filter((each) => now.massG - each.massG >= 150)).toEqual([]);
  });

  it("never answers with a build that another beats, nor with one outside the Pareto set", () => {
    const shop = found({ ...midlow, reinforcements: ["metal-pair"] }, shopWith("aspen-ash", "beech-poplar")).options;
    for (const grams of [1, 50, 150, 400, 4000]) {
      const answer = lighterBy(shop, grams);
      const option = answer.kind === "found" ? answer.option : answer.lightest;
      expect(paretoSet(shop)).toContain(option);
    }
  });

  it("refuses a wish that is no weight", () => {
    for (const grams of [0, -5, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => lighterBy(options, grams)).toThrow(RangeError);
    }
  });
});
