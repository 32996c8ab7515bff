/** What a sheet makes of answers and choices, at the edges of its rules; values worked by hand from the rule stated beside them. */
import { describe, expect, it } from "vitest";
import {
  type Assessment,
  assessSheet,
  bandOf,
  type EngineCatalog,
  type PartialAnswers,
  type SheetChoices,
  sameFlexOptions,
  stiffnessStory,
  twistStiffness,
} from "#engine/assessment";
import { bendRatio } from "#lib/engine/assessment/skiers-band";
import { catalog, solved, specOf } from "../demo-catalog";

const assess = (answers: PartialAnswers, choices: SheetChoices = {}, isConfirmed = false, shop = catalog): Assessment =>
  assessSheet({ answers, choices, rightsConfirmed: isConfirmed }, shop);
const codes = (refusals: readonly { readonly code: string }[]) => refusals.map((each) => each.code);
const skier: PartialAnswers = { heightCm: 178, massKg: 78, ability: "confident" };
const midlow: SheetChoices = { model: "midlow-95", lengthCm: 178, flexRatio: 1 };

describe("what a way out changes", () => {
  it("is told for both skis of the pair, and in per cent of the bare spring", () => {
    const [conflict] = assess(skier, { ...midlow, reinforcements: ["carbon-biax", "basalt"] }).conflicts;
    expect(conflict?.code).toBe("too-many-plies");
    const now = solved(specOf({ ...midlow, reinforcements: ["carbon-biax", "basalt"] }));
    for (const way of conflict?.ways ?? []) {
      const then = solved(specOf({ ...midlow, ...way.choices }));
      // Twice one ski, in grams.
      expect(way.effect?.massG).toBeCloseTo(2000 * (then.flexWithPlate.massKg - now.flexWithPlate.massKg), 6);
      expect(way.effect?.stiffnessPercent).toBeCloseTo(
        (then.flex.springCentreNPerMm / now.flex.springCentreNPerMm) * 100 - 100,
        6,
      );
    }
    expect(conflict?.ways.some((way) => Math.abs(way.effect?.stiffnessPercent ?? 0) > 1e-4)).toBe(true);
  });
});

describe("a flex that the core cannot reach", () => {
  // With 9 mm under the boot a Pathwick with metal and carbon is stiffer than 0.62 in any cloth.
  const choices: SheetChoices = {
    model: "pathwick-75",
    lengthCm: 170,
    flexRatio: 0.62,
    reinforcements: ["metal-pair", "carbon-biax"],
  };

  it("stops the sale, shows the nearest core and offers what is built instead, each of which is", () => {
    const { conflicts, saleBlockedBy, core, price } = assess(skier, choices);
    expect(core?.achievedRatio ?? 0).toBeGreaterThan(0.62 * 1.05);
    expect(price).not.toBeNull();
    const conflict = conflicts.find((each) => each.code === "flex-not-buildable");
    expect(conflict).toMatchObject({ path: "choices.flexRatio", flexRatio: 0.62, lengthCm: 170, softer: null });
    const ways = conflict?.ways ?? [];
    expect(ways.map((way) => way.code)).toContain("stiffer-flex");
    for (const way of ways) {
      const then = assess(skier, { ...choices, ...way.choices });
      expect(codes(then.saleBlockedBy), way.label).not.toContain("flex-not-buildable");
      expect(way.effect).toBeDefined();
    }
    expect(codes(saleBlockedBy)).toContain("flex-not-buildable");
    expect(saleBlockedBy.every((each) => !("ways" in each))).toBe(true);
  });

  it("was built as near as the core came by a release without bench rules, which offers that ratio in hundredths", () => {
    const { bench: _bench, cloth: _cloth, ...rules } = catalog.build.rules;
    const old = { ...catalog, build: { ...catalog.build, rules } };
    const { conflicts, saleBlockedBy, core } = assessSheet({ answers: skier, choices }, old);
    const achieved = core?.achievedRatio ?? 0;
    expect(Math.abs(achieved / 0.62 - 1)).toBeGreaterThan(0.03);
    const reached = Number(achieved.toFixed(2));
    expect(conflicts.find((each) => each.code === "flex-not-reachable")).toMatchObject({
      path: "choices.flexRatio",
      flexRatio: 0.62,
      achievedRatio: achieved,
      ways: [{ code: "reachable-flex", label: `Flex ratio ${reached}`, choices: { flexRatio: reached } }],
    });
    expect(codes(saleBlockedBy)).toContain("flex-not-reachable");
  });

  it("outside every class names the ends of them, once", () => {
    const { saleBlockedBy } = assess(skier, { ...midlow, flexRatio: 1.45 });
    expect(saleBlockedBy).toEqual([
      { code: "flex-out-of-range", path: "choices.flexRatio", flexRatio: 1.45, softest: 0.62, stiffest: 1.45 },
    ]);
    expect(assess(skier, { ...midlow, flexRatio: 0.62 }).saleBlockedBy).toEqual([]);
  });
});

