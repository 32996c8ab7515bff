/** Stack, core card, bench targets, recipe, kit list and labels: figure by figure against the facts of the sample pair. */
import { describe, expect, it } from "vitest";
import type { SpringTest } from "#engine/flex";
import { composeBuildSheet, composeKitList, composeLabels, type PairNote } from "#papers";
import { composeQc } from "../../lib/papers/build-sheet/compose-qc";
import { Cover } from "../../lib/papers/build-sheet/cover";
import type { StackLayer } from "../../lib/papers/build-sheet/printed";
import { StackPicture } from "../../lib/papers/build-sheet/stack";
import { KitListPages } from "../../lib/papers/kit-list/page";
import { LabelsPages } from "../../lib/papers/labels/page";
import { pressRows, resinRows, workingTimes } from "../../lib/papers/parts/recipe-rows";
import { corners, drawn, numbers, ofType, type Shape, textAt } from "./drawn";
import { facts, floor } from "./sample";

const sheet = composeBuildSheet(facts);
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const { build } = facts.solved;
const withBuild = (change: Partial<typeof build>) =>
  composeBuildSheet({ ...facts, solved: { ...facts.solved, build: { ...build, ...change } } });
const told = (rows: readonly { readonly label: string; readonly value: string }[]) =>
  rows.map(({ label, value }) => plain(`${label}: ${value}`));

describe("the stack", () => {
  it("lies from the base up, each layer by thickness and place", () => {
    expect(sheet.stack.map(({ name, thicknessMm, extent, lies }) => [name, thicknessMm, plain(extent), lies])).toEqual([
      ["Base", 1.3, "inside the edges", "whole"],
      ["Edges", 2, "each side, 1 521 mm", "whole"],
      ["Edge rubber", 0.15, "each side, 1 521 mm", "whole"],
      ["Fabric", 0.656, "whole outline + flash", "whole"],
      ["Fabric", 0.36, "2 bands of 20 mm, symmetric", "bands"],
      ["Core", null, "L core in L, R core in R", "whole"],
      ["Plate rubber", 0.15, "480 × 77 mm, in the pocket", "under-binding"],
      ["Binding plate", 0.5, "480 × 77 mm, centred 955 mm from tip", "under-binding"],
      ["Fabric", 0.36, "2 bands of 20 mm, symmetric", "bands"],
      // Mount line at 955: 300 mm to each side.
      ["Binding-zone mat", 0.394, "655 to 1255 mm from tip", "under-binding"],
      ["Fabric", 0.656, "whole outline + flash", "whole"],
      ["Topsheet", 0.6, "whole outline + flash", "whole"],
    ]);
    expect(sheet.stack.map(({ isOption }) => isOption).filter(Boolean)).toHaveLength(2);
  });

  it("tells of each layer what it is made of", () => {
    expect(sheet.stack.map(({ detail }) => detail)).toEqual([
      "sintered polyethylene, black; flamed or sanded face up",
      "carbon steel edge, 2 × 2 mm, anchors inward",
      "foil over the edge anchors, 10 mm wide",
      "glass triaxial cloth, 750 g/m²",
      "unidirectional carbon, 300 g/m²",
      "wood, sidewalls ABS, black 7 mm, spacers; pocket face up, tip mark forward",
      "in the pocket, under the plate",
      "aluminium sheet",
      "unidirectional carbon, 300 g/m²",
      "glass triaxial cloth, 750 g/m²",
      "glass triaxial cloth, 750 g/m²",
      "clear polyamide topsheet; bonding side towards the cloth below",
    ]);
  });

  it("has fibres where there is cloth or wood alone", () => {
    expect(
      sheet.stack.flatMap(({ name, fibresDeg }) => (fibresDeg.length > 0 ? [`${name} ${fibresDeg.join(" ")}`] : [])),
    ).toEqual(["Fabric 0 45 -45", "Fabric 0", "Core 0", "Fabric 0", "Binding-zone mat 0 45 -45", "Fabric 0 45 -45"]);
  });

  it("has no plate where the build has none, and a zone's own width where it has one", () => {
    const { plate: _, ...bare } = build;
    const layers = bare.layers.map((layer) =>
      layer.role === "mat"
        ? { ...layer, extent: { kind: "zone", fromMountMm: -250, toMountMm: 350, widthMm: 80 } as const }
        : layer,
    );
    const { stack } = composeBuildSheet({ ...facts, solved: { ...facts.solved, build: { ...bare, layers } } });
    expect(stack.map(({ role }) => role)).not.toContain("plate");
    expect(stack.filter(({ role }) => role === "rubber").map(({ name }) => name)).toEqual(["Edge rubber"]);
    expect(stack.find(({ role }) => role === "mat")?.extent).toBe("705 to 1305 mm from tip, 80 mm wide");
  });

  it("writes edges to a tenth", () => {
    const { stack } = withBuild({ edge: { ...build.edge, widthMm: 2.16, heightMm: 1.84 } });
    expect(stack[1]?.detail).toBe("carbon steel edge, 2.2 × 1.8 mm, anchors inward");
    expect(stack[1]?.thicknessMm).toBe(1.84);
  });
});

