import { describe, expect, it } from "vitest";
import { fill } from "#engine/units";

describe("fill", () => {
  it("puts values into their places, as often as they stand there", () => {
    expect(fill("{a} and {b}, {a} again", { a: "oak", b: 2 })).toBe("oak and 2, oak again");
  });

  it("takes a value as it is, whatever stands in it", () => {
    expect(fill("“{text}”", { text: "$& {b} $1" })).toBe("“$& {b} $1”");
  });

  it("throws when the words name a place that is not given", () => {
    expect(() => fill("{a} of {b}", { a: 1 })).toThrow(/\{b\}/);
  });
});
