/**
 * Seen from above with the tips to the left, a skier's right is up: what is worked out by hand below is where each half of a
 * picture must then lie. Drawing conventions of the product's own; common practice, no source.
 */
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import type { GraphicSpec, PairSpec } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { proofPictures } from "#services/graphics/proof-pictures";

const { build } = loadCatalog();
const model = build.models.find(({ id }) => id === "midlow-95") ?? expect.fail("no Midlow 95");
const shape = shapeAtLength(model.shape, 178);
const [widthPx, heightPx] = [1000, 400];

/** A picture of two halves, the first red, the second blue. */
async function halves(split: "side by side" | "one above the other"): Promise<Uint8Array> {
  const half =
    split === "side by side" ? { width: widthPx / 2, height: heightPx } : { width: widthPx, height: heightPx / 2 };
  const of = (background: string) =>
    sharp({ create: { ...half, channels: 3, background } })
      .png()
      .toBuffer();
  const [red, blue] = await Promise.all([of("#ff0000"), of("#0000ff")]);
  const second = split === "side by side" ? { left: widthPx / 2, top: 0 } : { left: 0, top: heightPx / 2 };
  return sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: "#000000" } })
    .composite([
      { input: red, left: 0, top: 0 },
      { input: blue, ...second },
    ])
    .png()
    .toBuffer();
}

/** Colours of a ski's picture at a share of its length, above and below its centre line. */
async function middle(uri: string, along = 0.5): Promise<{ readonly above: string; readonly below: string }> {
  const bytes = Buffer.from(uri.slice(uri.indexOf(",") + 1), "base64");
  const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
  const at = (y: number) => {
    const from = (Math.round(y) * info.width + Math.round(info.width * along)) * info.channels;
    const [red = 0, green = 0, blue = 0] = data.subarray(from, from + 3);
    if (red > 200 && green > 200 && blue > 200) return "bare";
    if (green > 150 && red < 60 && blue < 60) return "ground";
    return red > 200 ? "red" : blue > 200 ? "blue" : "other";
  };
  return { above: at(info.height * 0.3), below: at(info.height * 0.7) };
}

async function drawn(graphic: Partial<GraphicSpec>, angleDeg: number, picture: Uint8Array) {
  const spec = {
    mount: { offsetMm: 0 },
    graphic: {
      kind: "own",
      artwork: { id: "a", widthPx, heightPx, sha256: "" },
      placement: { centreXMm: shape.lengthMm / 2, centreYMm: 0, mmPerPixel: 1, angleDeg },
      layout: "same",
      windows: [],
      ...graphic,
    },
  } as unknown as PairSpec;
  return proofPictures(spec, shape, build, picture);
}

async function pair(graphic: Partial<GraphicSpec>, angleDeg: number, picture: Uint8Array) {
  const { L, R } = await drawn(graphic, angleDeg, picture);
  return { left: await middle(L), right: await middle(R) };
}

const redAbove = { above: "red", below: "blue" };
const blueAbove = { above: "blue", below: "red" };

describe("pictures of a proof", () => {
  it("lie alike on both skis, and reflected where the layout says so: the inside edges are alike", async () => {
    const picture = await halves("one above the other");
    expect(await pair({ layout: "same" }, 0, picture)).toEqual({ left: redAbove, right: redAbove });
    expect(await pair({ layout: "mirrored" }, 0, picture)).toEqual({ left: redAbove, right: blueAbove });
  });

  it("are turned from the tail towards the skier's right", async () => {
    // The picture's right half, blue, points to the tail at 0°, to the skier's right at 90°.
    const turned = await pair({}, 90, await halves("side by side"));
    expect(turned.left).toEqual(blueAbove);
    expect((await pair({}, -90, await halves("side by side"))).left).toEqual(redAbove);
  });

  it("run on across both skis: the skier's left half on the left ski", async () => {
    const { left, right } = await pair({ layout: "continuing" }, 0, await halves("one above the other"));
    expect(left).toEqual({ above: "blue", below: "blue" });
    expect(right).toEqual({ above: "red", below: "red" });
  });

  it("leave the sheet bare where they do not reach", async () => {
    const placement = { centreXMm: 100, centreYMm: 0, mmPerPixel: 0.1, angleDeg: 0 };
    const { left } = await pair({ placement }, 0, await halves("one above the other"));
    expect(left).toEqual({ above: "bare", below: "bare" });
  });

  it("show shovel and tail on their ground, and what is marked as it reads on the mirrored ski", async () => {
    const picture = await halves("one above the other");
    const ends = { layout: "mirrored", arrangement: "ends", ground: "#00c800" } as const;
    const { L, R } = await drawn(ends, 0, picture);
    const ground = { above: "ground", below: "ground" };
    // 400 px have to cover 156 mm: 0.39 mm a pixel, and 1,000 px are 390 mm of 1,780, 22 % at either end.
    for (const [ski, ofPicture] of [
      [L, redAbove],
      [R, blueAbove],
    ] as const) {
      expect(await middle(ski, 0.05)).toEqual(ofPicture);
      expect(await middle(ski, 0.5)).toEqual(ground);
      expect(await middle(ski, 0.95)).toEqual(ofPicture);
    }
    // All of the picture's height on its left half stays as it reads: on the shovel, the first 195 mm, 11 %.
    const kept = await drawn({ ...ends, unmirrored: { x: 0, y: 0, width: 0.5, height: 1 } }, 0, picture);
    expect(await middle(kept.L, 0.03)).toEqual(redAbove);
    expect(await middle(kept.R, 0.03)).toEqual(redAbove);
    expect(await middle(kept.R, 0.15)).toEqual(blueAbove);
  });

  it("show a house graphic, its colours exchanged on the second ski where the layout says so", async () => {
    const house = build.houseGraphics.find(({ pattern }) => pattern === "folds") ?? expect.fail("no rock");
    const ofLayout = async (layout: GraphicSpec["layout"]) =>
      proofPictures(
        { mount: { offsetMm: 0 }, graphic: { kind: "house", house: house.id, layout, windows: [] } },
        shape,
        build,
        null,
      );
    const same = await ofLayout("same");
    expect(same.R).toBe(same.L);
    const exchanged = await ofLayout("alternate");
    expect(exchanged.L).toBe(same.L);
    expect(exchanged.R).not.toBe(same.L);
  });
});