describe("the picture of the stack", () => {
  const layer = (change: Partial<StackLayer>): StackLayer => ({
    name: "Cloth",
    detail: "",
    role: "fabric",
    thicknessMm: 0.656,
    fibresDeg: [],
    extent: "",
    lies: "whole",
    lines: [],
    isOption: false,
    ...change,
  });
  const bandOf = (change: Partial<StackLayer>) => drawn(StackPicture({ stack: [layer(change)] })).shapes;
  const body = (shapes: readonly Shape[]) =>
    ofType(shapes, "RECT").map((rect) => numbers(rect, "x", "y", "width", "height"));
  const fibres = (shapes: readonly Shape[]) =>
    ofType(shapes, "LINE").map((line) => numbers(line, "x1", "y1", "x2", "y2"));

  it("has the top layer on top, numbered from the base", () => {
    const { shapes } = drawn(
      StackPicture({
        stack: [layer({ name: "Base" }), layer({ name: "Wood", thicknessMm: null }), layer({ name: "Top" })],
      }),
    );
    const texts = ofType(shapes, "TEXT").map(({ text }) => text);
    const rows = texts.slice(texts.indexOf("3"), -1);
    expect(rows.filter((text) => text !== "")).toEqual(["3", "Top", "0.66", "2", "Wood", "drawn", "1", "Base", "0.66"]);
  });

  it("marks an option's layer", () => {
    const texts = (isOption: boolean) => ofType(bandOf({ isOption }), "TEXT").map(({ text }) => text);
    expect(texts(true)).toContain("OPTION");
    expect(texts(false)).not.toContain("OPTION");
  });

  // The picture is 104 by 20 pt; what lies under the binding takes the middle third of it.
  it("draws a layer over the whole ski, or short under the binding, in the middle of its row", () => {
    expect(body(bandOf({}))).toEqual([[1, 3.5, 102, 13]]);
    const [[x = 0, , width = 0] = []] = body(bandOf({ lies: "under-binding" }));
    expect(Math.abs(width - 104 / 3)).toBeLessThan(1);
    expect(Math.abs(x - 104 / 3)).toBeLessThan(1);
    expect(body(bandOf({ role: "core" }))[0]).toEqual([1, 1, 102, 18]);
    expect(body(bandOf({ role: "rubber" }))[0]).toEqual([1, 7, 102, 6]);
  });

  it("draws what lies at the ends alone as two pieces alike, at either end", () => {
    const pieces = body(bandOf({ lies: "ends" }));
    const [[x = 0, ...one] = [], [otherX = 0, ...other] = []] = pieces;
    expect(pieces).toHaveLength(2);
    expect([one[0], one[2]]).toEqual([3.5, 13]);
    expect(other).toEqual(one);
    // Between 1 and 103, an eighth of the layer each.
    expect(x).toBe(1);
    expect(otherX + (one[1] ?? 0)).toBeCloseTo(103, 6);
    expect(Math.abs((one[1] ?? 0) - 102 / 8)).toBeLessThan(1);
  });

  it("draws the edges as two strips of steel along the sides", () => {
    const [upper = [], lower = []] = body(bandOf({ role: "edge" }));
    expect(upper).toEqual([1, 3.5, 102, 2.2]);
    expect(lower[1]).toBeCloseTo(3.5 + 13 - 2.2, 6);
    expect(lower[3]).toBe(2.2);
  });

  it("tells materials apart by their fill and hatching, all inside the layer", () => {
    const fillOf = (role: StackLayer["role"]) => String(ofType(bandOf({ role }), "RECT")[0]?.props.fill);
    expect(new Set([fillOf("plate"), fillOf("rubber")]).size).toBe(1);
    expect(new Set([fillOf("plate"), fillOf("core"), fillOf("fabric")]).size).toBe(3);
    for (const role of ["metal", "base"] as const) {
      const [path] = ofType(bandOf({ role }), "PATH");
      const points = corners(path?.props.d);
      expect(points.length).toBeGreaterThan(10);
      expect(points.every(({ x, y }) => x >= 1 && x <= 103 && y >= 3.5 && y <= 16.5)).toBe(true);
      const [from, to] = points;
      // Metal leans one way, the base the other.
      expect(Math.sign(((to?.x ?? 0) - (from?.x ?? 0)) * ((to?.y ?? 0) - (from?.y ?? 0)))).toBe(
        role === "metal" ? -1 : 1,
      );
    }
    const grain = fibres(bandOf({ role: "core" }));
    expect(grain).toHaveLength(5);
    for (const [x1, y1 = 0, x2, y2] of grain) {
      expect([x1, x2, y2]).toEqual([1, 103, y1]);
      expect(y1).toBeGreaterThan(1);
      expect(y1).toBeLessThan(19);
    }
  });

  it("draws each fibre in its own direction about the middle, 0° along the ski, positive turned up", () => {
    const [along = [], up = [], down = [], across = []] = fibres(bandOf({ fibresDeg: [0, 45, -45, 90] }));
    const middle = ([x1 = 0, y1 = 0, x2 = 0, y2 = 0]: readonly number[]) => [(x1 + x2) / 2, (y1 + y2) / 2];
    for (const line of [along, up, down, across]) {
      expect(middle(line)[0]).toBeCloseTo(52, 5);
      expect(middle(line)[1]).toBeCloseTo(10, 5);
    }
    const deg = ([x1 = 0, y1 = 0, x2 = 0, y2 = 0]: readonly number[]) => (Math.atan2(y1 - y2, x2 - x1) * 180) / Math.PI;
    expect(deg(along)).toBeCloseTo(0, 5);
    expect(deg(up)).toBeCloseTo(45, 4);
    expect(deg(down)).toBeCloseTo(-45, 4);
    expect(deg(across)).toBeCloseTo(90, 4);
    const length = ([x1 = 0, y1 = 0, x2 = 0, y2 = 0]: readonly number[]) => Math.hypot(x2 - x1, y2 - y1);
    expect(length(along)).toBeGreaterThan(length(up));
    // Across and slanted they stay inside a layer 13 pt thick.
    expect(length(across)).toBeLessThanOrEqual(13);
    expect(Math.abs((up[1] ?? 0) - (up[3] ?? 0))).toBeLessThanOrEqual(13);
  });

  it("draws one direction once, bands twice, and neither beyond a short layer", () => {
    expect(fibres(bandOf({ fibresDeg: [0] }))).toEqual([[14, 10, 90, 10]]);
    expect(fibres(bandOf({ fibresDeg: [0], lies: "bands" })).map(([, y1]) => y1)).toEqual([7, 13]);
    const [[x1 = 0, , x2 = 0] = []] = fibres(bandOf({ fibresDeg: [0], lies: "under-binding" }));
    const [[x = 0, , width = 0] = []] = body(bandOf({ lies: "under-binding" }));
    expect(x1).toBeGreaterThan(x);
    expect(x2).toBeLessThan(x + width);
    expect(fibres(bandOf({ fibresDeg: [90] }))[0]?.[0]).toBe(52);
    expect(fibres(bandOf({}))).toEqual([]);
  });

  it("has a head at both ends of a fibre, pointing out", () => {
    const [heads] = ofType(bandOf({ fibresDeg: [0] }), "PATH");
    const points = corners(heads?.props.d).map(({ x, y }) => [x, y]);
    expect(points).toEqual([
      [90, 10],
      [86.6, 11.1],
      [86.6, 8.9],
      [14, 10],
      [17.4, 11.1],
      [17.4, 8.9],
    ]);
  });
});