describe("defaults of a sheet", () => {
  it("before the skier is known: the reference length, class 3 and the table's last row", () => {
    const { spec, saleBlockedBy } = assess({}, { model: "midlow-95" });
    const last = catalog.finish.bevels.at(-1);
    expect(spec).toMatchObject({
      lengthCm: 178,
      flexRatio: 1,
      mount: { offsetMm: 0 },
      finish: {
        baseBevelDeg: last?.baseBevelDeg,
        sideAngleDeg: last?.sideAngleDeg,
        detuneTipMm: last?.detuneTipMm,
        detuneTailMm: last?.detuneTailMm,
        structure: catalog.finish.structureUnanswered,
      },
    });
    expect(saleBlockedBy.map((each) => each.path)).toEqual(["answers.heightCm", "answers.massKg", "answers.ability"]);
    expect(assess({ homeSnow: "icy" }, { model: "midlow-95" }).spec?.finish.structure).toBe(
      catalog.finish.structureBySnow.icy,
    );
  });

  it("take mount, boot and binding from the answers where nothing was chosen", () => {
    const placed = { mountOffsetMm: 12, bootSoleMm: 305, bindingTrackMm: 320 };
    expect(assess({ ...skier, ...placed }, midlow).spec?.mount).toEqual({
      offsetMm: 12,
      bootSoleMm: 305,
      bindingTrackMm: 320,
    });
    expect(assess({ ...skier, ...placed }, { ...midlow, mount: { offsetMm: -4 } }).spec?.mount).toEqual({
      offsetMm: -4,
      bootSoleMm: 305,
      bindingTrackMm: 320,
    });
    expect(assess(skier, midlow).spec?.mount).toEqual({ offsetMm: 0 });
  });

  it("count a height or mass that is no measure as missing", () => {
    for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(assess({ ...skier, heightCm: wrong }, midlow).saleBlockedBy).toEqual([
        { code: "missing-answer", path: "answers.heightCm" },
      ]);
      expect(assess({ ...skier, massKg: wrong }, midlow).saleBlockedBy).toEqual([
        { code: "missing-answer", path: "answers.massKg" },
      ]);
    }
  });

  it("of an unknown model refuse it by name and keep the ranking", () => {
    const { recommendation, saleBlockedBy, spec, flex, parts } = assess(skier, { model: "x" });
    expect([spec, flex, parts]).toEqual([null, null, null]);
    expect(recommendation?.choices.length).toBeGreaterThan(0);
    expect(saleBlockedBy).toMatchObject([{ code: "unknown-item", kind: "model", id: "x" }]);
  });
});

describe("flags on a sheet", () => {
  it("block the sale or the build as their words say, each with its message and model", () => {
    const young = assess({ ...skier, ageYears: 12, healthAdviceGiven: true }, midlow);
    const flags =
      young.recommendation?.flags.filter((each) => each.model === undefined || each.model === "midlow-95") ?? [];
    for (const what of ["sale", "build"] as const) {
      const expected = flags
        .filter((each) => each.blocks === what)
        .map(({ code, message, model }) => ({ code, path: "answers", message, ...(model ? { model } : {}) }));
      const list = what === "sale" ? young.saleBlockedBy : young.buildBlockedBy;
      expect(list).toEqual(expected);
    }
    expect(flags.length).toBeGreaterThan(0);
  });

  it("of the model on the sheet are those of what was chosen for it; other models keep theirs", () => {
    // Ordered metal on a light tourer's ski: (touring 50 %, light) and metal.
    const tourer: PartialAnswers = { ...skier, touringPercent: 50, priorities: ["light"] };
    const flagged = (choices: SheetChoices) =>
      codes(assess(tourer, choices).recommendation?.flags.filter((each) => each.model === choices.model) ?? []);
    expect(flagged({ ...midlow, reinforcements: ["metal-pair"] })).toContain("metal-for-light-touring");
    expect(flagged({ ...midlow, reinforcements: ["flax"] })).not.toContain("metal-for-light-touring");
    const twice = assess(tourer, { model: "kerfline-68", reinforcements: ["metal-pair"] }).recommendation?.flags ?? [];
    expect(
      twice.filter((each) => each.code === "metal-for-light-touring" && each.model === "kerfline-68"),
    ).toHaveLength(1);
    const off = assess(skier, { ...midlow, mount: { offsetMm: 35 } }).recommendation?.flags ?? [];
    expect(codes(off)).toContain("mount-offset-unusual");
  });
});

