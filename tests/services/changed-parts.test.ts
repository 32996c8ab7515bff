/** Which part of the specification each changed field is: the part decides until when it may change (shop rule, no source). */
import { describe, expect, it } from "vitest";
import type { PairSpec } from "#engine/configuration";
import type { SpecificationPart } from "#engine/floor";
import { changedParts } from "#services/orders/changed-parts";
import { plainSpec } from "../engine/pricing/plain-spec";

/** Complete by type: a field of the specification without a row does not compile. */
const changes: Readonly<Record<keyof PairSpec, readonly [SpecificationPart, Partial<PairSpec>]>> = {
  model: ["shape", { model: "midlow-84" }],
  lengthCm: ["shape", { lengthCm: 186 }],
  core: ["core", { core: "poplar-ash" }],
  reinforcements: ["reinforcements", { reinforcements: ["carbon-stringers"] }],
  flexRatio: ["flex", { flexRatio: 1.001 }],
  mount: ["mount", { mount: { offsetMm: -1 } }],
  lightening: ["core", { lightening: true }],
  plate: ["mount", { plate: "magnesium" }],
  base: ["base", { base: { left: "black", right: "lake", inlay: "none" } }],
  graphic: ["graphic", { graphic: { ...plainSpec.graphic, layout: "mirrored" } }],
  tipTailProtectors: ["protectors", { tipTailProtectors: true }],
  finish: ["finish", { finish: { ...plainSpec.finish, detuneTipMm: 81 } }],
};

describe("the parts that changed", () => {
  it.each(Object.entries(changes))("%s", (_field, [part, change]) => {
    expect(changedParts(plainSpec, { ...plainSpec, ...change })).toEqual([part]);
    expect(changedParts({ ...plainSpec, ...change }, plainSpec)).toEqual([part]);
  });

  it("are none where nothing differs but the order of what is written", () => {
    const { lengthCm, ...others } = plainSpec;
    expect(changedParts(plainSpec, { ...others, lengthCm })).toEqual([]);
    expect(changedParts(plainSpec, { ...plainSpec, mount: { offsetMm: 5 }, lengthCm: 186 })).toEqual([
      "shape",
      "mount",
    ]);
  });
});