describe("the core card", () => {
  it("has each strip between its own sides, by the blend's wood", () => {
    expect(sheet.core.strips).toEqual([
      { position: "C", innerMm: 0, outerMm: 8.7, species: "aspen" },
      { position: "I", innerMm: 8.7, outerMm: 26.1, species: "white ash" },
      { position: "M", innerMm: 26.1, outerMm: 43.5, species: "aspen" },
      { position: "O", innerMm: 43.5, outerMm: 60.9, species: "aspen" },
    ]);
    expect(sheet.core.sidewall).toEqual({ widthMm: 7, material: "ABS, black" });
    expect(sheet.core.wood).toEqual({ fromMm: 180, toMm: 1660 });
    expect(sheet.core.thickness.slice(0, 2)).toEqual([
      { x: 0, y: 2 },
      { x: 180, y: 2.05 },
    ]);
    expect(sheet.core.thicknessAtMountMm).toBe(11.45);
  });

  it("has the spacers' own sheet, or the sidewall's", () => {
    expect(sheet.core.spacers.material).toBe("ABS, black");
    const spacer = { ...build.sidewall.material, label: "cork" };
    expect(withBuild({ spacer }).core.spacers.material).toBe("cork");
  });

  it("names plate and its parts, or no pocket", () => {
    expect(sheet.core.pocket).toMatchObject({
      plateLengthMm: 480,
      plateWidthMm: 77,
      plateMm: 0.5,
      rubberMm: 0.15,
      plate: "aluminium sheet",
    });
    const { plate: _, ...bare } = build;
    expect(composeBuildSheet({ ...facts, solved: { ...facts.solved, build: bare } }).core.pocket).toBeNull();
  });

  it("keeps the name of a wood that the catalogue has lost, and leaves what was not measured to write in", () => {
    const strips = facts.strips?.map((strip) => ({
      ...strip,
      species: "elm",
      modulusMpa: null,
      densityKgM3: null,
      board: null,
    }));
    const { left } = composeBuildSheet({ ...facts, strips: strips ?? null }).strips;
    expect(left[0]).toMatchObject({ species: "elm", modulus: "", density: "", board: "", bin: "ASP 9.0" });
  });
});

