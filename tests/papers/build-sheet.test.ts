import { beforeAll, describe, expect, it } from "vitest";
import { type BuildSheetFacts, composeBuildSheet, type Paper } from "#papers";
import { drawDocument } from "../../lib/papers/draw";
import { fonts, pageSizes, pdfPages } from "./pdf-text";
import { facts, floor } from "./sample";

/** What a floor needs to build from: common practice, no source. */
const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  identity: [
    "0417",
    "TY-0417-L-7",
    "TY-0417-R-5",
    "Maren",
    "Midlow 95",
    "178 cm",
    "revision C",
    "M95-178",
    "M95-178 / 2",
  ],
  promise: ["Press by", "Thu 10 Dec 2026", "Promise class", "Promise"],
  strips: ["S-2140", "S-2153", "ASP 9.0", "ASH 13.0", "8.92", "13.09", "431", "669", "Wood, planned", "Wood, weighed"],
  core: [
    "Core profile M95-178-C-",
    "planned mm",
    "L measured",
    "R measured",
    "11.45",
    "pocket 715 to 1195",
    "0.70 deep",
    "tip to mount line 955",
  ],
  ends: ["180 + 15 mm scarf", "120 + 15 mm scarf"],
  windows: ["1350 to 1500 mm from", "core grade W"],
  bases: ["black base", "signal yellow base", "letters in signal yellow", "letters in black"],
  outline: ["132", "95", "119", "contact 1 435", "length 1 780", "sidecut 1 461.0", "partial", "17.71 m", "17.50 m"],
  camber: ["camber 4 finished", "mould camber 5.5"],
  stack: [
    "Stack, bottom to top",
    "Base",
    "Edges",
    "Edge rubber",
    "Core",
    "Plate rubber",
    "Binding plate",
    "Topsheet",
    "L in",
    "R in",
  ],
  options: ["OPTIONS", "OPTION", "carbon stringers", "10 mm forward", "tip and tail"],
  cuts: ["Cut list", "480 × 77 mm", "1 590 × 18 × 13.5 mm", "Inlay set left to right"],
  resin: ["560 g resin + 151 g hardener", "100 : 27", "R-77", "H-31", "Working time", "mixed at", "close by"],
  press: ["3 bar", "18 min to 78 °C", "45 min at 78 °C", "35 min under pressure", "not before 98 min", "45 °C", "24 h"],
  print: ["Print scale factor", "1.0035", "underside"],
  tune: ["Base bevel", "1.05 mm at 60 mm", "Side angle", "88° edge", "Structure", "M: medium", "Wax", "Detune"],
  class: ["class 3 (medium), k 1.07", "ordered", "measured: class"],
  qc: [
    "1 836 g",
    "(1 744 to 1 928)",
    "38.1 N/cm",
    "(35.4 to 40.8)",
    "± 7 %",
    "3 %",
    "25 g or 1.5 %",
    "winding sticks",
    "A-grade",
  ],
  signatures: ["2nd sign-off", "signed", "start", "end", "Deviations"],
  binding: ["ISO 11088"],
};

/** What no paper of the workshop may say: that belongs to a certified technician. */
const FORBIDDEN = [/\bDIN\b/, /release (value|setting)/i, /skier type/i, /\bdrill/i, /\bscrew hole/i, /\bhole\b/i];

const sheets = new Map<Paper, Uint8Array>();
beforeAll(async () => {
  const data = composeBuildSheet(facts);
  for (const paper of ["A4", "LETTER"] as const) sheets.set(paper, await drawDocument("build-sheet", data, paper));
}, 60_000);

const sheet = (paper: Paper) => sheets.get(paper) ?? new Uint8Array();

describe.each(["A4", "LETTER"] as const)("build sheet on %s", (paper) => {
  it.each(Object.entries(REQUIRED))("holds what a maker needs: %s", (_, words) => {
    const text = pdfPages(sheet(paper)).join(" ");
    expect(words.filter((word) => !text.includes(word.replace(/\s+/g, " ")))).toEqual([]);
  });

  it("lists every station with its cautions", () => {
    const text = pdfPages(sheet(paper)).join(" ");
    const lines = floor.stations.flatMap((s) => [s.name, ...s.safety.map(({ line }) => line)]);
    expect(lines.filter((line) => !text.includes(line))).toEqual([]);
  });

  it("marks the four stations that a second person signs", () => {
    const text = pdfPages(sheet(paper)).join(" ");
    expect(text.split("2nd sign-off")).toHaveLength(5);
  });

  it("carries revision, warning, hash and page number on every page", () => {
    const pages = pdfPages(sheet(paper));
    expect(pages).toHaveLength(7);
    for (const [index, text] of pages.entries()) {
      for (const words of ["revision 2 · void older prints", "3fa9 c17e 52d0", `page ${index + 1} / ${pages.length}`]) {
        expect(text).toContain(words);
      }
    }
  });

  it("says nothing of a binding's settings", () => {
    const text = pdfPages(sheet(paper)).join(" ");
    expect(FORBIDDEN.filter((words) => words.test(text))).toEqual([]);
  });

  it("embeds every font it uses", () => {
    const { embedded, missing } = fonts(sheet(paper));
    expect(missing).toEqual([]);
    expect(embedded.some((name) => name.includes("IBMPlexSans"))).toBe(true);
    expect(embedded.some((name) => name.includes("IBMPlexMono"))).toBe(true);
  });

  it("prints on the paper asked for", () => {
    // ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: size A is 8.5 × 11 in. One point is 1/72 in.
    const [short, long] = paper === "A4" ? [(210 / 25.4) * 72, (297 / 25.4) * 72] : [8.5 * 72, 11 * 72];
    for (const [width, height] of pageSizes(sheet(paper))) {
      expect(Math.min(width, height)).toBeCloseTo(short, 1);
      expect(Math.max(width, height)).toBeCloseTo(long, 1);
    }
  });
});