describe("an own picture", () => {
  const photo = (widthPx: number, heightPx: number) => ({ id: "a", widthPx, heightPx, sha256: "0" });
  const own = (artwork?: ReturnType<typeof photo>) => ({
    ...midlow,
    graphic: { kind: "own" as const, layout: "same" as const, windows: [], ...(artwork ? { artwork } : {}) },
  });
  // Canvas 1780 × 156 mm (132 and 12 either side): at 100 dpi 7,008 px along; at 150 dpi 10,512.

  it("keeps the pair from the floor while it is missing", () => {
    expect(assess(skier, own()).buildBlockedBy).toEqual([{ code: "artwork-missing", path: "graphic.artwork" }]);
    expect(assess(skier, own()).saleBlockedBy).toEqual([]);
  });

  it.each([
    [10_512, true, [], []],
    [10_511, true, ["artwork-coarse"], []],
    [7_008, true, ["artwork-coarse"], []],
    [7_007, true, ["artwork-too-coarse"], ["artwork-too-coarse"]],
    [7_007, false, ["artwork-too-coarse"], ["rights-not-confirmed", "artwork-too-coarse"]],
    [10_512, false, [], ["rights-not-confirmed"]],
  ])("of %d px, rights %s: warns %j, keeps from the floor %j", (widthPx, isConfirmed, warnings, blocks) => {
    const found = assess(skier, own(photo(widthPx, 5000)), isConfirmed);
    expect(codes(found.warnings)).toEqual(warnings);
    expect(codes(found.buildBlockedBy)).toEqual(blocks);
  });

  it("offers what prints it better as choices to take, and the designer's word", () => {
    // 3000 × 1500 px: 1500 px over 156 mm are 244 dpi, so that every arrangement but filling (43 dpi) prints at 150 or more;
    // across the pair 1500 px lie over 340 mm: 112 dpi, which is a little soft.
    const [warning] = assess(skier, own(photo(3000, 1500)), true).warnings;
    expect(warning?.ways.map((way) => [way.code, way.choices.graphic?.layout])).toEqual([
      ["ends", "same"],
      ["fade", "same"],
      ["tiles", "same"],
      ["motif", "same"],
      ["split", "continuing"],
      ["designer", undefined],
    ]);
    for (const way of warning?.ways ?? []) {
      if (way.code === "designer") continue;
      const taken = assess(skier, { ...own(photo(3000, 1500)), ...way.choices }, true);
      expect(taken.buildBlockedBy, way.code).toEqual([]);
      expect(codes(taken.warnings), way.code).toEqual(way.code === "split" ? ["artwork-coarse"] : []);
    }
  });
});

