import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { graphicResolution, letteringFit, letteringWarnings, pairArt, printCanvas } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { catalog, specOf } from "../demo-catalog";
import { modelShape } from "../geometry/truth";

const { print } = catalog.build.rules;
const ridgefold = shapeAtLength(modelShape("ridgefold-106"), 184);

// Canvas and pixels worked out by hand from 25.4 mm an inch.
describe("printCanvas", () => {
  it("is 1,840 × 162 mm for one Ridgefold 106 at 184 and 1,840 × 352 mm for a picture across both", () => {
    expect(printCanvas("same", ridgefold, print)).toEqual({ lengthMm: 1840, widthMm: 162 });
    expect(printCanvas("continuing", ridgefold, print)).toEqual({ lengthMm: 1840, widthMm: 352 });
  });

  it.each([
    [100, 7244, 638, 1386],
    [150, 10866, 957, 2079],
    [300, 21732, 1913, 4157],
  ])("takes the table's pixels at %i dpi", (dpi, along, one, both) => {
    const px = (mm: number) => Math.round((mm / 25.4) * dpi);
    expect(px(printCanvas("same", ridgefold, print).lengthMm)).toBe(along);
    expect(px(printCanvas("same", ridgefold, print).widthMm)).toBe(one);
    expect(px(printCanvas("continuing", ridgefold, print).widthMm)).toBe(both);
  });
});

describe("graphicResolution", () => {
  const photo = { widthPx: 4000, heightPx: 3000 };
  const canvas = printCanvas("continuing", ridgefold, print);

  it("finds 55 dpi in a 4,000 × 3,000 photo over 1,840 × 352 mm and blocks it", () => {
    const found = graphicResolution(photo, canvas, print);
    expect(Math.round(found.effectiveDpi)).toBe(55);
    expect(found.crop.widthPx).toBeCloseTo(4000, 6);
    expect(Math.round(found.crop.heightPx)).toBe(765);
    expect(found.verdict).toBe("block");
  });

  it.each([
    [150, "ok"],
    [149.9, "warn"],
    [100, "warn"],
    [99.9, "block"],
  ] as const)("says of %d dpi: %s", (dpi, verdict) => {
    const placement = { centreXMm: 920, centreYMm: 0, mmPerPixel: 25.4 / dpi, angleDeg: 0 };
    expect(graphicResolution(photo, canvas, print, placement).verdict).toBe(verdict);
  });

  it("fills the canvas whatever the picture's shape, and never prints more pixels than there are", () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 20_000 }), fc.integer({ min: 50, max: 20_000 }), (widthPx, heightPx) => {
        const found = graphicResolution({ widthPx, heightPx }, canvas, print);
        expect(found.coversCanvas).toBe(true);
        expect(found.crop.widthPx).toBeLessThanOrEqual(widthPx);
        expect(found.crop.heightPx).toBeLessThanOrEqual(heightPx);
      }),
    );
  });

  it("sees that a picture turned by a right angle leaves the ends bare", () => {
    const placement = { centreXMm: 920, centreYMm: 0, mmPerPixel: 0.46, angleDeg: 90 };
    expect(graphicResolution(photo, canvas, print, placement).coversCanvas).toBe(false);
  });

  it("cannot take a picture without pixels", () => {
    expect(() => graphicResolution({ widthPx: 0, heightPx: 10 }, canvas, print)).toThrow(/artwork: 0 × 10 px/);
  });
});

describe("pairArt", () => {
  it("reflects only the right ski of a mirrored pair", () => {
    const { left, right } = pairArt("mirrored", ridgefold, print);
    expect([left.isReflected, right.isReflected]).toEqual([false, true]);
  });

  it("lets a picture run on across the gap: 138 + 52 mm between the centre lines", () => {
    const { left, right } = pairArt("continuing", ridgefold, print);
    expect(left.pictureAtYMm - right.pictureAtYMm).toBe(190);
  });
});

describe("letteringFit", () => {
  // By hand: 10 characters of 0.9 × 20 = 18 mm are 180 mm; the mount line lies at 985 and hides 825 to 1,145 mm. With its
  // middle at 807 the text begins at 717; H, O, M, E have their middles at 717 + 18 · (6.5 … 9.5) = 834 … 888: four hidden.
  const text = { text: "RIDGE HOME", xMm: 807, capHeightMm: 20 };

  it("counts four letters of RIDGE HOME under the binding", () => {
    const fit = letteringFit(text, ridgefold, 985, print);
    expect(fit.letters).toBe(9);
    expect(fit.hiddenLetters).toBe(4);
  });

  it("suggests the nearest place where every letter shows", () => {
    const fit = letteringFit(text, ridgefold, 985, print);
    expect(fit.clearXMm).toBe(985 - 160 - 90);
    const moved = letteringFit({ ...text, xMm: fit.clearXMm ?? 0 }, ridgefold, 985, print);
    expect(moved.hiddenLetters).toBe(0);
  });

  it("warns, with the shift as a way, and of letters too low to read", () => {
    const graphic = {
      kind: "house",
      layout: "mirrored",
      windows: [],
      text: { ...text, capHeightMm: 7, xMm: 985 },
    } as const;
    const spec = specOf({ model: "ridgefold-106", graphic });
    const warnings = letteringWarnings(spec, ridgefold, print);
    expect(warnings.map((each) => each.code)).toEqual(["letters-hidden", "text-too-small"]);
    expect(warnings[0]?.ways[0]?.choices.graphic?.text?.xMm).toBeDefined();
  });
});