describe("the bench's targets", () => {
  const bench = (springTest: Partial<SpringTest>) => {
    const at = { frontSupportMm: 175, rearSupportMm: 1636, loadMm: 955, ...springTest } as SpringTest;
    const rows = composeQc({
      spec: facts.spec,
      drawing: sheet.drawing,
      flex: facts.solved.flexWithPlate,
      floor,
      springTest: at,
    });
    return plain(rows.find(({ measure }) => measure === "Centre spring")?.method ?? "");
  };

  it.each([
    [{}, "supports shoulder and heel, over 1 461 mm, load at mount"],
    [
      { frontSupportMm: 175.4, rearSupportMm: 1635.6, loadMm: 955.4 },
      "supports shoulder and heel, over 1 460 mm, load at mount",
    ],
    [{ frontSupportMm: 200 }, "supports 200 mm and 1 636 mm from tip, over 1 436 mm, load at mount"],
    [{ rearSupportMm: 1600 }, "supports 175 mm and 1 600 mm from tip, over 1 425 mm, load at mount"],
    [{ loadMm: 900 }, "supports shoulder and heel, over 1 461 mm, load at 900 mm from tip"],
    [{ loadMm: sheet.drawing.mountMm + 0.5 }, "supports shoulder and heel, over 1 461 mm, load at 956 mm from tip"],
  ])("%j", (springTest, words) => {
    expect(bench(springTest)).toBe(words);
  });

  it("measures torsion with 10 N·m from mount to shoulder", () => {
    // Twist is the torque over GJ along the forebody: at a constant GJ of 1e8 N·mm² 10 000·780/1e8 rad = 4.469°.
    const stations = facts.solved.flexWithPlate.stations.map((s) => ({ ...s, torsionalStiffnessNmm2: 1e8 }));
    const drawing = { ...sheet.drawing, mountMm: 955, shoulder: { ...sheet.drawing.shoulder, xMm: 175 } };
    const rows = composeQc({
      spec: facts.spec,
      drawing,
      flex: { ...facts.solved.flexWithPlate, stations },
      floor,
      springTest: { frontSupportMm: 175, rearSupportMm: 1636, loadMm: 955 } as SpringTest,
    });
    const torsion = rows.find(({ measure }) => measure === "Torsion");
    expect(torsion?.method).toBe("10 N·m, mount to shoulder");
    // ± 12 %: 3.93 to 5.01.
    expect(torsion?.target).toBe("4.5°  (3.9 to 5.0)");
  });

  it("has for each measure its own limits and its way of measuring", () => {
    const limits = floor.qcLimits;
    const pairs = [
      ["Length", limits.length, "tape, along the base"],
      ["Shoulder", limits.widths, "caliper"],
      ["Waist", limits.widths, "caliper"],
      ["Heel", limits.widths, "caliper"],
      ["Sidecut radius", limits.sidecut, "Ls²/(2000(S+H−2W))"],
      ["Mass", limits.mass, "scale, 1 g"],
      ["Balance point", limits.balance, "knife edge, from tip"],
      ["Camber, unloaded", limits.camber, "flat bench, middle"],
      ["Tip / tail height", limits.splay, "flat bench, base side"],
      ["Contact points", limits.contact, "0.5 mm gauge, pressed flat"],
      ["Centre spring", limits.springCentre, "supports shoulder and heel, over 1\u00a0461\u00a0mm, load at mount"],
      ["Forebody spring", limits.springEnds, "held at mount, load at shoulder, over 780\u00a0mm"],
      ["Afterbody spring", limits.springEnds, "held at mount, load at heel, over 681\u00a0mm"],
      ["Torsion", limits.torsion, "10 N·m, mount to shoulder"],
      ["Twist of running surface", limits.twist, "winding sticks"],
      ["Base flatness", limits.flatness, "true bar between contact points"],
      ["Base bevel / side angle", limits.bevels, "gauge"],
      ["Visual", limits.visual, "voids, dents, print, sidewall, edge gap"],
    ] as const;
    expect(sheet.qc.map(({ measure, toTarget, twins, method }) => [measure, toTarget, twins, method])).toEqual(
      pairs.map(([measure, limit, method]) => [measure, limit.toTarget, limit.twins, method]),
    );
  });

  it("writes bevels to a hundredth", () => {
    const finish = { ...facts.spec.finish, baseBevelDeg: 0.75, sideAngleDeg: 2.25 };
    const { qc, finish: rows } = composeBuildSheet({ ...facts, spec: { ...facts.spec, finish } });
    expect(qc.find(({ measure }) => measure.startsWith("Base bevel"))?.target).toBe("0.75° / 2.25°");
    expect(told(rows)).toContain("Side angle: 2.25° (87.75° edge)");
  });
});

