/** Where hazards are told, on hazards and floors made by hand. */
import { describe, expect, it } from "vitest";
import { cautionsAt, cautionsOfStation, type Hazard, type Station, soldFor } from "#engine/floor";

const hazard = (id: string, known: Partial<Hazard>): Hazard => ({
  id,
  icon: "note",
  line: id,
  full: id,
  reference: "none",
  stations: [],
  pages: [],
  papers: [],
  labels: [],
  ...known,
});
const ids = (hazards: readonly Hazard[]) => hazards.map(({ id }) => id);

describe("what is told at a place", () => {
  const hazards = [
    hazard("sheet", { pages: ["sheet"] }),
    hazard("both", { pages: ["sheet", "quote"], papers: ["quote"] }),
    hazard("label", { labels: ["core"] }),
  ];

  it("is what names it, in the shop's own order", () => {
    expect(ids(cautionsAt(hazards, { page: "sheet" }))).toEqual(["sheet", "both"]);
    expect(ids(cautionsAt(hazards, { page: "quote" }))).toEqual(["both"]);
    expect(ids(cautionsAt(hazards, { paper: "quote" }))).toEqual(["both"]);
    expect(ids(cautionsAt(hazards, { label: "core" }))).toEqual(["label"]);
    expect(cautionsAt(hazards, { label: "base" })).toEqual([]);
    expect(cautionsAt(hazards, { paper: "labels" })).toEqual([]);
  });

  it("is told for some skis and skiers only, when it concerns any of those that are sold", () => {
    const some = [
      hazard("slope", { pages: ["quote"], onlyFor: { uses: ["powder"], offPisteFromPercent: 30 } }),
      hazard("child", { pages: ["quote"], onlyFor: { belowAgeYears: 18 } }),
    ];
    const told = (...sold: Parameters<typeof soldFor>[2][]) =>
      ids(
        cautionsAt(
          some,
          { page: "quote" },
          sold.map((answers) => ({ use: "carving", ...answers })),
        ),
      );
    expect(told({})).toEqual([]);
    expect(told({ offPistePercent: 29 })).toEqual([]);
    expect(told({ offPistePercent: 30 })).toEqual(["slope"]);
    expect(told({ ageYears: 18 })).toEqual([]);
    expect(told({ ageYears: 17 })).toEqual(["child"]);
    expect(told({}, { ageYears: 9, offPistePercent: 80 })).toEqual(["slope", "child"]);
    expect(ids(cautionsAt(some, { page: "quote" }, [{ use: "powder" }]))).toEqual(["slope"]);
    expect(cautionsAt(some, { page: "quote" })).toEqual([]);
  });

  it("knows a ski's use by its model, and nothing of a model that is not in the line-up", () => {
    const models = [
      { id: "a", use: "carving" },
      { id: "b", use: "powder" },
    ];
    expect(soldFor({ model: "b" }, models, { ageYears: 40 })).toEqual({
      use: "powder",
      ageYears: 40,
      offPistePercent: undefined,
    });
    expect(soldFor({ model: "gone" }, models, {}).use).toBeUndefined();
    expect(soldFor(null, models, {}).use).toBeUndefined();
  });
});

describe("what is told at a station", () => {
  const station = (id: string, role: Station["role"]) => ({ id, role }) as Station;
  const rest = [
    station("r", "release"),
    station("c", "core"),
    station("b", "base"),
    station("l", "lay-up"),
    station("k", "check"),
  ];
  const hazards = [
    hazard("saw", { stations: ["strips"] }),
    hazard("router", { stations: ["strips", "profile"] }),
    hazard("press", { stations: ["press"] }),
    hazard("page", { pages: ["floor"] }),
  ];

  it("is what names its role", () => {
    const floor = { stations: [station("s", "strips"), station("p", "profile"), station("x", "press")] };
    expect(ids(cautionsOfStation(hazards, { stations: [...floor.stations, ...rest] }, "s"))).toEqual(["saw", "router"]);
    expect(ids(cautionsOfStation(hazards, { stations: [...floor.stations, ...rest] }, "p"))).toEqual(["router"]);
    expect(ids(cautionsOfStation(hazards, { stations: [...floor.stations, ...rest] }, "x"))).toEqual(["press"]);
  });

  it("goes with the work where a floor has no station of its own for it", () => {
    // Who has no bench for strips mills them where the core is made.
    const floor = { stations: [station("p", "profile"), station("x", "press"), ...rest] };
    expect(ids(cautionsOfStation(hazards, floor, "c"))).toEqual(["saw", "router"]);
  });

  it("is told at both of two stations of one role, and nowhere on a station that is not there", () => {
    const floor = {
      stations: [
        station("s", "strips"),
        station("s-2", "strips"),
        station("p", "profile"),
        station("x", "press"),
        ...rest,
      ],
    };
    expect(ids(cautionsOfStation(hazards, floor, "s-2"))).toEqual(["saw", "router"]);
    expect(cautionsOfStation(hazards, floor, "gone")).toEqual([]);
  });
});
