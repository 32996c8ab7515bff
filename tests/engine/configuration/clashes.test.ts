import { describe, expect, it } from "vitest";
import { conflictsOf, flexClassOf, resolveSpec, type SpecChoices } from "#engine/configuration";
import { catalog, specOf } from "../demo-catalog";

const { build } = catalog;
const window = { fromXMm: 400, toXMm: 600, halfWidthMm: 15 };
const withWindow = (places = [window]) =>
  ({ graphic: { kind: "house", house: "contour-lines", layout: "same", windows: places } }) as const;

function clashes(choices: SpecChoices) {
  const spec = specOf(choices);
  const resolved = resolveSpec(spec, build);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.refusal));
  return conflictsOf(spec, resolved.value, build);
}

const codes = (choices: SpecChoices) => clashes(choices).map((each) => each.code);

// The shop's rules of reinforcements and graphics: common practice, no source.
describe("conflictsOf", () => {
  it("finds nothing to clash in any active model as it is designed", () => {
    for (const { id } of build.models.filter((model) => model.state === "active"))
      expect(codes({ model: id })).toEqual([]);
  });

  it("refuses a retired model and names active ones near it", () => {
    const [conflict] = clashes({ model: "skeward-90" });
    expect(conflict?.code).toBe("model-retired");
    expect(conflict?.ways.map((way) => way.choices.model)).toEqual(["midlow-95", "midlow-84"]);
  });

  it("refuses metal on a touring ski", () => {
    const [conflict] = clashes({ model: "upleigh-92", reinforcements: ["metal-pair", "flax"] });
    expect(conflict).toMatchObject({ code: "reinforcement-not-for-use", reinforcement: "metal-pair" });
    expect(conflict?.ways[0]?.choices).toEqual({ reinforcements: ["flax"] });
  });

  it("allows two extra plies and refuses a third", () => {
    expect(codes({ reinforcements: ["flax", "basalt"] })).toEqual([]);
    const [conflict] = clashes({ reinforcements: ["carbon-biax", "basalt"] });
    expect(conflict).toMatchObject({ code: "too-many-plies", plies: 3, mostPlies: 2 });
    for (const way of conflict?.ways ?? []) expect(codes(way.choices)).toEqual([]);
  });

  it("refuses a paulownia core outside touring, the model's own core first among the ways", () => {
    const [conflict] = clashes({ core: "paulownia-poplar" });
    expect(conflict?.code).toBe("core-not-for-use");
    expect(conflict?.ways[0]?.choices).toEqual({ core: "aspen-ash" });
  });

  it("refuses a window under a carbon ply and offers glass only on top or no window (scenario 15)", () => {
    const choices = { core: "aspen-ash-window", reinforcements: ["carbon-biax"], ...withWindow() };
    const found = clashes(choices);
    expect(found.map((each) => each.code)).toEqual(["window-under-opaque-ply"]);
    expect(found[0]?.ways.map((way) => way.code)).toEqual(["glass-only-top", "no-window"]);
    for (const way of found[0]?.ways ?? []) expect(codes({ ...choices, ...way.choices })).toEqual([]);
  });

  it("leaves a ply that lies only under the core alone", () => {
    expect(codes({ core: "aspen-ash-window", reinforcements: ["basalt"], ...withWindow() })).toEqual([]);
  });

  it("refuses a window over painted-grade wood and over a model's own metal", () => {
    expect(codes(withWindow())).toEqual(["window-needs-clean-core"]);
    expect(codes({ model: "kerfline-68", core: "aspen-ash-window", ...withWindow() })).toContain(
      "window-under-own-layer",
    );
  });

  it("refuses a window narrower than 20 mm or nearer than 10 mm to the outline", () => {
    const core = "aspen-ash-window";
    expect(codes({ core, ...withWindow([{ ...window, halfWidthMm: 9 }]) })).toEqual(["window-too-small"]);
    const [near] = clashes({ core, ...withWindow([{ fromXMm: 900, toXMm: 1000, halfWidthMm: 38 }]) });
    // The waist of 95 mm lies inside: 95 − 2 · 10 = 75 mm at most.
    expect(near).toMatchObject({ code: "window-near-edge", mostMm: 75 });
    expect(codes({ core, ...near?.ways[0]?.choices })).toEqual([]);
  });

  it("wants two colours and a text for a counterchange", () => {
    expect(codes({ base: { left: "black", right: "black", inlay: "counterchange" } })).toEqual([
      "inlay-needs-text",
      "counterchange-needs-two-colours",
    ]);
    expect(codes({ base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: "FEN" } })).toEqual([]);
  });
});

describe("the mount line and the plate", () => {
  it("allows 35 mm forward while the pocket is not milled: (480 − 410)/2 = 35 ≥ 25 mm", () => {
    expect(codes({ mount: { offsetMm: 35, bindingTrackMm: 410 } })).toEqual([]);
  });

  it("refuses a binding track that the plate cannot cover: (480 − 440)/2 = 20 mm", () => {
    expect(clashes({ mount: { offsetMm: 0, bindingTrackMm: 440 } })).toMatchObject([
      { code: "plate-margin", marginMm: 20 },
    ]);
  });
});

describe("flex classes", () => {
  it("are half-open: an edge belongs to the class above it", () => {
    expect(flexClassOf(1.08, build.flexClasses)?.number).toBe(4);
    expect(flexClassOf(1.0799, build.flexClasses)?.number).toBe(3);
    expect(flexClassOf(0.62, build.flexClasses)?.number).toBe(1);
    expect(flexClassOf(1.45, build.flexClasses)).toBeNull();
    expect(flexClassOf(0.618, build.flexClasses)).toBeNull();
  });
});