describe("the recipe", () => {
  it("weighs resin and hardener, and splits them into pots that do not run away", () => {
    // 560 and 151 g: 711 g in pots of at most 150 are five, of 112 and 30.2 g.
    expect(told(resinRows(facts.parts, floor))).toEqual([
      `System: ${facts.parts.resin.system}`,
      "For this pair: 560 g resin + 151 g hardener = 711 g",
      "Mix as: 5 batches of 112 g + 30 g (at most 150 g in one pot)",
      // 27 within ± 7 %: 25.11 to 28.89.
      "Ratio by weight: 100 : 27; weigh both, accept 25.1 to 28.9",
      "Room: 20 to 25 °C",
      "Lots: resin R-77   hardener H-31",
    ]);
  });

  it("leaves lots to write in, each its own", () => {
    const lots = (resinLot: string | null, hardenerLot: string | null) =>
      resinRows(facts.parts, { ...floor, resin: { ...floor.resin, resinLot, hardenerLot } }).at(-1)?.value;
    expect(lots(null, "H-31")).toBe("resin ________   hardener H-31");
    expect(lots("R-77", null)).toBe("resin R-77   hardener ________");
  });

  it("gives the working time of each room", () => {
    // 60 min at 22 °C halve every 10 °C: 60·2^((22 − t)/10), whole minutes that are surely left.
    expect(workingTimes(floor)).toEqual([
      { roomC: 18, minutes: 79 },
      { roomC: 20, minutes: 68 },
      { roomC: 22, minutes: 60 },
      { roomC: 24, minutes: 52 },
      { roomC: 26, minutes: 45 },
      { roomC: 28, minutes: 39 },
    ]);
  });

  it("runs the press up, through the dwell and down", () => {
    expect(told(pressRows({ ...floor, press: { ...floor.press, pressureBar: 3.26 } }))).toEqual([
      "Pressure: 3.3 bar in the bladder, held to the end of cooling",
      "Heat-up: 18 min to 78 °C",
      "Dwell: 45 min at 78 °C",
      "Cool-down: 35 min under pressure",
      "Demould: not before 98 min after close and not above 45 °C in the core; both must hold",
      "Rest: 24 h before trimming or grinding",
    ]);
  });
});

