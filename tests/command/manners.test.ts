import { describe, expect, it } from "vitest";
import { runVerb } from "./run-verb";

describe("pairwright", () => {
  it("names an unknown field by its whole path, with exit code 2", () => {
    const { exitCode, json } = runVerb(["section"], {
      layers: [{ thicknessMm: 1, parts: [{ widthMm: 80, modulusMpa: 1000, colour: "red" }] }],
    });
    expect(exitCode).toBe(2);
    expect(json.invalid).toContainEqual({ path: "layers.0.parts.0.colour", message: 'unknown field "colour"' });
  });

  it("names a verb it does not know", () => {
    const { exitCode, json } = runVerb(["flexx"]);
    expect(exitCode).toBe(2);
    expect(json.invalid[0].message).toContain("flex");
  });

  it("says what is not JSON", () => {
    const { exitCode, json } = runVerb(["flex"], "{model: 1");
    expect(exitCode).toBe(2);
    expect(json.invalid[0].message).toContain("not JSON");
  });

  it("prints the schemas of a verb's input and output", () => {
    const { exitCode, json } = runVerb(["recommend", "--schema"]);
    expect(exitCode).toBe(0);
    expect(json.input.required).toEqual(expect.arrayContaining(["heightCm", "massKg", "ability"]));
    expect(json.output.required).toEqual(expect.arrayContaining(["choices", "flags"]));
  });

  it("refuses a file flag the verb does not know", () => {
    const { exitCode, json } = runVerb(["flex", "--dxf", "x.dxf"], {
      model: "midlow-95",
      lengthCm: 178,
      core: "aspen-ash",
    });
    expect(exitCode).toBe(2);
    expect(json.invalid[0].path).toBe("--dxf");
  });

  it("refuses a length the model is not made in, with the lengths that are", () => {
    const { exitCode, json } = runVerb(["flex"], { model: "midlow-95", lengthCm: 177, core: "aspen-ash" });
    expect(exitCode).toBe(1);
    expect(json.refusal).toMatchObject({ code: "length-not-offered", offeredCm: [162, 170, 178, 186] });
  });
});

describe("pairwright recommend", () => {
  // tests/services/scenarios/01 (invented setting): Midlow 84 at 174 (L* 173.8) and Midlow 95 at 178 (175.8), k 1.07.
  it("answers scenario 1 as worked out by hand", () => {
    const { json } = runVerb(["recommend"], { heightCm: 182, massKg: 82, ability: "confident", offPistePercent: 40 });
    const byModel = Object.fromEntries(
      json.choices.map((choice: { model: string }) => [choice.model, choice] as const),
    );
    expect(byModel["midlow-84"]).toMatchObject({ lengthCm: 174, flexClass: 3, nearClass: 4 });
    expect(byModel["midlow-84"].flexRatio).toBeCloseTo(1.07, 2);
    expect(byModel["midlow-95"]).toMatchObject({ lengthCm: 178 });
    expect(json.flags).toEqual([]);
  });
});

describe("pairwright price", () => {
  // tests/services/scenarios/10: 1590 + 90 + 150 + 95 = 1925 on PB-3, 1965 on PB-4.
  const choices = {
    model: "midlow-95",
    lengthCm: 178,
    reinforcements: ["carbon-stringers"],
    base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: "TY" },
    graphic: {
      kind: "own",
      layout: "same",
      windows: [],
      artwork: { id: "picture", widthPx: 12_000, heightPx: 1_200, sha256: "0".repeat(64) },
    },
  };

  it("adds up scenario 10's quote on the old and on the new price book", () => {
    expect(runVerb(["price"], { choices, priceBook: "PB-3" }).json.exTaxCents).toBe(192_500);
    expect(runVerb(["price"], { choices, priceBook: "PB-4" }).json.exTaxCents).toBe(196_500);
  });
});

