/**
 * The numbers behind the one-axis chart. Expected values are worked out by hand from plain builds whose every quantity is
 * linear along the ski, so that a reading between stations is arithmetic (rule: straight-line interpolation, a definition).
 */
import { describe, expect, it } from "vitest";
import { csvText } from "#app/_ui/csv.ts";
import {
  type AxisBuild,
  axisFrame,
  axisQuantities,
  axisReadout,
  axisTable,
  differenceText,
  readingFromMount,
} from "#app/_visuals/axis-builds.ts";
import type { FlexStation, SkiFlex } from "#engine/flex";
import { shapeAtLength } from "#engine/geometry";
import { catalog } from "../engine/demo-catalog";

/** EI from 100 N·m² at the tip by `slope` N·m² a metre; GJ half of it; 10 mm of core, 600 g/m, 100 mm wide. */
function station(xMm: number, slope: number): FlexStation {
  const bendingStiffnessNmm2 = (100 + (slope * xMm) / 1000) * 1e6;
  return {
    xMm,
    widthMm: 100,
    coreMm: 10,
    thicknessMm: 13,
    bendingStiffnessNmm2,
    torsionalStiffnessNmm2: bendingStiffnessNmm2 / 2,
    neutralAxisMm: 6,
    massGPerM: 600,
  };
}

/** Real outline (x is what is tested), made-up stiffness. */
function build(label: string, lengthCm: number, mountMm: number, slope: number): AxisBuild {
  const model = catalog.build.models.find((each) => each.id === "midlow-95");
  if (!model) throw new Error("the demo shop builds no midlow-95");
  const shape = { ...shapeAtLength(model.shape, lengthCm), lengthMm: 10 * lengthCm };
  const flex: SkiFlex = {
    stations: [0, 500, 1000, 10 * lengthCm].map((xMm) => station(xMm, slope)),
    massKg: 1,
    balancePointMm: 900,
    coreShearPercent: 0,
    springCentreNPerMm: 5,
    springForebodyNPerMm: 5,
    springAfterbodyNPerMm: 5,
    balance: 1,
  };
  return { label, shape, flex, mountMm };
}

const a = build("A ski", 178, 1000, 100);
const b = build("B ski", 186, 1050, 100);
const c = build("C ski", 166, 930, 0);
const three = [a, b, c];
const cellsAt = (fromMountMm: number, title: string) =>
  axisReadout(three, fromMountMm).find((row) => row.quantity.title === title)?.cells;

describe("alignment at the mount line", () => {
  it("spans from the foremost tip to the rearmost tail", () => {
    // Ahead: 1000, 1050, 930. Behind: 1780 − 1000, 1860 − 1050, 1660 − 930.
    expect(axisFrame(three)).toEqual({ fromMm: -1050, toMm: 810 });
    expect(axisFrame([c])).toEqual({ fromMm: -930, toMm: 730 });
  });

  it("reads every build at its own millimetres from its own mount line", () => {
    expect(three.map((each) => readingFromMount(each, -100)?.xMm)).toEqual([900, 950, 830]);
    expect(three.map((each) => readingFromMount(each, 0)?.xMm)).toEqual([1000, 1050, 930]);
  });

  it("has no reading ahead of a tip or behind a tail, and one at each of them", () => {
    expect(three.map((each) => readingFromMount(each, -1001) !== null)).toEqual([false, true, false]);
    expect(three.map((each) => readingFromMount(each, 780) !== null)).toEqual([true, true, false]);
    expect(readingFromMount(c, 730)?.xMm).toBe(1660);
    expect(readingFromMount(c, -930)?.xMm).toBe(0);
  });
});