describe("the picture of a graphic", () => {
  it("is told by size and the first twelve digits of its hash, a house graphic by its name alone", () => {
    expect(told(sheet.graphic)).toContain("Source: 10866 × 2079 px, hash 5a1fe0c277d1");
    const { artwork: _, ...graphic } = facts.spec.graphic;
    const house = composeBuildSheet({
      ...facts,
      spec: { ...facts.spec, graphic: { ...graphic, kind: "house", house: "contours" } },
    });
    expect(house.graphic.map(({ label }) => label)).not.toContain("Source");
    expect(house.graphic[0]?.value).toContain("house graphic Contours, ");
  });
});

describe("notes", () => {
  it.each<[PairNote, string]>([
    [
      { kind: "other-species", position: "I", species: "ash", insteadOf: "elm", thicknessMm: 0.354 },
      "Strips at I: ash instead of elm. Mill the core +0.35 mm against the table.",
    ],
    [
      { kind: "other-thickness", modulusPercent: 4.26, thicknessMm: -0.2 },
      "Strips 4.3 % off the design. Mill the core -0.20 mm against the table.",
    ],
    [
      { kind: "other-thickness", modulusPercent: 4.26, thicknessMm: 0 },
      "Strips 4.3 % off the design. Mill the core 0.00 mm against the table.",
    ],
    [{ kind: "one-ski", serial: "TY-1-L", stations: [1, 2] }, "Only TY-1-L is built: stations 1, 2."],
    [{ kind: "parked", serial: "TY-1-R", location: "rack" }, "TY-1-R is parked: rack."],
    [{ kind: "extra-letters", colour: "black" }, "Cut an extra letter set from a spare black sheet."],
    [{ kind: "said", text: "Mind it." }, "Mind it."],
  ])("%j", (note, words) => {
    expect(composeBuildSheet({ ...facts, notes: [note] }).notes.map((text) => text.replace("−", "-"))).toEqual([words]);
  });
});

