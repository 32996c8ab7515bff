/** The `core` verb tells thickness, what held it, and which cloth was laid; its words for a flex that nobody builds. */
import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import { coreVerb } from "#lib/command/verbs/core";
import { runVerb } from "./run-verb";

const noFlags = { files: {}, write: async () => undefined, clock: () => 0, today: isoDate("2026-11-30") };
const core = async (input: unknown) => coreVerb.run(coreVerb.input.parse(input), noFlags);
const short = { model: "kerfline-68", lengthCm: 150, core: "aspen-ash", reinforcements: [], flexRatio: 0.72 };

describe("core", () => {
  it("answers on the command line", () => {
    const { exitCode, json } = runVerb(["core"], { ...short, prefer: "price" });
    expect(exitCode).toBe(0);
    expect(json.limitedBy).toContain("cloth");
    expect(json.profile.length).toBeGreaterThan(50);
  });

  // Midlow 95 at 178: mount line at 965, wood from 180 to 1660, 95 mm at the waist. Plate 480 × 77 with 0.3 mm of play all
  // round, 0.5 + 0.2 + 0.05 deep. Pockets clear of half the mat and 40 mm: to 965 − 340 and from 965 + 340, as long as 0.35 of
  // the wood that is left: 0.35 · 445 = 155.75 before, 0.35 · 355 = 124.25 behind. The shop's sizes: common practice, no source.
  const pocketed = { model: "midlow-95", lengthCm: 178, core: "aspen-ash", lightening: true };
  const byHand = [
    ["plate-pocket", 724.7, 1205.3, 77.6, 0.75],
    ["core-pocket-fore", 469.25, 625, 40, 3],
    ["core-pocket-aft", 1305, 1429.25, 40, 3],
  ] as const;

  it("writes the pockets that the router mills, each where it lies and as deep as it goes", async () => {
    const written: Record<string, string> = {};
    const write = async (path: string, content: string | Uint8Array) => {
      written[path] = String(content);
    };
    const flags = { ...noFlags, files: { dxf: "core.dxf", svg: "core.svg" }, write };
    const found = await coreVerb.run(coreVerb.input.parse(pocketed), flags);
    expect(found).toMatchObject({
      ok: true,
      value: {
        pockets: byHand.map(([name, fromMm, toMm, widthMm, depthMm]) => ({
          name,
          fromMm: expect.closeTo(fromMm, 6),
          toMm: expect.closeTo(toMm, 6),
          widthMm: expect.closeTo(widthMm, 6),
          depthMm: expect.closeTo(depthMm, 6),
        })),
      },
    });
    const corners = verticesOf(written["core.dxf"] ?? "");
    for (const [name, fromMm, toMm, widthMm, depthMm] of byHand) {
      const [y, z] = [widthMm / 2, -depthMm];
      expect(corners[name.toUpperCase().replaceAll("-", "_")]).toEqual(
        [
          [fromMm, y],
          [toMm, y],
          [toMm, -y],
          [fromMm, -y],
        ].map((point) => [...point, z].map((value) => expect.closeTo(value as number, 3))),
      );
    }
    const wood = corners.WOOD ?? [];
    expect([Math.min(...wood.map(([x]) => x)), Math.max(...wood.map(([x]) => x))]).toEqual([180, 1660]);
    // 95 mm at the waist less two sidewalls of 7 mm.
    expect(Math.min(...wood.map(([, y]) => Math.abs(y)))).toBeCloseTo(40.5, 2);
    expect(new Set(wood.map(([, , z]) => z))).toEqual(new Set([0]));
    expect(written["core.svg"]).toContain('id="CORE_POCKET_FORE" data-depth-mm="3.00"');
  });

  it("moves the plate's pocket with the mount line, and leaves the others where the model has them", async () => {
    const moved = await core({ ...pocketed, mount: { offsetMm: 20 } });
    expect(moved).toMatchObject({
      ok: true,
      value: { pockets: [{ fromMm: expect.closeTo(704.7, 6) }, { toMm: 625 }, { fromMm: 1305 }] },
    });
    const whole = await core({ ...pocketed, lightening: false });
    expect(whole.ok && (whole.value as { pockets: unknown[] }).pockets).toHaveLength(1);
  });

  it("keeps the model's own cloth where thickness does", async () => {
    const found = await core({ ...short, lengthCm: 168, flexRatio: 1 });
    expect(found).toMatchObject({
      ok: true,
      value: { cloth: { isOwn: true, bottom: ["triax-750"], top: ["triax-750"] } },
    });
  });

  it("reports another cloth among the limits, in the layers and by what it was chosen", async () => {
    const found = await core({ ...short, prefer: "mass" });
    expect(found).toMatchObject({
      ok: true,
      value: {
        limitedBy: expect.arrayContaining(["boot-floor", "cloth"]),
        cloth: { isOwn: false, bottom: ["triax-300"], top: ["triax-300"] },
        layers: expect.arrayContaining([
          { role: "fabric", material: "Triaxial glass, 300 g/m²", thicknessMm: 0.262 },
          { role: "core" },
        ]),
      },
    });
  });

  it("refuses with the nearest builds where no cloth does", async () => {
    const carbon = {
      model: "upleigh-92",
      lengthCm: 158,
      core: "paulownia-poplar",
      reinforcements: ["carbon-stringers"],
    };
    const found = await core({ ...carbon, flexRatio: 0.65 });
    expect(found).toMatchObject({
      ok: false,
      refusal: {
        code: "flex-not-buildable",
        lengthCm: 158,
        softer: null,
        limitedBy: expect.arrayContaining(["boot-floor"]),
      },
    });
    const stiffer = found.ok ? null : (found.refusal.stiffer as { readonly flexRatio: number } | null);
    expect(await core({ ...carbon, flexRatio: stiffer?.flexRatio })).toMatchObject({ ok: true });
  });
});

/** Points of every polyline, by the name of its layer. */
function verticesOf(dxf: string): Record<string, readonly (readonly [x: number, y: number, z: number])[]> {
  const lines = dxf.split("\r\n");
  const found: Record<string, [number, number, number][]> = {};
  for (let i = 0; i + 9 < lines.length; i += 2) {
    if (Number(lines[i]) !== 0 || lines[i + 1] !== "VERTEX") continue;
    const [layer = "", x, y, z] = [3, 5, 7, 9].map((at) => lines[i + at]);
    found[layer] = [...(found[layer] ?? []), [Number(x), Number(y), Number(z)]];
  }
  return found;
}
