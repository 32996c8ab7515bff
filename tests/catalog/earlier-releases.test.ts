/** A release as it was stored before stations had ids and roles: fourteen numbers, a floor whose order stood in code. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { catalogFromRelease, priceBookNamed } from "#catalog";
import { stationFor, stationTaking } from "#engine/floor";
import { priceSpec } from "#engine/pricing";
import { plainSpec } from "../engine/pricing/plain-spec";

const file = path.resolve(import.meta.dirname, "../fixtures/stored/releases/1a830b9f560e.json.gz");
/** As the version that sold by it stored it. */
const stored: { readonly hash: string; readonly catalogue: Readonly<Record<string, unknown>> } = JSON.parse(
  gunzipSync(readFileSync(file)).toString("utf8"),
);
const then = catalogFromRelease(stored.catalogue);

describe("a release with numbered stations", () => {
  it("keeps its name and what was written", () => {
    expect(then.release).toEqual(stored.catalogue);
    expect(then.hash).toBe(stored.hash);
  });

  it("has the floor that its numbers meant", () => {
    expect(then.floor.stations.map(({ number, id, role }) => [number, id, role])).toEqual([
      [1, "release", "release"],
      [2, "strips", "strips"],
      [3, "core-glue", "core"],
      [4, "profile", "profile"],
      [5, "sidewalls", "sidewalls"],
      [6, "base-cut", "base"],
      [7, "edges", "edges"],
      [8, "print", "print"],
      [9, "kit", "kit"],
      [10, "lay-up", "lay-up"],
      [11, "press", "press"],
      [12, "trim", "trim"],
      [13, "finish", "finish"],
      [14, "check", "check"],
    ]);
    expect(stationFor(then.floor, "lay-up").after).toEqual(["sidewalls", "edges", "print", "kit"]);
    expect(stationTaking(then.floor, "strips").number).toBe(3);
    expect(then.floor.crew.find(({ id }) => id === "c1")?.stations).toEqual([
      "strips",
      "core-glue",
      "profile",
      "sidewalls",
    ]);
    expect(then.floor.rework.find(({ id }) => id === "qc")).toMatchObject({
      afterStation: "check",
      redoStations: ["finish", "check"],
    });
  });

  it("names stations by id in parts, options and the recipe", () => {
    expect(then.parts.lines.find(({ code }) => code === "topsheet")?.station).toBe("print");
    const aramid = then.build.reinforcements.find(({ id }) => id === "aramid");
    expect(aramid?.extraMinutes.map(({ station }) => station)).toEqual(["kit", "lay-up", "trim"]);
    expect(
      then.recipe.stations.filter(({ needsSecondSignOff }) => needsSecondSignOff).map(({ station }) => station),
    ).toEqual(["kit", "press", "trim", "check"]);
  });

  it("prices a counterchange to the cent it was sold at", () => {
    const spec = {
      ...plainSpec,
      base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: "FERN" },
    } as const;
    const price = priceSpec(spec, priceBookNamed(then, "PB-3"), then.build, { destination: "collect" });
    // 1,590 for the model and 95 for the letters, as that release's book has them.
    expect(price.ok && price.value.exTaxCents).toBe(168_500);
  });
});