describe("the cover", () => {
  const shapes = drawn(Cover({ data: sheet, innerPt: 532 })).shapes;
  const texts = ofType(shapes, "TEXT").map(({ text }) => text);

  it("has each serial beside its own letter", () => {
    const at = texts.indexOf("left ski");
    expect(texts.slice(at - 1, at + 2)).toEqual(["L", "left ski", facts.pair.leftSerial]);
    const right = texts.indexOf("right ski");
    expect(texts.slice(right - 1, right + 2)).toEqual(["R", "right ski", facts.pair.rightSerial]);
  });

  it("stands in two columns that fill the paper's width, the skis side by side in the second", () => {
    const widths = ofType(shapes, "VIEW").flatMap(({ props }) => {
      const { width, marginRight = 0 } = (props.style ?? {}) as Readonly<Record<string, number>>;
      return width === undefined ? [] : [width + marginRight];
    });
    const [first = 0, second = 0, left = 0, gap = 0, right = 0] = widths;
    expect(first + second).toBe(532);
    expect(left + gap + right).toBe(second);
    expect(left).toBe(right);
    expect(gap).toBeGreaterThan(0);
  });

  it("draws the left base over the right one, each in its colour, with its letter on its axis", () => {
    const bases = ofType(shapes, "PATH").filter(({ props }) => props.fillOpacity !== undefined);
    expect(bases.map(({ props }) => props.fill)).toEqual(["#1C1C1C", "#F2C230"]);
    const [left = [], right = []] = bases.map(({ props }) => corners(props.d).map(({ y }) => y));
    expect(Math.max(...left)).toBeLessThan(Math.min(...right));
    const axis = (ys: readonly number[]) => (Math.min(...ys) + Math.max(...ys)) / 2;
    const bold = ofType(shapes, "TEXT").filter(({ text, props }) => /^[LR]$/.test(text) && props.x === 0);
    expect(bold.map(({ text }) => text)).toEqual(["L", "R"]);
    expect((numbers(bold[0], "y")[0] ?? 0) - axis(left)).toBeCloseTo(5, 1);
    expect((numbers(bold[1], "y")[0] ?? 0) - axis(right)).toBeCloseTo(5, 1);
    expect(textAt(shapes, "black base")[1]).toBeCloseTo(axis(left) + 3, 1);
    // The words on the letters stand under their own base and over the next.
    const [, under = 0] = textAt(shapes, `L: black; ${sheet.bases[0]?.inlay}`);
    expect(under).toBeGreaterThan(Math.max(...left));
    expect(under).toBeLessThan(Math.min(...right));
    const [, last = 0] = textAt(shapes, `R: signal yellow; ${sheet.bases[1]?.inlay}`);
    const paper = ofType(shapes, "SVG").find(({ props }) => props.width === 532);
    expect(last).toBeGreaterThan(Math.max(...right));
    expect(last).toBeLessThan(numbers(paper, "height")[0] ?? 0);
  });

  it("finds room for a ski whose heel is the wider end", () => {
    const heavy = { ...sheet.drawing, heel: { ...sheet.drawing.heel, widthMm: 200 } };
    const wide = ofType(drawn(Cover({ data: { ...sheet, drawing: heavy }, innerPt: 532 })).shapes, "SVG");
    const tall = (all: readonly Shape[]) =>
      Math.max(...all.filter(({ props }) => props.width === 532).map((svg) => numbers(svg, "height")[0] ?? 0));
    expect(tall(wide)).toBeGreaterThan(tall(ofType(shapes, "SVG")));
  });

  it.each([
    ["estimate", "Estimate"],
    ["promise", "Promise"],
    ["hard-date", "HARD DATE"],
  ] as const)("tells the dates of a pair with its class: %s", (promiseClass, words) => {
    const pair = { ...sheet.pair, promiseClass, pressBy: null };
    const told = ofType(drawn(Cover({ data: { ...sheet, pair }, innerPt: 532 })).shapes, "TEXT").map(
      ({ text }) => text,
    );
    expect(told[told.indexOf("Promise class") + 1]).toBe(words);
    expect(told[told.indexOf("Press by") + 1]).toBe("not planned yet");
    expect(told[told.indexOf("Ready by") + 1]).toBe("Fri 18 Dec 2026");
  });

  it("says when nothing was changed and nothing noted", () => {
    const plainPair = ofType(drawn(Cover({ data: { ...sheet, options: [], notes: [] }, innerPt: 532 })).shapes, "TEXT");
    const words = plainPair.map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(["NO OPTIONS", "Built as the model stands.", "None."]));
    expect(texts).toContain("OPTIONS");
    expect(texts).not.toContain("None.");
    expect(texts).not.toContain("Built as the model stands.");
  });
});

