/** What a sheet may say of an own picture, and that what is stored reads the same; bounds are the product's own. */
import { describe, expect, it } from "vitest";
import { sheetChoicesSchema } from "#schemas";
import { storedGraphic } from "#schemas/stored/pair-spec";

const older = { kind: "own", layout: "same", windows: [] } as const;
const newer = {
  ...older,
  layout: "mirrored",
  arrangement: "ends",
  ground: "#46607a",
  quarterTurns: 3,
  sideShift: -0.5,
  unmirrored: { x: 0.1, y: 0.2, width: 0.9, height: 0.8 },
} as const;

describe("an own picture's fields", () => {
  it("are taken and read back whole, and are not needed", () => {
    for (const graphic of [older, newer]) {
      expect(sheetChoicesSchema.parse({ graphic }).graphic).toEqual(graphic);
      expect(storedGraphic.parse(JSON.parse(JSON.stringify(graphic)))).toEqual(graphic);
    }
  });

  it.each([
    [{ arrangement: "wallpaper" }, "Arrangement"],
    [{ ground: "red" }, "Ground colour"],
    [{ ground: "#46607A" }, "Ground colour"],
    [{ quarterTurns: 4 }, "Quarter turns"],
    [{ quarterTurns: 0.5 }, "Quarter turns"],
    [{ sideShift: 1.01 }, "Picture moved sideways"],
    [{ unmirrored: { x: 0.5, y: 0, width: 0.6, height: 0.2 } }, "must lie on the picture"],
    [{ unmirrored: { x: 0, y: 0, width: 0, height: 0.2 } }, "must lie on the picture"],
    [{ unmirrored: { x: -0.1, y: 0, width: 0.5, height: 0.2 } }, "Left side of the part"],
  ])("are refused by name: %j", (wrong, said) => {
    const read = sheetChoicesSchema.safeParse({ graphic: { ...newer, ...wrong } });
    expect(read.error?.issues.map(({ message }) => message).join()).toContain(said);
  });
});
