/** Limits of what is asked and chosen, at the bound and one step beyond; the shop's own, no source. */
import { describe, expect, it } from "vitest";
import {
  answersSchema,
  asBenchReads,
  benchReadingsSchema,
  bookPairSchema,
  checkSheetField,
  pairSpecSchema,
  partialAnswersSchema,
  placementSchema,
  sheetChoicesSchema,
  typedMeasuresSchema,
} from "#schemas";
import { plainSpec } from "../engine/pricing/plain-spec";
import { tryBounds } from "./bounds";

const skier = { heightCm: 182, massKg: 82, ability: "confident" };
const own = {
  kind: "own",
  artwork: { id: "a-1", widthPx: 3000, heightPx: 400, sha256: "0".repeat(64) },
  placement: { centreXMm: 0, centreYMm: 0, mmPerPixel: 0.15, angleDeg: 0 },
  layout: "same",
  text: { text: "Ada", xMm: 900, capHeightMm: 20 },
  windows: [{ fromXMm: 0, toXMm: 100, halfWidthMm: 20 }],
};
const choices = {
  ...plainSpec,
  graphic: own,
  base: { left: "black", right: "red", inlay: "counterchange", inlayText: "AB" },
  mount: { offsetMm: 0, bootSoleMm: 305, bindingTrackMm: 400 },
  destination: "home",
  discounts: [{ code: "pro-deal", reason: "guide", approvedBy: "owner", basisPoints: 500 }],
};

describe("answers", () => {
  tryBounds({
    schema: answersSchema,
    sample: { ...skier, currentSki: {} },
    lines: [
      "heightCm                 [90, 250]",
      "massKg                   [15, 300]",
      "packKg                   [0, 40]",
      "offPistePercent          [0, 100]",
      "ageYears                 [3, 110]",
      "daysTotal                [0, 20000]",
      "touringPercent           [0, 100]",
      "currentSki.lengthCm      [60, 240]",
      "currentSki.waistMm       [40, 160]",
      "bootSoleMm               [180, 450]",
      "bindingTrackMm           [100, 700]",
      "mountOffsetMm            [-150, 150]",
    ],
  });

  it.each([
    ["priorities", "light", 6],
    ["terrain", "bumps", 4],
  ])("%s: at most as many as there are", (key, word, most) => {
    const said = (count: number) =>
      partialAnswersSchema.safeParse({ [key]: Array.from({ length: count }, () => word) });
    expect(said(most).success).toBe(true);
    expect(said(most + 1).error?.issues[0]?.message).toContain(`at most ${most}`);
  });

  // What was typed and what is counted agree within a hundredth.
  it.each([
    [82.0099, true],
    [81.9901, true],
    [82.0101, false],
    [81.9899, false],
  ])("82 kg typed beside %d kg: %s", (massKg, agrees) => {
    const typed = { mass: { unit: "kg", kg: 82 } };
    expect(answersSchema.safeParse({ ...skier, massKg, typed }).success).toBe(agrees);
  });
});

describe("measures as typed", () => {
  tryBounds({
    schema: typedMeasuresSchema,
    sample: { height: { unit: "cm", cm: 180 }, mass: { unit: "kg", kg: 80 } },
    lines: ["height.cm [90, 250]", "mass.kg [15, 300]"],
  });
  tryBounds({
    schema: typedMeasuresSchema,
    sample: { height: { unit: "ft-in", feet: 5, inches: 7 }, mass: { unit: "lb", lb: 149 } },
    lines: ["height.feet whole [2, 8]", "height.inches [0, 11.99]", "mass.lb [33, 662]"],
  });
});