describe("pairwright artwork", () => {
  // By hand: 4000 × 3000 px continuing over 1840 × 352 mm is 55 dpi.
  it("blocks a photo stretched across both skis", () => {
    const { json } = runVerb(["artwork"], {
      widthPx: 4000,
      heightPx: 3000,
      model: "ridgefold-106",
      lengthCm: 184,
      layout: "continuing",
    });
    expect(Math.round(json.effectiveDpi)).toBe(55);
    expect(json.verdict).toBe("block");
    expect(json.canvas.lengthMm).toBe(1840);
    // 3,000 px over 352 mm are 216 dpi: every other arrangement prints across the pair too.
    const arrangements = json.ways.map((way: { arrangement: string }) => way.arrangement);
    expect(arrangements).toEqual(["ends", "fade", "tiles", "motif", "split"]);
  });

  it("lays it out as it is asked to: 4,000 px at 150 dpi are 677 mm on shovel and tail", () => {
    const asked = { widthPx: 4000, heightPx: 3000, model: "ridgefold-106", lengthCm: 184, arrangement: "ends" };
    const { json } = runVerb(["artwork"], asked);
    expect(json).toMatchObject({ verdict: "ok", coversCanvas: false, ways: [] });
    expect(json.copies.map((copy: { within: { fromXMm: number; toXMm: number } }) => copy.within)).toEqual([
      { fromXMm: 0, toXMm: expect.closeTo(677.33, 2) },
      { fromXMm: expect.closeTo(1840 - 677.33, 2), toXMm: 1840 },
    ]);
  });
});

describe("pairwright schedule", () => {
  // S. M. Johnson, Naval Research Logistics Quarterly 1 (1954), 61–68: makespan 47 (data from memory, optimum enumerated).
  it("proves Johnson's two-machine flow shop", () => {
    const a = [4, 4, 30, 6, 2];
    const b = [5, 1, 4, 30, 3];
    const jobs = a.map((minutes, index) => ({
      id: `j${index}`,
      operations: [
        { id: "a", resource: "A", minutes },
        { id: "b", resource: "B", minutes: b[index] },
      ],
    }));
    const resources = ["A", "B"].map((id) => ({ id, capacity: 1 }));
    const { json } = runVerb(["schedule"], { resources, jobs, objective: "makespan", iterations: 2000, seed: 1 });
    expect(json.makespanMinutes).toBe(47);
  });
});

describe("pairwright promise", () => {
  const question = {
    spec: { model: "midlow-95", lengthCm: 178, core: "aspen-ash" },
    today: "2026-11-25",
    runs: 60,
    seed: 7,
  };

  it("gives the same dates for the same seed, in order, and names what they are made of", () => {
    const { exitCode, json } = runVerb(["promise"], question);
    expect(exitCode).toBe(0);
    const dates = [json.p10, json.p50, json.p80, json.p90, json.p95];
    expect(dates).toEqual(dates.toSorted());
    expect(json.p50 > "2026-11-25").toBe(true);
    expect(json.drivers.length).toBeGreaterThan(0);
    expect(runVerb(["promise"], question).json).toEqual(json);
  });

  it("promises an empty shop sooner than the demo's queue", () => {
    const nowMinute = Date.UTC(2026, 10, 25, 8, 30) / 60_000;
    const empty = runVerb(["promise"], { ...question, shop: { nowMinute, pairs: [] } }).json;
    expect(empty.workingDays.p50).toBeLessThan(runVerb(["promise"], question).json.workingDays.p50);
  });
});

describe("pairwright sheet", () => {
  const spec = {
    model: "midlow-95",
    lengthCm: 178,
    core: "aspen-ash",
    reinforcements: ["carbon-stringers"],
    flexRatio: 1.07,
    graphic: { kind: "house", house: "plain", layout: "same", windows: [] },
    base: { left: "black", right: "black", inlay: "none" },
    mount: { offsetMm: 0 },
    finish: { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 80, detuneTailMm: 50, structure: "M" },
    tipTailProtectors: false,
  };

  it("prints a build sheet of a complete spec", () => {
    const { exitCode, json } = runVerb(["sheet"], { spec, pairNumber: 417 });
    expect(exitCode).toBe(0);
    expect(Buffer.from(json.pdfBase64, "base64").subarray(0, 5).toString()).toBe("%PDF-");
  });

  it("refuses a spec whose options clash", () => {
    const { exitCode, json } = runVerb(["sheet"], {
      spec: { ...spec, model: "upleigh-92", lengthCm: 174, core: "paulownia-poplar", reinforcements: ["metal-pair"] },
    });
    expect(exitCode).toBe(1);
    expect(json.refusal.code).toBeTruthy();
  });
});
