import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isDiagonalCloth } from "#engine/materials";
import { materialsFileSchema } from "#schemas/content/materials";

const file = materialsFileSchema.parse(JSON.parse(readFileSync("content/catalog/materials.json", "utf8")));

describe("the directions of a cloth's fibres", () => {
  it("are told by the catalogue", () => {
    expect(file.fabrics.length).toBeGreaterThan(5);
    expect(file.fabrics.filter(isDiagonalCloth).map(({ id }) => id)).toEqual([
      "biax-300",
      "carbon-biax-300",
      "flax-biax-300",
    ]);
  });

  it("are read from the stiffness in a release that does not tell them", () => {
    const old = materialsFileSchema.parse({
      ...file,
      fabrics: file.fabrics.map(({ fibresDeg: _, ...fabric }) => fabric),
    });
    expect(old.fabrics).toEqual(file.fabrics);
  });
});
