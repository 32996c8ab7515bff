/** What tells whether the README's pictures are old, on pictures whose difference is counted by hand. */
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { differentShare } from "../../.ci/pictures/compare.mjs";

/** Ten rows of ten white pixels; the first `count` are of a shade of grey. */
function picture(count: number, grey: number, width = 10): Promise<Uint8Array> {
  const data = Buffer.alloc(width * 10 * 3, 255);
  data.fill(grey, 0, count * 3);
  return sharp(data, { raw: { width, height: 10, channels: 3 } })
    .png()
    .toBuffer();
}

describe("two pictures", () => {
  it("differ by the share of pixels that are others", async () => {
    expect(await differentShare(await picture(3, 0), await picture(0, 0))).toBe(0.03);
    expect(await differentShare(await picture(3, 0), await picture(3, 0))).toBe(0);
  });

  it("are the same where a shade differs by less than an eye would mind", async () => {
    expect(await differentShare(await picture(50, 255 - 32), await picture(0, 0))).toBe(0);
    expect(await differentShare(await picture(50, 255 - 33), await picture(0, 0))).toBe(0.5);
  });

  it("count one colour alone, and transparency as paper", async () => {
    const paper = { width: 4, height: 5, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } as const;
    const blank = await sharp({ create: paper }).png().toBuffer();
    const white = await sharp({ create: { ...paper, background: "#ffffff" } })
      .png()
      .toBuffer();
    const yellow = await sharp({ create: { ...paper, background: "#ffff00" } })
      .png()
      .toBuffer();
    expect(await differentShare(blank, white)).toBe(0);
    expect(await differentShare(yellow, white)).toBe(1);
  });

  it("are others altogether when their sizes differ", async () => {
    expect(await differentShare(await picture(0, 0), await picture(0, 0, 11))).toBe(1);
  });
});
