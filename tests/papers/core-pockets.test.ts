/**
 * What the papers say of lightening pockets: where the router cuts, which cloth goes over them, and that the strips keep their
 * page. Midlow 95 at 178; places as worked out in tests/command/core.test.ts. The shop's sizes: common practice, no source.
 */
import { describe, expect, it } from "vitest";
import { blendById } from "#engine/configuration";
import { partsFor } from "#engine/parts";
import { composeCore } from "../../lib/papers/build-sheet/compose-core";
import { composeStack } from "../../lib/papers/build-sheet/compose-stack";
import { catalog, solved, specOf } from "../engine/demo-catalog";

const { build: shop } = catalog;
const plain = (text: string) => text.replaceAll("\u00a0", " ");

function papersOf(lightening: boolean) {
  const spec = specOf(lightening ? { lightening } : {});
  const { build, core, ...rest } = solved(spec);
  const blend = blendById(shop, spec.core);
  if (!blend.ok) throw new Error(spec.core);
  const parts = partsFor(spec, { build, core, ...rest }, shop, catalog.parts);
  return {
    stack: composeStack({ build, catalog: shop, parts, hasEndPatches: false }),
    core: composeCore({
      build,
      core,
      catalog: shop,
      blend: blend.value,
      strips: null,
      wood: undefined,
      mould: "M95-178-C",
    }),
    parts,
  };
}

describe("pockets in the core, on paper", () => {
  const { stack, core, parts } = papersOf(true);

  it("stand on the core's drawing with place, width and depth, and are out of the wood that is weighed", () => {
    expect(core.hollows).toMatchObject([
      { fromMm: expect.closeTo(469.25, 6), toMm: 625, widthMm: 40, depthMm: 3 },
      { fromMm: 1305, toMm: expect.closeTo(1429.25, 6), widthMm: 40, depthMm: 3 },
    ]);
    const whole = papersOf(false).core;
    expect(whole.hollows).toEqual([]);
    expect(core.plannedG.L).toBeLessThan(whole.plannedG.L);
  });

  it("have their carbon in the stack over the core, each over its own stretch of the ski", () => {
    // 20 mm beyond each end of a pocket, as shares of 1780 mm.
    const bridges = stack.filter(({ lines }) => lines.includes(56));
    expect(bridges.map(({ lies }) => lies)).toEqual([
      { fromShare: expect.closeTo(449.25 / 1780, 9), toShare: expect.closeTo(645 / 1780, 9) },
      { fromShare: expect.closeTo(1285 / 1780, 9), toShare: expect.closeTo(1449.25 / 1780, 9) },
    ]);
    expect(bridges.map(({ extent }) => plain(extent))).toEqual([
      "195.8 × 56 mm; 449–645 mm from the tip, over the core pocket",
      "164.3 × 56 mm; 1285–1449 mm from the tip, over the core pocket",
    ]);
    expect(bridges.every(({ isOption }) => isOption)).toBe(true);
    const at = (role: string) => stack.findIndex((layer) => layer.role === role);
    expect(stack.findIndex(({ lines }) => lines.includes(56))).toBeGreaterThan(at("core"));
  });

  it("are told apart on the list of parts, number and name together", () => {
    const rows = parts.lines.map(({ line, label }) => `${line}${label}`);
    expect(new Set(rows).size).toBe(rows.length);
  });
});

describe("a plate that was chosen", () => {
  it("is marked as an option on the list of parts, the shop's own is not", () => {
    const plateOf = (choices: object) => {
      const spec = specOf(choices);
      return partsFor(spec, solved(spec), shop, catalog.parts).lines.find(({ code }) => code === "plate")?.fromOption;
    };
    expect(plateOf({ plate: "magnesium" })).toBe("magnesium");
    expect(plateOf({})).toBeUndefined();
  });
});
