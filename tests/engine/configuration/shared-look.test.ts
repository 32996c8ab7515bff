/** The look of a pair in an address: it comes back as it was sent, and carries nothing of the skier. */
import { describe, expect, it } from "vitest";
import { readSharedLook, sharedLook } from "#engine/configuration";
import { catalog, specOf } from "../demo-catalog";

const { build } = catalog;
const read = (query: string) => readSharedLook(new URLSearchParams(query), build);

describe("a look that is passed on", () => {
  it("comes back with model, length, core, graphic and base", () => {
    const sent = specOf({
      model: "ridgefold-106",
      core: "maple-aspen",
      graphic: { kind: "house", house: "rock-strata", layout: "mirrored", windows: [] },
      base: { left: build.baseColours[1]?.id ?? "", right: build.baseColours[0]?.id ?? "", inlay: "none" },
    });
    const got = read(sharedLook(sent));
    expect(got.ok && got.value).toMatchObject({
      model: sent.model,
      lengthCm: sent.lengthCm,
      core: sent.core,
      graphic: sent.graphic,
      base: sent.base,
    });
  });

  it("carries no picture, no letters, no measure and no flex of the skier's own", () => {
    const sent = specOf({
      graphic: {
        kind: "own",
        artwork: { id: "secret-picture", widthPx: 10, heightPx: 10, sha256: "0".repeat(64) },
        layout: "continuing",
        text: { text: "Ines", xMm: 400, capHeightMm: 30 },
        windows: [],
      },
      base: { left: "black", right: "black", inlay: "counterchange", inlayText: "INES" },
      flexRatio: 1.07,
      mount: { offsetMm: 5, bootSoleMm: 305 },
    } as never);
    expect([...new URLSearchParams(sharedLook(sent)).keys()]).toEqual(["model", "length", "core", "left", "right"]);
    expect(sharedLook(sent)).not.toMatch(/secret|ines|305|1\.07/i);
  });

  it.each([
    ["", "model"],
    ["model=nothing", "model"],
    ["model=midlow-95&length=long", "length"],
  ])("%s: says what it cannot read", (query, path) => {
    expect(read(query)).toMatchObject({ ok: false, refusal: { code: "look-not-read", path } });
  });

  it.each([
    "model=midlow-95&length=181",
    "model=midlow-95&core=balsa-only",
    "model=midlow-95&house=unicorn",
    "model=midlow-95&left=x&right=y",
  ])("%s: refuses what the shop does not have", (query) => {
    expect(read(query).ok).toBe(false);
  });

  it("takes what is left out as the shop would build it, and a layout that nobody knows as both alike", () => {
    expect(read("model=midlow-95")).toMatchObject({
      ok: true,
      value: { lengthCm: 178, graphic: { house: "autumn-larch" } },
    });
    expect(read("model=midlow-95&house=plain&layout=upside-down")).toMatchObject({
      ok: true,
      value: { graphic: { layout: "same" } },
    });
  });
});
