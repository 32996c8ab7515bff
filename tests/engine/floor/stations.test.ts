/** What makes a list of stations a floor, by one fault at a time; and who does the work of a role a floor does not have. */
import { describe, expect, it } from "vitest";
import {
  isAtOrAfter,
  placeOf,
  type Station,
  stationFor,
  stationOf,
  stationProblems,
  stationsBefore,
  stationTaking,
} from "#engine/floor";
import { demoFloor } from "../../support/demo-floor";

const floor = demoFloor();

function problems(change: (station: Station) => Station | null): readonly string[] {
  const stations = floor.stations.flatMap((station) => change(station) ?? []);
  return stationProblems(stations).map(({ message }) => message);
}

const only = (id: string, change: Partial<Station>) => (station: Station) =>
  station.id === id ? { ...station, ...change } : station;

describe("stationProblems", () => {
  it("finds nothing wrong with the demo's floor", () => {
    expect(stationProblems(floor.stations)).toEqual([]);
  });

  it.each([
    ["two of one id", only("edges", { id: "print" }), 'two stations have the id "print"'],
    ["two of one number", only("edges", { number: 8 }), 'two stations have the number "8"'],
    ["an unknown one before", only("edges", { after: ["bend"] }), '"edges" comes after "bend", which is no station'],
    [
      "a circle",
      only("strips", { after: ["sidewalls"] }),
      '"strips" comes after "sidewalls", which stands later in the list or waits for it',
    ],
    [
      "a second start",
      only("print", { after: [] }),
      'the way must begin at one station, the release; it begins at "release", "print"',
    ],
    [
      "a dead end",
      only("lay-up", { after: ["profile", "edges", "kit"] }),
      'every station must lead to one end, the check; the way ends at "print", "check"',
    ],
    [
      "a second press",
      only("trim", { role: "press" }),
      'a floor has one station with the role "press"; this one has 2',
    ],
    [
      "two prints",
      only("kit", { role: "print" }),
      'a floor has at most one station with the role "print"; this one has 2',
    ],
    [
      "a mould elsewhere",
      only("trim", { uses: ["mould"] }),
      '"trim": lay-up and press, and no other station, use a mould',
    ],
    [
      "a press that uses none",
      only("press", { uses: ["mould"] }),
      '"press": the station with the role "press", and no other, uses a press',
    ],
    [
      "strips from nowhere",
      only("core-glue", { consumes: [] }),
      "strips are taken from stock at one station; here at none",
    ],
    [
      "a part that never closes",
      only("base-cut", { closes: [] }),
      'changes of "base" must close at one station; here at none',
    ],
    [
      "a part that closes twice",
      only("trim", { closes: ["finish"] }),
      'changes of "finish" must close at one station; here at "trim", "finish"',
    ],
  ])("says what is wrong with %s", (_, change, message) => {
    expect(problems(change)).toContain(message);
  });

  it("wants nothing between lay-up and press: wet resin cannot wait", () => {
    const stations = floor.stations.flatMap((station): readonly Station[] => {
      if (station.id === "press") return [{ ...station, after: ["trim"] }];
      if (station.id === "trim") return [];
      return station.id === "finish" ? [{ ...station, after: ["press"] }] : [station];
    });
    const trim: Station = { ...stationOf(floor, "trim"), after: ["lay-up"] };
    const at = stations.findIndex(({ id }) => id === "press");
    const found = stationProblems(stations.toSpliced(at, 0, trim)).map(({ message }) => message);
    expect(found).toEqual(['"press": the press comes directly after the lay-up, wet resin cannot wait']);
  });
});

describe("the way over a floor", () => {
  it("joins four branches at the lay-up", () => {
    expect(stationsBefore(floor, "lay-up")).toEqual(["profile", "edges", "print", "kit"]);
    expect(isAtOrAfter(floor, "trim", "edges")).toBe(true);
    expect(isAtOrAfter(floor, "sidewalls", "edges")).toBe(false);
    expect(placeOf(floor, "release")).toBe(0);
    expect(() => stationsBefore(floor, "varnish")).toThrow(RangeError);
  });

  it("gives the work of a role to the station that stands in for it", () => {
    const small = { stations: floor.stations.filter(({ role }) => !["print", "strips", "kit"].includes(role)) };
    expect(stationFor(floor, "print").id).toBe("print");
    expect(stationFor(small, "print").id).toBe("lay-up");
    expect(stationFor(small, "strips").id).toBe("core-glue");
    expect(() => stationFor({ stations: [] }, "trim")).toThrow('no station of the floor does the work of "trim"');
    expect(stationTaking(floor, "parts").id).toBe("kit");
  });
});