describe("choices", () => {
  tryBounds({
    schema: sheetChoicesSchema,
    sample: choices,
    fill: "a",
    lines: [
      "lengthCm                          [80, 220]",
      "flexRatio                         [0.3, 2.5]",
      "graphic.artwork.widthPx     whole [1, 100000]",
      "graphic.artwork.heightPx    whole [1, 100000]",
      "graphic.artwork.id           text [1, 60]",
      "graphic.text.text            text [1, 60]",
      "graphic.text.xMm                  [-300, 2500]",
      "graphic.text.capHeightMm          [4, 120]",
      "graphic.windows.0.fromXMm         [-300, ]",
      "graphic.windows.0.toXMm           [, 2500]",
      "graphic.windows.0.halfWidthMm     [10, 80]",
      "base.inlayText               text [1, 24]",
      "mount.offsetMm                    [-150, 150]",
      "mount.bootSoleMm                  [180, 450]",
      "mount.bindingTrackMm              [100, 700]",
      "finish.baseBevelDeg               [0, 3]",
      "finish.sideAngleDeg               [0, 5]",
      "finish.detuneTipMm                [0, 400]",
      "finish.detuneTailMm               [0, 400]",
      "discounts.0.reason           text [1, 300]",
      "discounts.0.approvedBy       text [1, 120]",
      "discounts.0.basisPoints     whole [1, 10000]",
      "model                        text [, 60]",
    ],
  });
  tryBounds({
    schema: sheetChoicesSchema,
    sample: choices,
    entry: { fromXMm: 0, toXMm: 100, halfWidthMm: 20 },
    lines: ["graphic.windows items [, 6]"],
  });
  tryBounds({
    schema: sheetChoicesSchema,
    sample: choices,
    entry: { code: "pro-deal", reason: "guide", approvedBy: "owner" },
    lines: ["discounts items [, 4]"],
  });
  tryBounds({
    schema: placementSchema,
    sample: own.placement,
    lines: [
      "centreXMm  [-3000, 5000]",
      "centreYMm  [-2000, 2000]",
      "mmPerPixel [0.001, 100]",
      "angleDeg   [-360, 360]",
    ],
  });

  const refusedAt = (changed: object) =>
    sheetChoicesSchema.safeParse({ ...choices, ...changed }).error?.issues.map(({ path }) => path.join(".")) ?? [];
  const window = (fromXMm: number, toXMm: number) => ({
    graphic: { ...own, windows: [{ fromXMm, toXMm, halfWidthMm: 20 }] },
  });

  it.each([
    ["a window that ends behind its start", window(100, 100.001), []],
    ["a window without a length", window(100, 100), ["graphic.windows.0.toXMm"]],
    ["a window that ends before its start", window(200, 100), ["graphic.windows.0.toXMm"]],
    ["a bevel of 30°", { finish: { ...plainSpec.finish, baseBevelDeg: 30 } }, ["finish.baseBevelDeg"]],
    ["a side angle of 88°", { finish: { ...plainSpec.finish, sideAngleDeg: 88 } }, ["finish.sideAngleDeg"]],
    ["eight reinforcements", { reinforcements: [..."abcdefgh"] }, []],
    ["nine reinforcements", { reinforcements: [..."abcdefghi"] }, ["reinforcements"]],
    ["one reinforcement twice", { reinforcements: ["a", "b", "a"] }, ["reinforcements"]],
    ["a house graphic without a name", { graphic: { kind: "house", layout: "same", windows: [] } }, ["graphic.house"]],
    // Chosen and not finished: it is kept, and holds up the sale.
    ["letters between one colour", { base: { ...choices.base, right: "black" } }, []],
    ["letters that are not there yet", { base: { left: "black", right: "bone", inlay: "counterchange" } }, []],
    [
      "a checksum of 63 digits",
      { graphic: { ...own, artwork: { ...own.artwork, sha256: "0".repeat(63) } } },
      ["graphic.artwork.sha256"],
    ],
    ["a destination that is none", { destination: "moon" }, ["destination"]],
    ["words with a capital", { model: "Midlow-95" }, ["model"]],
  ])("%s", (_what, changed, paths) => {
    expect(refusedAt(changed)).toEqual(paths);
  });

  it("are finished where a pair is built from them", () => {
    const paths = (base: object) =>
      pairSpecSchema.safeParse({ ...plainSpec, base }).error?.issues.map(({ path }) => path.join(".")) ?? [];
    const letters = { left: "black", right: "bone", inlay: "counterchange", inlayText: "ROBIN" };
    expect(paths(letters)).toEqual([]);
    expect(paths({ ...letters, right: "black" })).toEqual(["base.right"]);
    expect(paths({ left: "black", right: "bone", inlay: "counterchange" })).toEqual(["base.inlayText"]);
  });

  it.each([
    ["said.height", "5'10\"", true],
    ["said.height", "x".repeat(61), false],
    ["choices.discounts", [{ code: "a", reason: "b" }], true],
    [
      "choices.discounts",
      [
        { code: "a", reason: "b" },
        { code: "c", reason: "d" },
      ],
      false,
    ],
    ["notes", "x".repeat(4000), true],
    ["notes", "x".repeat(4001), false],
    ["asked.ageYears", "refused", true],
    ["asked.ageYears", "perhaps", false],
    ["contact.name", "x".repeat(120), true],
    ["contact.name", "x".repeat(121), false],
    ["answers.typed", {}, false],
  ])("%s is saved alone: %o, %s", (path, value, passes) => {
    expect(checkSheetField(path, value).ok).toBe(passes);
  });
});

describe("the bench and the paper book", () => {
  tryBounds({
    schema: benchReadingsSchema,
    sample: {},
    lines: [
      "massKg                [400, 4000]",
      "camberMm              [-5, 30]",
      "springCentreNPerMm    [5, 400]",
      "springForebodyNPerMm  [1, 400]",
      "springAfterbodyNPerMm [1, 400]",
      "twistNmPerDeg         [0.1, 20]",
    ],
  });
  it.each([
    ["massKg", "Mass", "g"],
    ["camberMm", "Camber", "mm"],
    ["springCentreNPerMm", "Centre spring", "N/cm"],
    ["springForebodyNPerMm", "Forebody spring", "N/cm"],
    ["springAfterbodyNPerMm", "Afterbody spring", "N/cm"],
    ["twistNmPerDeg", "Twist", "N·m/°"],
  ])("%s out of bounds is refused by its name and unit", (measure, label, unit) => {
    const [issue] = benchReadingsSchema.safeParse({ [measure]: 9999 }).error?.issues ?? [];
    expect(issue?.path).toEqual([measure]);
    expect(issue?.message.startsWith(label)).toBe(true);
    expect(issue?.message).toContain(unit);
  });

  it("turns gram into kg, mm into mm and N/cm into N/mm", () => {
    const read = {
      massKg: 1800,
      camberMm: 4,
      springCentreNPerMm: 38,
      springForebodyNPerMm: 26,
      springAfterbodyNPerMm: 31,
    };
    expect(benchReadingsSchema.parse(read)).toEqual({
      massKg: 1.8,
      camberMm: 4,
      springCentreNPerMm: 3.8,
      springForebodyNPerMm: 2.6,
      springAfterbodyNPerMm: 3.1,
    });
    expect(asBenchReads(benchReadingsSchema.parse(read))).toEqual(read);
  });
  tryBounds({
    schema: bookPairSchema,
    sample: { serial: "TY-12", model: "midlow-95", lengthCm: 178, core: "aspen-ash", reinforcements: [], flexRatio: 1 },
    fill: "A",
    entry: "mat",
    lines: ["serial text [2, 20]", "lengthCm [100, 230]", "flexRatio [0.3, 3]", "reinforcements items [, 6]"],
  });
});
