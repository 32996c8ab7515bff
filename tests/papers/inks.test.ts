import { describe, expect, it } from "vitest";
import { INK, LARCH, PENCIL, TINT, WHITE } from "#papers/parts/theme";

/** Relative luminance and contrast as in WCAG 2.2, definitions of the same names. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

describe("printed inks", () => {
  // Luminance is what a black-and-white printer keeps, so contrast by luminance holds on its prints too.
  it.each([
    ["text on paper", INK, WHITE, 4.5],
    ["secondary text on paper", PENCIL, WHITE, 4.5],
    ["text on tint", INK, TINT, 4.5],
    ["safe line on paper", LARCH, WHITE, 3],
  ])("keep %s apart in black and white", (_, a, b, least) => {
    expect(contrast(a, b)).toBeGreaterThanOrEqual(least);
  });
});
