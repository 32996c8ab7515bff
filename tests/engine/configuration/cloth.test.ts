/** Another glass where thickness alone does not reach the flex: which, why, and that everything is made of it. */
import { describe, expect, it } from "vitest";
import { type BuildCatalog, type ClothPreference, clothChange, type PairSpec } from "#engine/configuration";
import { evaluateFlex } from "#engine/flex";
import { partsFor } from "#engine/parts";
import { clothOf, layupWithCloth, otherCloths } from "#lib/engine/configuration/cloth";
import { flexBuildOf, tryCloth } from "#lib/engine/configuration/flex-build";
import { catalog, solved, specOf } from "../demo-catalog";

const { build } = catalog;
const cloth = build.rules.cloth ?? expect.fail("the demo shop has no cloths");
const preferring = (prefer: ClothPreference): BuildCatalog => ({
  ...build,
  rules: { ...build.rules, cloth: { ...cloth, prefer } },
});
const shortMetal: PairSpec = specOf({ model: "kerfline-68", lengthCm: 150, flexRatio: 0.72 });
const orderOf = ({ model, lengthCm, core, flexRatio }: PairSpec, shop = build) => ({
  resolved: {
    model: shop.models.find(({ id }) => id === model) ?? expect.fail("no model"),
    blend: shop.blends.find(({ id }) => id === core) ?? expect.fail("no blend"),
    reinforcements: [],
    plate: null,
    lightening: null,
  },
  lengthCm,
  flexRatio,
  mountOffsetMm: 0,
});

