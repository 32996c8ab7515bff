/**
 * Every part of a specification against every station whose work may have begun: common practice, no source. A part closes
 * when the first station that uses it begins; work begun later on the same branch, or after the branches have met at the
 * lay-up, says that this station has been passed even if nobody ticked it.
 */
import { describe, expect, it } from "vitest";
import { editAllowed, editRules, type SpecificationPart, specificationParts, stationOf } from "#engine/floor";
import { demoFloor } from "../../support/demo-floor";
import { stationCalled, stationNames } from "../floor-stations";

const floor = demoFloor();

interface Row {
  readonly closedBy: string;
  /** The station that uses the part first; null when only shipping closes it. */
  readonly usedBy: string | null;
  readonly why: string;
}

const afterTheLayUp = "lay-up press trim finish check";

const table: Readonly<Record<SpecificationPart, Row>> = {
  shape: {
    usedBy: "sidewalls",
    closedBy: `sidewalls profile ${afterTheLayUp}`,
    why: "walls and spacers are cut to this ski and bonded; a cut base or print is lost, and that is the owner's cost to weigh",
  },
  core: { usedBy: "core-glue", closedBy: `core-glue sidewalls profile ${afterTheLayUp}`, why: "the strips are glued" },
  reinforcements: {
    usedBy: "profile",
    closedBy: `profile ${afterTheLayUp}`,
    why: "the core's thickness was solved with them",
  },
  flex: { usedBy: "profile", closedBy: `profile ${afterTheLayUp}`, why: "the thickness is milled" },
  mount: {
    usedBy: "profile",
    closedBy: `profile ${afterTheLayUp}`,
    why: "the pocket of the plate is milled about the mount line",
  },
  base: { usedBy: "base-cut", closedBy: `base-cut edges ${afterTheLayUp}`, why: "the base is cut in its colour" },
  graphic: { usedBy: "print", closedBy: `print ${afterTheLayUp}`, why: "the topsheet is printed" },
  protectors: {
    usedBy: "lay-up",
    closedBy: afterTheLayUp,
    why: "they are laid up with the cloths",
  },
  finish: { usedBy: "finish", closedBy: "finish check", why: "edges and structure are ground last" },
  delivery: { usedBy: null, closedBy: "", why: "an address may change until the pair leaves" },
};

const cells = specificationParts.flatMap((part) =>
  stationNames.map((station) => ({ part, station, isOpen: !table[part].closedBy.split(" ").includes(station) })),
);

describe("what may still change, by part and station", () => {
  it.each(cells)("$part when $station has begun: may change $isOpen", ({ part, station, isOpen }) => {
    const answer = editAllowed(part, { startedStations: [stationCalled(station)], shipped: false }, floor);
    expect(answer.ok).toBe(isOpen);
    const { usedBy } = table[part];
    if (!answer.ok && usedBy !== null) {
      const { id: station, number: stationNumber } = stationOf(floor, usedBy);
      expect(answer.refusal).toEqual({ code: "edit-too-late", part, station, stationNumber, path: part });
    }
  });

  it.each(specificationParts)("%s may change while nothing has begun, and not once the pair is shipped", (part) => {
    expect(editAllowed(part, { startedStations: [], shipped: false }, floor).ok).toBe(true);
    expect(editAllowed(part, { startedStations: [], shipped: true }, floor)).toEqual({
      ok: false,
      refusal: { code: "edit-too-late", part, station: null, stationNumber: null, path: part },
    });
  });

  it("counts the station that closes among several that do not", () => {
    const begun = ["release", "strips", "core-glue", "base-cut", "edges"].map(stationCalled);
    const open = specificationParts.filter(
      (part) => editAllowed(part, { startedStations: begun, shipped: false }, floor).ok,
    );
    expect(open).toEqual(["shape", "reinforcements", "flex", "mount", "graphic", "protectors", "finish", "delivery"]);
  });
});

/** What a change makes necessary; the shop's rule, no source. */
const consequences: Readonly<Record<SpecificationPart, string>> = {
  shape: "reprice new-strips new-mould print-layout proof-void promise build-sheet-void",
  core: "reprice new-strips promise build-sheet-void",
  reinforcements: "reprice promise build-sheet-void",
  flex: "reprice build-sheet-void",
  mount: "reprice build-sheet-void",
  base: "reprice promise build-sheet-void",
  graphic: "reprice print-layout proof-void promise build-sheet-void",
  protectors: "reprice build-sheet-void",
  finish: "build-sheet-void",
  delivery: "",
};

describe("what a change makes necessary", () => {
  it.each(specificationParts)("%s", (part) => {
    const answer = editAllowed(part, { startedStations: [], shipped: false }, floor);
    expect(answer.ok && [...answer.value.consequences].join(" ")).toBe(consequences[part]);
  });

  it("has one rule for each part", () => {
    expect(editRules.map(({ part }) => part)).toEqual([...specificationParts]);
  });
});