describe("the readout", () => {
  it("tells each value and its difference to the first build", () => {
    // EI at 100 mm behind the mount line: 100 + 0.1 · 1100 = 210; 100 + 0.1 · 1150 = 215; 100.
    expect(cellsAt(100, "Stiffness in bending, EI")).toEqual([
      { value: "210.0", difference: null },
      { value: "215.0", difference: "+5.0" },
      { value: "100.0", difference: "−110.0" },
    ]);
    expect(cellsAt(100, "Stiffness in twist, GJ")?.map((cell) => cell?.difference)).toEqual([null, "+2.5", "−55.0"]);
    expect(cellsAt(100, "Core thickness")?.[1]).toEqual({ value: "10.00", difference: "0" });
  });

  it("leaves a build out where it has ended, and tells no difference to a first that has", () => {
    // 750 mm behind: A at 1750, B at 1800, C would be at 1680 of 1660.
    expect(cellsAt(750, "Mass along the ski")?.[2]).toBeNull();
    // 1040 mm ahead only B is there: it has a value and nothing to differ from. 100 + 0.1 · 10 = 101.
    expect(cellsAt(-1040, "Stiffness in bending, EI")).toEqual([null, { value: "101.0", difference: null }, null]);
  });

  it("signs differences as they are shown after rounding", () => {
    expect([0.04, -0.04, 0.06, -12.34, 0].map((each) => differenceText(each, 1))).toEqual([
      "0",
      "0",
      "+0.1",
      "−12.3",
      "0",
    ]);
  });
});

describe("the table and its CSV", () => {
  const { head, rows } = axisTable(three, 100);
  const cell = (fromMount: string, column: string) => rows.find((row) => row[0] === fromMount)?.[head.indexOf(column)];

  it("names a column of every quantity for every build", () => {
    expect(head).toHaveLength(1 + 3 + 3 * axisQuantities.length);
    expect(new Set(head).size).toBe(head.length);
    expect(head.slice(0, 4)).toEqual([
      "from mount line, mm",
      "from tip, mm (A ski)",
      "from tip, mm (B ski)",
      "from tip, mm (C ski)",
    ]);
    for (const label of ["A ski", "B ski", "C ski"])
      expect(head).toContain(`Stiffness in bending, EI, N·m² (${label})`);
  });

  it("has a row every step from the mount line and one at each tip and tail, in order", () => {
    // Steps −1000 … 800 are 19; tips at −1050, −1000 (a step), −930; tails at 780, 810, 730.
    const stops = rows.map((row) => Number(row[0]));
    expect(stops).toHaveLength(24);
    expect(stops).toEqual(stops.toSorted((x, y) => x - y));
    for (const end of [-1050, -1000, -930, 730, 780, 810]) expect(stops).toContain(end);
    expect(rows.every((row) => row.length === head.length)).toBe(true);
  });

  it("leaves cells empty where a build has ended", () => {
    expect(cell("810", "from tip, mm (B ski)")).toBe("1860");
    expect(cell("810", "from tip, mm (A ski)")).toBe("");
    expect(cell("810", "Mass along the ski, g/m (C ski)")).toBe("");
    expect(cell("0", "Stiffness in bending, EI, N·m² (B ski)")).toBe("205.0");
  });

  it("writes CSV lines of one length, with the commas of a head quoted (RFC 4180)", () => {
    const [first = "", second = ""] = csvText(head, rows).split("\r\n");
    expect(first.startsWith('"from mount line, mm","from tip, mm (A ski)"')).toBe(true);
    expect(second.split(",")).toHaveLength(head.length);
    expect(second.startsWith("-1050,,0,")).toBe(true);
  });

  it("measures a build alone from its tip, both ends included, with plain heads", () => {
    const alone = axisTable([a], 500);
    expect(alone.head.slice(0, 3)).toEqual(["from mount line, mm", "from tip, mm", "Width, mm"]);
    expect(alone.rows.map((row) => row[1])).toEqual(["0", "500", "1000", "1500", "1780"]);
    expect(alone.rows.map((row) => row[0])).toEqual(["-1000", "-500", "0", "500", "780"]);
  });
});
