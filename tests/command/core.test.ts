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