describe("composeBuildSheet", () => {
  it("leaves boxes to write in where strips are not allocated yet", async () => {
    const open: BuildSheetFacts = { ...facts, strips: null, cassette: null };
    const text = pdfPages(await drawDocument("build-sheet", composeBuildSheet(open), "A4")).join(" ");
    expect(text).toContain("not allocated yet: write in");
    expect(text).not.toContain("S-2140");
    expect(text).toContain("write in: ________ (2 in the shop)");
  });

  it("gives the same bytes for the same data", async () => {
    const again = await drawDocument("build-sheet", composeBuildSheet(facts), "A4");
    expect(Buffer.from(again).equals(Buffer.from(sheet("A4")))).toBe(true);
  });

  it("names a core profile by its thicknesses", () => {
    const { core } = facts.solved;
    const stations = core.profile.stations.map((s) => ({ ...s, thicknessMm: s.thicknessMm + 0.05 }));
    const thicker = { ...facts.solved, core: { ...core, profile: { stations } } };
    const name = composeBuildSheet(facts).core.profileId;
    expect(name).toMatch(/^M95-178-C-[0-9A-F]{6}$/);
    expect(composeBuildSheet({ ...facts, solved: thicker }).core.profileId).not.toBe(name);
  });

  it("refuses a model that the catalogue does not hold", () => {
    const spec = { ...facts.spec, model: "midlow-99" };
    expect(() => composeBuildSheet({ ...facts, spec })).toThrow(/midlow-99/);
  });

  it("gives demould as the sum of heat-up, dwell and cooling", () => {
    const press = { ...floor.press, heatUpMinutes: 20, dwellMinutes: 60, coolMinutes: 40 };
    const data = composeBuildSheet({ ...facts, floor: { ...floor, press } });
    expect(data.press.find((row) => row.label === "Demould")?.value).toContain("120 min");
  });

  it("halves the working time for every 10 °C", () => {
    // 60 min at 22 °C is 60/2^0.4 = 45 min at 26 °C.
    expect(composeBuildSheet(facts).workingTimes.find((t) => t.roomC === 26)?.minutes).toBe(45);
  });

  it("weighs the wood of each core from its own strips", () => {
    const heavier =
      facts.strips?.map((s) => (s.ski === "R" ? { ...s, densityKgM3: (s.densityKgM3 ?? 0) * 1.1 } : s)) ?? [];
    const before = composeBuildSheet(facts).core.plannedG;
    const after = composeBuildSheet({ ...facts, strips: heavier }).core.plannedG;
    expect(after.L).toBeCloseTo(before.L, 9);
    expect(after.R / before.R).toBeCloseTo(1.1, 6);
  });

  it("weighs a plain plank by hand", () => {
    // Straight sides: 100 mm wide less two 7 mm walls, 10 mm thick, 1 480 mm long, 500 kg/m³ throughout, no pocket:
    // 86 × 10 × 1 480 mm³ × 500e-6 g/mm³ = 636.4 g.
    const { build, core } = facts.solved;
    const shape = {
      ...build.shape,
      shoulderWidthMm: 100,
      waistWidthMm: 100,
      heelWidthMm: 100,
      tipLengthMm: 0,
      tailLengthMm: 0,
      sidecutRadiusMm: 1e9,
    };
    const { plate: _, ...bare } = build;
    const plank = { ...bare, shape, columns: build.columns.map((c) => ({ ...c, densityKgM3: 500 })) };
    const profile = {
      stations: [
        { xMm: 0, thicknessMm: 10 },
        { xMm: 1780, thicknessMm: 10 },
      ],
    };
    const data = composeBuildSheet({
      ...facts,
      strips: null,
      solved: { ...facts.solved, build: plank, core: { ...core, profile } },
    });
    expect(data.core.plannedG.L).toBeCloseTo(636.4, 1);
  });

  it("draws the directions that the catalogue gives a cloth", () => {
    const byName = (name: string) =>
      composeBuildSheet(facts).stack.find((layer) => layer.detail.includes(name))?.fibresDeg;
    expect(byName("triaxial")).toEqual([0, 45, -45]);
    expect(byName("unidirectional")).toEqual([0]);
  });

  it("marks the layers that an option brought, and no other", () => {
    const marked = composeBuildSheet(facts).stack.filter((layer) => layer.isOption);
    expect(marked.map((layer) => layer.detail)).toEqual(Array(2).fill("unidirectional carbon, 300 g/m²"));
  });
});
