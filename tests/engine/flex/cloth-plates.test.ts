import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluateFlex, type LayerMaterial, type SkiBuild } from "#engine/flex";
import { laminateConstants, plateCompliance, plateStiffness, reducedStiffness } from "#engine/laminate";
import { localSection, sectionBendingStiffness } from "#lib/engine/flex/local-section";
import { demoBuild, demoModels, designedCore } from "./demo-builds";

const model = demoModels[0];
if (!model) throw new Error("no demo model");
const plain = demoBuild(model, model.refLengthCm);
/** Ahead of the steel and on the spacer every layer is one sheet of the full width. */
const onSpacer = plain.coreFromMm / 2;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lamina = fc.record({
  e1Mpa: between(20_000, 140_000),
  e2Mpa: between(3000, 12_000),
  g12Mpa: between(2000, 6000),
  nu12: between(0.2, 0.35),
});
type Lamina = { e1Mpa: number; e2Mpa: number; g12Mpa: number; nu12: number };

/** A balanced cloth of such laminas, homogenised: equal parts at +angle and −angle, mirrored. */
function clothOf(lam: Lamina, angleDeg: number): LayerMaterial {
  const plies = [angleDeg, -angleDeg, -angleDeg, angleDeg].map((angle) => ({
    ...lam,
    angleDeg: angle,
    thicknessMm: 0.1,
  }));
  const { exMpa, eyMpa, gxyMpa, nuXy } = laminateConstants(plies);
  return { label: "cloth", exMpa, eyMpa, gxyMpa, nuXy, densityKgM3: 1500 };
}

/** b/d11 of the 6×6 for layers given as laminas along the ski's axes. */
function fullTheory(
  widthMm: number,
  layers: readonly { readonly thicknessMm: number; readonly material: LayerMaterial }[],
) {
  const plate = plateStiffness(
    layers.map(({ thicknessMm, material: { exMpa, eyMpa, gxyMpa, nuXy } }) => ({
      thicknessMm,
      stiffness: reducedStiffness({ e1Mpa: exMpa, e2Mpa: eyMpa, g12Mpa: gxyMpa, nu12: nuXy }),
    })),
  );
  return widthMm / (plateCompliance(plate).d[0]?.[0] ?? Number.NaN);
}

describe("EI of a section with cloths on the diagonals", () => {
  it("is that of lamination theory, b/d11 of the inverted 6×6, on fresh lay-ups", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(lamina, between(0, 90), between(0.2, 0.9)), { minLength: 2, maxLength: 5 }),
        fc.nat(4),
        between(2, 12),
        (cloths, cut, coreMm) => {
          const sheets = cloths.map(([lam, angle, thicknessMm], i) => ({
            role: "fabric" as const,
            id: `cloth-${i}`,
            material: clothOf(lam, angle),
            thicknessMm,
            extent: { kind: "full" } as const,
          }));
          const at = cut % cloths.length;
          const spacer: LayerMaterial = { ...plain.sidewall.material, nuXy: 0 };
          const build: SkiBuild = {
            ...plain,
            spacer,
            edge: { ...plain.edge, heightMm: 0 },
            layers: [...sheets.slice(0, at), { role: "core" }, ...sheets.slice(at)],
          };
          const section = localSection(build, onSpacer);
          const wanted = fullTheory(section.widthMm, [
            ...sheets.slice(0, at),
            { thicknessMm: coreMm, material: spacer },
            ...sheets.slice(at),
          ]);
          expect(sectionBendingStiffness(section, coreMm) / wanted).toBeCloseTo(1, 8);
        },
      ),
      { numRuns: 100, seed: 21 },
    );
  });

  it("with carbon at ±45° is some per cent more than by moduli alone, never less", () => {
    const carbon = clothOf({ e1Mpa: 105_400, e2Mpa: 6600, g12Mpa: 2800, nu12: 0.3 }, 45);
    const ply = (id: string) => ({
      role: "fabric" as const,
      id,
      material: carbon,
      thicknessMm: 0.379,
      extent: { kind: "full" } as const,
    });
    const core = plain.layers.findIndex(({ role }) => role === "core");
    const layers = [
      ...plain.layers.slice(0, core),
      ply("a"),
      { role: "core" } as const,
      ply("b"),
      ...plain.layers.slice(core + 1),
    ];
    const glass = layers.map((layer) => {
      if (layer.role === "core" || layer.material === carbon) return layer;
      const across = layer.role === "fabric" ? { eyMpa: 11_680, nuXy: 0.432 } : { nuXy: 0.35 };
      return { ...layer, material: { ...layer.material, ...across } };
    });
    const columns = plain.columns.map((column) => ({ ...column, acrossModulusMpa: 0.07 * column.axialModulusMpa }));
    const build: SkiBuild = { ...plain, layers: glass, columns };
    const profile = designedCore(model, plain);
    const spring = (of: SkiBuild) => evaluateFlex(of, profile).springCentreNPerMm;
    const more = spring(build) / spring({ ...build, sections: "thin-skins" }) - 1;
    expect(more).toBeGreaterThan(0.02);
    expect(more).toBeLessThan(0.05);
  });
});