describe("skiers compared", () => {
  it("bend by mass with gear over the reference's, over the ratio: (91/84)/1.3 on piste, (82 + g)/(75 + g)/1.3 on tour", () => {
    const { fit } = catalog;
    expect(bendRatio(82, 1.3, "piste", { ...fit, gearKg: 9, massReferenceKg: 75 })).toBeCloseTo(91 / 84 / 1.3, 12);
    expect(bendRatio(82, 1.3, "touring", { ...fit, touringGearKg: 13, massReferenceKg: 75 })).toBeCloseTo(
      95 / 88 / 1.3,
      12,
    );
  });

  it("lie between ranks ⌈0.1n⌉ and ⌈0.9n⌉: of eleven the 2nd and the 10th", () => {
    expect(bandOf([11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1], "population")).toEqual({
      from: "population",
      count: 11,
      lowRatio: 2,
      highRatio: 10,
    });
  });

  const at = (lowRatio: number, highRatio: number) =>
    stiffnessStory({ ...skier, massKg: 75 }, specOf(), catalog, { from: "orders", count: 10, lowRatio, highRatio });

  it("the reference skier on class 3 stands at 1 of the band", () => {
    const story = at(0.5, 2);
    expect(story?.now.bendPercent).toBeCloseTo((story?.band?.lowPercent ?? 0) * 2, 0);
    expect(story?.band?.highPercent).toBeCloseTo(4 * (story?.band?.lowPercent ?? 0), 9);
    expect([at(0.5, 0.9)?.place, at(0.9, 1.1)?.place, at(1.1, 2)?.place]).toEqual(["more", "like", "less"]);
  });

  it("the twist of the reference skier on the reference ski is its own measure", () => {
    const story = at(0.5, 2);
    // 75 kg and 9 kg of gear.
    expect([story?.riderKg, story?.gearKg, story?.twist.referenceKg]).toEqual([84, 9, 75]);
    expect(story?.twist.wantedTorsion).toBeCloseTo(1, 9);
    expect(story?.twist.builtTorsion).toBeCloseTo(1, 1);
    // F·b/2 = (75 + 9)·9.80665·95/2 N·mm.
    expect(story?.twist.edgeMomentNm).toBeCloseTo((84 * 9.80665 * 47.5) / 1000, 9);
    const { build, flex } = solved(specOf());
    const { tipLengthMm, mountFromTipMm } = build.shape;
    const radians =
      ((story?.twist.edgeMomentNm ?? 0) * 1000) / twistStiffness(flex.stations, tipLengthMm, mountFromTipMm);
    expect(story?.twist.degrees).toBeCloseTo((radians * 180) / Math.PI, 6);
  });

  it("rows say length, class and bend: the bend over the span of that length", () => {
    const story = at(0.5, 2);
    for (const row of story?.whatIfs ?? []) {
      const span = ((story?.spanMm ?? 0) * row.lengthCm) / 178;
      expect(row.bendPercent).toBeCloseTo((100 * row.bendMm) / span, 9);
      const own = catalog.build.flexClasses.find((each) => row.flexRatio >= each.from && row.flexRatio < each.below);
      expect(row.flexClass).toBe(own?.number ?? null);
    }
    expect(story?.whatIfs.map((row) => row.change)).toEqual([
      "mass-up",
      "mass-down",
      "ability-up",
      "ability-down",
      "length-up",
      "length-down",
    ]);
    const light = stiffnessStory({ ...skier, massKg: 5 }, specOf(), catalog, null);
    expect(light?.whatIfs.some((row) => row.change === "mass-down")).toBe(false);
    // Without a band of the shop's own, the population's.
    expect(light?.band?.from).toBe("population");
  });
});

describe("builds of the same flex", () => {
  const shop: EngineCatalog = {
    ...catalog,
    build: { ...catalog.build, blends: catalog.build.blends.filter((each) => each.id === "aspen-ash") },
  };
  const found = sameFlexOptions({ answers: {}, choices: { ...midlow, core: "aspen-ash" } }, shop);
  if (!found.ok) throw new Error("no options");

  it("are weighed as pairs, priced whole, and measured on the bare ski between shoulder and mount", () => {
    for (const option of found.value.options.slice(0, 6)) {
      const { core, reinforcements } = option;
      const ski = solved(specOf({ ...midlow, core, reinforcements }), shop.build);
      const { tipLengthMm, mountFromTipMm } = ski.build.shape;
      expect(option.massG).toBe(Math.round(2000 * ski.flexWithPlate.massKg));
      expect(option.springCentreNPerMm).toBe(ski.flex.springCentreNPerMm);
      expect(option.forebodyTwistNmmPerRad).toBeCloseTo(
        twistStiffness(ski.flex.stations, tipLengthMm, mountFromTipMm),
        6,
      );
      const days = reinforcements.map((id) => shop.build.reinforcements.find((each) => each.id === id)?.leadDays ?? 0);
      expect(option.leadDays).toBe(Math.max(0, ...days));
      const { now } = found.value;
      expect(option.change).toEqual({
        massG: option.massG - now.massG,
        priceCents: option.priceCents - now.priceCents,
        springCentrePercent: expect.closeTo((option.springCentreNPerMm / now.springCentreNPerMm) * 100 - 100, 9),
        twistPercent: expect.closeTo((option.forebodyTwistNmmPerRad / now.forebodyTwistNmmPerRad) * 100 - 100, 9),
        leadDays: option.leadDays - now.leadDays,
        coreMidMm: option.coreMidMm - now.coreMidMm,
      });
    }
  });

  it("a shop without a price for one leaves it out and counts it", () => {
    const { flax: _gone, ...optionCents } = shop.priceBook.optionCents;
    const poor = sameFlexOptions(
      { answers: {}, choices: { ...midlow, core: "aspen-ash" } },
      { ...shop, priceBook: { ...shop.priceBook, optionCents } },
    );
    if (!poor.ok) throw new Error("no options");
    const withFlax = found.value.options.filter((each) => each.reinforcements.includes("flax")).length;
    expect(withFlax).toBeGreaterThan(0);
    expect(poor.value.leftOut.withoutPrice).toBe(withFlax);
    expect(poor.value.options).toHaveLength(32 - withFlax);
  });
});
