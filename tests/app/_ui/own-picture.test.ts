/** The ground that a picture proposes, and the box around words in it; worked out by hand. */
import { describe, expect, it } from "vitest";
import { partOnPicture } from "#app/_ui/sheet/keep-readable.client.tsx";
import { meanOfRim, plainGround } from "#app/_ui/sheet/rim-colour.client.ts";

/** 32 × 32 px: one colour on the rim, another inside. */
function picture(rim: readonly number[], inside: readonly number[]): Uint8ClampedArray {
  return Uint8ClampedArray.from(
    Array.from({ length: 32 * 32 }, (_, i) => {
      const [x, y] = [i % 32, Math.floor(i / 32)];
      return x % 31 === 0 || y % 31 === 0 ? rim : inside;
    }).flat(),
  );
}

describe("meanOfRim", () => {
  it("is the rim's colour, whatever lies inside, and a plain one where the rim is clear", () => {
    expect(meanOfRim(picture([10, 160, 255, 255], [255, 0, 0, 255]))).toBe("#0aa0ff");
    expect(meanOfRim(picture([10, 160, 255, 0], [255, 0, 0, 255]))).toBe(plainGround);
  });

  it("is the mean of two halves", () => {
    const halves = picture([0, 0, 0, 255], [9, 9, 9, 255]);
    // The lower 62 of 124 pixels of the rim white: (62 × 255) / 124 = 127.5, told as 128.
    for (let i = 16 * 32; i < 32 * 32; i++) halves.set([255, 255, 255, 255], 4 * i);
    expect(meanOfRim(halves)).toBe("#808080");
  });
});

describe("partOnPicture", () => {
  it("keeps a box on the picture, with a size", () => {
    expect(partOnPicture({ x: 0.25, y: 0.5, width: 0.2, height: 0.1 })).toEqual({
      x: 0.25,
      y: 0.5,
      width: 0.2,
      height: 0.1,
    });
    expect(partOnPicture({ x: 0.9, y: -1, width: 0.5, height: 3 })).toEqual({ x: 0.9, y: 0, width: 0.1, height: 1 });
    expect(partOnPicture({ x: 2, y: 0.5, width: 0, height: 0 })).toEqual({
      x: 0.99,
      y: 0.5,
      width: 0.01,
      height: 0.01,
    });
  });
});
