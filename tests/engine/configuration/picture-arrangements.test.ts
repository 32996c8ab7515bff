/**
 * Arrangements of a picture, worked out by hand for a Ridgefold 106 at 184: canvas 1,840 × 162 mm, across the pair 352 mm;
 * boot and binding hide 320 mm about the mount line. 25.4 mm an inch; at 150 dpi a pixel is 0.16933 mm.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  betterOffers,
  bootStretch,
  firstOffer,
  type PictureArrangement,
  pictureArrangements,
  pictureCopies,
  pictureOffers,
  picturePrint,
} from "#engine/configuration";
import { halfWidthAt, shapeAtLength } from "#engine/geometry";
import { catalog } from "../demo-catalog";
import { modelShape } from "../geometry/truth";

const { print } = catalog.build.rules;
const shape = shapeAtLength(modelShape("ridgefold-106"), 184);
const field = { shape, mountOffsetMm: 0 };
/** Of a telephone: 12 million pixels. */
const photo = { widthPx: 4032, heightPx: 3024 };
const boot = bootStretch(field, print);
const laid = (arrangement: PictureArrangement, layout: "same" | "continuing" = "same", picture = photo) =>
  picturePrint(picture, { arrangement, layout }, field, print);

describe("a photo of 4,032 × 3,024 px", () => {
  it("fills a ski at 55 dpi and prints in five other ways", () => {
    // 1,840 mm over 4,032 px: 0.4563 mm a pixel.
    expect(laid("fill").effectiveDpi).toBeCloseTo((4032 / 1840) * 25.4, 6);
    const offers = pictureOffers(photo, { layout: "same" }, field, print);
    expect(offers.map(({ arrangement, layout, print: { verdict } }) => [arrangement, layout, verdict])).toEqual([
      ["fill", "same", "block"],
      ["ends", "same", "ok"],
      ["fade", "same", "ok"],
      ["tiles", "same", "ok"],
      ["motif", "same", "ok"],
      ["split", "continuing", "ok"],
    ]);
    expect(firstOffer(offers)?.arrangement).toBe("ends");
    const better = betterOffers(photo, { layout: "same" }, field, print);
    expect(better.map(({ arrangement }) => arrangement)).toEqual(["ends", "fade", "tiles", "motif", "split"]);
    expect(betterOffers(photo, { layout: "same", arrangement: "motif" }, field, print)).toEqual([]);
  });

  it("lies on shovel and tail, 682.8 mm long at 150 dpi where there is room for that", () => {
    const [front, tail] = laid("ends").copies;
    expect(front?.within).toEqual({ fromXMm: 0, toXMm: expect.closeTo((4032 * 25.4) / 150, 6) });
    expect(front?.placement.centreXMm).toBeCloseTo(341.38, 2);
    // The same behind the boot, from the tail on: 1,840 − 682.752.
    expect(tail?.within).toEqual({ fromXMm: expect.closeTo(1157.248, 6), toXMm: 1840 });
    expect(tail?.placement.mmPerPixel).toBeCloseTo(25.4 / 150, 9);
    expect(laid("ends").effectiveDpi).toBeCloseTo(150, 6);
    // 682.8 × 162 mm of it are seen: the whole width, 162 / 0.16933 = 956.7 px of the height.
    expect(laid("ends").crop).toEqual({ widthPx: expect.closeTo(4032, 6), heightPx: expect.closeTo(956.69, 2) });
    expect(laid("ends").coversCanvas).toBe(false);
  });

  it("is moved sideways as far as it still covers the ski: (512.064 − 162) / 2 = 175.03 mm either way", () => {
    const at = (sideShift: number) =>
      pictureCopies(photo, { layout: "same", arrangement: "ends", sideShift }, field, print).copies.map(
        ({ placement }) => placement.centreYMm,
      );
    expect(at(1)).toEqual([expect.closeTo(175.032, 3), expect.closeTo(175.032, 3)]);
    expect(at(-0.5)).toEqual([expect.closeTo(-87.516, 3), expect.closeTo(-87.516, 3)]);
    expect(at(0)).toEqual([0, 0]);
  });

  it("of more pixels reaches the boot at its own resolution", () => {
    const [front, tail] = laid("ends", "same", { widthPx: 9000, heightPx: 3024 }).copies;
    expect(front?.within).toEqual({ fromXMm: 0, toXMm: expect.closeTo(boot.fromXMm, 6) });
    expect(front?.placement.mmPerPixel).toBeCloseTo(boot.fromXMm / 9000, 9);
    expect(tail?.within).toEqual({ fromXMm: expect.closeTo(boot.toXMm, 6), toXMm: 1840 });
    expect(tail?.placement.mmPerPixel).toBeCloseTo((1840 - boot.toXMm) / 9000, 9);
  });

  it("lies across both skis from the tips on, and fades on the last two fifths of its length", () => {
    expect(laid("split", "continuing").copies).toHaveLength(1);
    expect(laid("split", "continuing").effectiveDpi).toBeCloseTo(150, 6);
    // 3,024 px at 150 dpi are 512 mm: more than the 352 mm of the pair.
    expect(laid("split", "continuing").crop.heightPx).toBeCloseTo(352 / (25.4 / 150), 6);
    const { copies, fades } = laid("fade");
    expect(fades).toEqual([{ fromXMm: expect.closeTo(682.752 * 0.6, 3), toXMm: copies[0]?.within?.toXMm }]);
  });

  it("is repeated as wide as the ski: 162 mm over 3,024 px is 474 dpi, 216 mm long, nine times", () => {
    const tiles = laid("tiles");
    expect(tiles.effectiveDpi).toBeCloseTo((3024 / 162) * 25.4, 6);
    expect(tiles.copies).toHaveLength(9);
    expect(tiles.copies.map(({ placement }) => Math.round(placement.centreXMm))).toEqual([
      108, 324, 540, 756, 972, 1188, 1404, 1620, 1836,
    ]);
    expect(tiles.coversCanvas).toBe(true);
  });

  it("turned by a quarter lies with its height along the ski: 512 mm at 150 dpi", () => {
    const [front] = pictureCopies(photo, { layout: "same", arrangement: "ends", quarterTurns: 1 }, field, print).copies;
    expect(front?.placement.angleDeg).toBe(90);
    expect(front?.within?.toXMm).toBeCloseTo((3024 * 25.4) / 150, 6);
  });
});