describe("the kit list", () => {
  const list = composeKitList(facts);
  const rowOf = (line: number) => list.rows.find((row) => row.line === line);

  it("has lot, place and substitution of the line they belong to", () => {
    expect(rowOf(1)).toMatchObject({
      code: "P01",
      lot: "ASP-2609",
      location: "rack A2",
      substitution: "",
      isMandatory: true,
    });
    expect(rowOf(38)).toMatchObject({
      lot: "R-77",
      location: "resin store",
      substitution: "fast hardener, approved by owner",
    });
    expect(rowOf(2)).toMatchObject({ lot: "", location: "", substitution: "" });
    expect(rowOf(51)).toMatchObject({ isMandatory: false });
    expect(told(list.identity)).toEqual(["Mould: M95-178", "Length: 1 780 mm"]);
    expect(rowOf(13)).toMatchObject({ left: "1", right: "", pair: "" });
    expect(rowOf(14)).toMatchObject({ left: "", right: "1", pair: "" });
    expect(plain(rowOf(38)?.pair ?? "")).toBe("560 g");
    expect(rowOf(2)?.isOption).toBe(false);
    expect(rowOf(27)?.isOption).toBe(true);
  });

  it("has a box to scan into for each ski that a line is for, one for what the pair shares, heavy where it must be", () => {
    const boxes = (line: number) => {
      const rows = list.rows.filter((row) => row.line === line);
      const { shapes } = drawn(KitListPages({ data: { ...list, rows }, paper: "A4" }));
      return ofType(shapes, "VIEW").flatMap(({ props }) => {
        const style = props.style as Record<string, unknown> | undefined;
        return style?.width === 10 && style.alignSelf === "center" ? [Number(style.borderWidth)] : [];
      });
    };
    expect(boxes(2)).toHaveLength(2);
    expect(boxes(13)).toHaveLength(1);
    expect(boxes(14)).toHaveLength(1);
    expect(boxes(38)).toHaveLength(1);
    expect(boxes(51)[0]).toBeLessThan(boxes(38)[0] ?? 0);
  });
});

describe("labels", () => {
  const { shapes } = drawn(LabelsPages({ data: composeLabels(facts), paper: "A4" }));
  const texts = ofType(shapes, "TEXT").map(({ text }) => text);

  it("are one of each part for each ski, with the ski's own serial", () => {
    for (const part of ["Strip bundle", "Core", "Base", "Print", "Cassette", "Finished ski"]) {
      const left = texts.indexOf(part);
      const right = texts.indexOf(part, left + 1);
      expect(texts.slice(left - 1, left + 2)).toEqual(["L", part, facts.pair.leftSerial]);
      expect(texts.slice(right - 1, right + 2)).toEqual(["R", part, facts.pair.rightSerial]);
      expect(texts.indexOf(part, right + 1)).toBe(-1);
    }
    expect(texts.filter((text) => text === "mould M95-178 · print revision 2")).toHaveLength(12);
  });

  it("have a dark letter on light for the left ski, light on dark for the right", () => {
    const blocks = ofType(shapes, "VIEW").flatMap(({ props, text }) => {
      const style = props.style as Record<string, unknown> | undefined;
      return style?.backgroundColor === undefined || text.length !== 1 ? [] : [[text, style.backgroundColor]];
    });
    expect(new Set(blocks.map((block) => block.join(" ")))).toEqual(new Set(["L #FFFFFF", "R #1B2023"]));
    const letters = ofType(shapes, "TEXT").filter(({ text }) => /^[LR]$/.test(text));
    for (const { text, props } of letters)
      expect((props.style as Record<string, unknown>).color).toBe(text === "L" ? "#1B2023" : "#FFFFFF");
  });
});