describe("the cloth of a build", () => {
  it("is the model's own wherever its core reaches the flex", () => {
    for (const model of build.models) {
      const ski = solved(specOf({ model: model.id }));
      expect(ski.cloth).toMatchObject({ isOwn: true, because: [], by: null, laid: clothOf(model.layup) });
      expect(ski.layup).toBe(model.layup);
      expect(ski.core.limitedBy).not.toContain("cloth");
    }
  });

  it("is another where 9 mm under the boot make the model's own too stiff, and is told among the limits", () => {
    const { cloth: laid, core, build: ski } = solved(shortMetal);
    expect(laid.isOwn).toBe(false);
    expect(laid.because).toContain("boot-floor");
    expect(core.limitedBy).toEqual(expect.arrayContaining(["boot-floor", "cloth"]));
    expect(Math.abs(core.achievedRatio / 0.72 - 1)).toBeLessThan(0.05);
    const under = core.profile.stations.filter(({ xMm }) => Math.abs(xMm - ski.mountFromTipMm) < 160);
    for (const { thicknessMm } of under) expect(thicknessMm).toBeGreaterThanOrEqual(9);
    expect(clothChange(laid, build.materials)).toEqual({
      kind: "lighter",
      laid: "Triaxial glass, 300 g/m²",
      own: "Triaxial glass, 750 g/m²",
    });
  });

  it.each(["mass", "price"] as const)("is the best by %s of all that reach the flex", (prefer) => {
    const shop = preferring(prefer);
    const areaCost = (plies: readonly string[]) => plies.reduce((sum, id) => sum + (cloth.costCentsM2[id] ?? 0), 0);
    let chosen = 0;
    for (const [model, lengthCm, flexRatio] of [
      ["kerfline-68", 150, 0.72],
      ["kerfline-68", 150, 0.85],
      ["pathwick-75", 146, 0.7],
      ["midlow-84", 150, 0.68],
      ["upleigh-92", 158, 0.72],
    ] as const) {
      const order = orderOf(specOf({ model, lengthCm, flexRatio }), shop);
      const { build: found } = flexBuildOf(order, shop);
      if (found.cloth.isOwn) continue;
      chosen += 1;
      const worth = (tried: Pick<ReturnType<typeof tryCloth>, "bare" | "core">, plies: readonly string[]) =>
        prefer === "mass" ? evaluateFlex(tried.bare, tried.core.profile).massKg : areaCost(plies);
      const others = otherCloths(found.cloth.own, shop)
        .map((other) => tryCloth(order, other, shop))
        .filter(({ isReached }) => isReached);
      const best = Math.min(...others.map((each) => worth(each, each.cloth.bottom)));
      expect(worth(found, found.cloth.laid.bottom), `${model} ${lengthCm}`).toBeCloseTo(best, 6);
    }
    expect(chosen).toBeGreaterThanOrEqual(3);
  });

  it("differs by what the shop prefers: the lightest is not the cheapest", () => {
    const laid = (flexRatio: number, prefer: ClothPreference) =>
      flexBuildOf(orderOf({ ...shortMetal, flexRatio }), preferring(prefer)).build.cloth;
    const flexes = Array.from({ length: 30 }, (_, i) => 0.65 + i / 100);
    const apart = flexes.filter(
      (k) => !laid(k, "mass").isOwn && laid(k, "mass").laid.top[0] !== laid(k, "price").laid.top[0],
    );
    expect(apart.length).toBeGreaterThan(0);
    for (const k of apart) {
      expect(laid(k, "mass")).toMatchObject({ by: "mass", laid: { top: ["triax-300"] } });
      expect(laid(k, "price")).toMatchObject({ by: "price", laid: { top: ["triax-450"] } });
    }
  });

  it("is what the stack, the parts, the resin and the scale are made of", () => {
    const own = { ...build, rules: (({ cloth: _cloth, bench: _bench, ...rules }) => rules)(build.rules) };
    const [changed, plain] = [solved(shortMetal), solved(shortMetal, own)];
    const glass = changed.build.layers.flatMap((layer) =>
      layer.role === "fabric" ? [[layer.material.label, layer.thicknessMm]] : [],
    );
    expect(glass).toEqual([
      ["Triaxial glass, 300 g/m²", 0.262],
      ["Triaxial glass, 300 g/m²", 0.262],
    ]);
    const list = (ski: typeof changed, shop: BuildCatalog) => partsFor(shortMetal, ski, shop, catalog.parts);
    const line = (ski: typeof changed, shop: BuildCatalog, code: string) =>
      list(ski, shop).lines.find((each) => each.code === code) ?? expect.fail(code);
    for (const code of ["bottom-fabric", "top-fabric"]) {
      expect(line(changed, build, code).material).toBe("Triaxial glass, 300 g/m²");
      const share = (line(changed, build, code).netMassG ?? 0) / (line(plain, own, code).netMassG ?? 1);
      expect(share).toBeCloseTo(300 / 750, 9);
    }
    const resinG = (ski: typeof changed, shop: BuildCatalog) => line(ski, shop, "resin").netMassG ?? 0;
    expect(resinG(changed, build)).toBeLessThan(resinG(plain, own));
    expect(changed.flexWithPlate.massKg).toBeLessThan(plain.flexWithPlate.massKg);
  });

  it("keeps both faces alike only where the model's are", () => {
    const own = { bottom: ["triax-750"], top: ["triax-450"] };
    const faces = cloth.faces.length;
    expect(otherCloths(own, build)).toHaveLength(faces * faces - 1);
    const alike = otherCloths({ bottom: ["triax-750"], top: ["triax-750"] }, build);
    expect(alike).toHaveLength(faces - 1);
    for (const { bottom, top } of alike) expect(top).toEqual(bottom);
  });

  it("lies where the model's lay, from the outside in on both faces", () => {
    const model = build.models.find(({ hasMetal }) => hasMetal) ?? expect.fail("no metal model");
    const laid = layupWithCloth(model.layup, { bottom: ["triax-750", "triax-300"], top: ["triax-750", "triax-300"] });
    expect(laid.map((layer) => ("material" in layer ? layer.material : layer.role))).toEqual([
      "base",
      "triax-750",
      "triax-300",
      "rubber",
      "aluminium",
      "core",
      "aluminium",
      "rubber",
      "triax-300",
      "triax-750",
      "topsheet",
    ]);
    expect(clothOf(laid)).toEqual({ bottom: ["triax-750", "triax-300"], top: ["triax-750", "triax-300"] });
  });

  it("does not change with the strips: both skis have one programme and one cloth", () => {
    // A pair's programme follows from its spec alone, whatever strips either ski gets.
    expect(solved(shortMetal).core).toBe(solved({ ...shortMetal }).core);
  });
});