describe("a picture too small for the width of a ski", () => {
  it("is repeated in columns about the middle, and no side shorter than 24 mm", () => {
    // 300 × 300 px at 150 dpi: 50.8 mm; 162 mm take four columns, 1,840 mm 37 rows.
    const tiles = laid("tiles", "same", { widthPx: 300, heightPx: 300 });
    expect(tiles.copies).toHaveLength(4 * 37);
    expect(tiles.copies.slice(0, 4).map(({ placement }) => placement.centreYMm)).toEqual(
      [-76.2, -25.4, 25.4, 76.2].map((mm) => expect.closeTo(mm, 6)),
    );
    expect(laid("tiles", "same", { widthPx: 60, heightPx: 60 }).effectiveDpi).toBeCloseTo((60 / 24) * 25.4, 6);
  });

  it("says that it is too coarse to cover the shovel: 162 mm over 500 px are 78 dpi", () => {
    expect(laid("ends", "same", { widthPx: 4000, heightPx: 500 })).toMatchObject({ verdict: "block" });
    expect(laid("ends", "same", { widthPx: 4000, heightPx: 500 }).effectiveDpi).toBeCloseTo((500 / 162) * 25.4, 6);
  });
});

describe("whatever the picture's shape", () => {
  const pixels = fc.record({
    widthPx: fc.integer({ min: 50, max: 9000 }),
    heightPx: fc.integer({ min: 50, max: 9000 }),
  });

  it("shovel, tail, fade and split stay clear of the boot and cover their width", () => {
    fc.assert(
      fc.property(
        pixels,
        fc.constantFrom("ends", "fade", "split"),
        fc.integer({ min: 0, max: 3 }),
        (picture, as, turns) => {
          const layout = as === "split" ? "continuing" : "mirrored";
          const { copies, canvas } = picturePrint(
            picture,
            { arrangement: as, layout, quarterTurns: turns },
            field,
            print,
          );
          for (const { placement, within } of copies) {
            if (within === undefined) throw new Error("a piece ends somewhere");
            expect(within.toXMm <= boot.fromXMm + 1e-6 || within.fromXMm >= boot.toXMm - 1e-6).toBe(true);
            const across = turns % 2 === 0 ? picture.heightPx : picture.widthPx;
            expect(across * placement.mmPerPixel).toBeGreaterThanOrEqual(canvas.widthMm - 1e-6);
          }
        },
      ),
    );
  });

  it("a motif is whole, inside the safe line, ahead of the boot, and at 150 dpi or finer", () => {
    fc.assert(
      fc.property(pixels, fc.integer({ min: 0, max: 3 }), (picture, turns) => {
        const { copies, effectiveDpi } = picturePrint(
          picture,
          { arrangement: "motif", layout: "same", quarterTurns: turns },
          field,
          print,
        );
        const placement = copies[0]?.placement ?? expect.fail("no copy");
        const [along, across] =
          turns % 2 === 0 ? [picture.widthPx, picture.heightPx] : [picture.heightPx, picture.widthPx];
        const half = (along * placement.mmPerPixel) / 2;
        expect(placement.centreXMm + half).toBeLessThanOrEqual(boot.fromXMm - print.safeMm + 1e-6);
        for (const share of [-1, -0.5, 0, 0.5, 1]) {
          const room = halfWidthAt(shape, Math.max(0, placement.centreXMm + share * half)) - print.safeMm;
          expect((across * placement.mmPerPixel) / 2).toBeLessThanOrEqual(room + 1e-6);
        }
        expect(effectiveDpi).toBeGreaterThanOrEqual(150 - 1e-6);
      }),
    );
  });

  it("every arrangement has copies, and one that fills leaves its placement alone", () => {
    for (const arrangement of pictureArrangements) {
      expect(pictureCopies(photo, { arrangement, layout: "same" }, field, print).copies.length).toBeGreaterThan(0);
    }
    const placement = { centreXMm: 100, centreYMm: 3, mmPerPixel: 0.1, angleDeg: 12 };
    expect(pictureCopies(photo, { layout: "same", placement }, field, print).copies).toEqual([{ placement }]);
    expect(() => pictureCopies({ widthPx: 0, heightPx: 5 }, { layout: "same" }, field, print)).toThrow(/0 × 5 px/);
  });
});
