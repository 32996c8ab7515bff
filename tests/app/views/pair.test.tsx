/** The shop's page of one pair and its bench, drawn from a pair made by hand. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import PairPage from "#app/shop/(staff)/pair/[code]/page.tsx";
import type { PairBenchView, PairView, QueueEffect, ReworkView } from "#services";
import { catalog, solved } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";
import { shown } from "../../support/page-render";
import { refusal, seeAs, tell } from "../../support/page-views";
import { assessed } from "../../support/sheet";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));

/** Winter in Denver is seven hours behind UTC. */
const denver = (time: string) => new Date(Date.parse(`2026-11-10T${time}:00.000Z`) + 7 * 3_600_000).toISOString();
const spec = assessed.spec;
if (!spec) throw new Error("no recommendation");
const { flex } = solved(spec);
const operation = (known: object) => ({
  operationId: "op-1",
  key: "k",
  station: "planing",
  stationNumber: 4,
  stationName: "Planing",
  visit: 0,
  side: null,
  state: "done",
  version: 2,
  typicalMinutes: 45,
  startedAt: denver("08:00"),
  startedBy: "Mo",
  finishedAt: denver("08:40"),
  finishedBy: "Ola",
  pressName: null,
  notBefore: null,
  ...known,
});
const running = operation({
  operationId: "op-2",
  station: "bonding",
  stationNumber: 5,
  stationName: "Bonding",
  state: "running",
  version: 3,
  startedAt: denver("09:00"),
  finishedAt: null,
  finishedBy: null,
  side: "L",
});
const ready = operation({
  operationId: "op-3",
  station: "base",
  stationNumber: 6,
  stationName: "Base",
  state: "ready",
  version: 1,
  startedAt: null,
  startedBy: null,
  finishedAt: null,
  finishedBy: null,
  notBefore: denver("12:00"),
});
const blocked = {
  ...ready,
  operationId: "op-4",
  state: "blocked",
  stationName: "Edges",
  station: "edges",
  stationNumber: 7,
};
const part = (known: object) => ({
  line: 1,
  code: "core",
  label: "Core",
  material: "Aspen",
  cut: "1820 × 90",
  quantityLeft: 1,
  quantityRight: 2,
  quantityPair: 3.25,
  unit: "m",
  stationNumber: 4,
  fromOption: false,
  ...known,
});
const pairWith = (known: object = {}) =>
  partly<PairView>({
    pairId: "p-1",
    serial: "TY-0401",
    orderId: "o-1",
    orderNumber: "O-301",
    state: "building",
    version: 7,
    revision: 2,
    spec,
    modelName: "Midlow 84",
    modelRevision: "r3",
    flexClassLabel: "Middle",
    skierFirstName: "Robin",
    mould: "M84-182",
    reworkFrom: {
      "void-after-press": "milling",
      "core-wrong": "milling",
      "outside-limits": "milling",
      "base-damaged": "base",
      "edge-wrong": "edges",
      "topsheet-nicked": "planing",
    },
    skis: [
      { side: "L", serial: "TY-0401-L-7", state: "scrapped", build: 1, location: null },
      { side: "R", serial: "TY-0401-R-5", state: "held", build: 1, location: "rack 3" },
      { side: "L", serial: "TY-0401-L-5", state: "good", build: 2, location: null },
    ],
    flex: {
      ...flex,
      springCentreNPerMm: 2.5,
      springForebodyNPerMm: 3.25,
      springAfterbodyNPerMm: 4.75,
      massKg: 1.75,
      balancePointMm: 911.4,
    },
    springSpans: { centreMm: 1461.2, forebodyMm: 790, afterbodyMm: 671 },
    spread: { springCentre: 0.02, massG: 60, twins: { springCentre: 0.012, massG: 10 } },
    twinLimits: { springCentre: "3 %", mass: "25 g" },
    core: { achievedRatio: 1.0712, limitedBy: [] },
    parts: {
      lines: [
        part({}),
        part({
          line: 2,
          code: "glue",
          label: "Glue",
          fromOption: true,
          quantityLeft: 0,
          quantityRight: 0,
          quantityPair: 1.5,
          unit: "kg",
        }),
        part({ line: 3, code: "x", quantityLeft: 0.5, quantityPair: 0 }),
      ],
    },
    strips: [
      {
        stripId: "s-1",
        side: "L",
        position: "I",
        place: "left",
        species: "ash",
        board: "b-7",
        modulusMpa: 13_240,
        densityKgM3: 670.4,
        bin: "A3",
      },
    ],
    isStripsShort: false,
    operations: [operation({}), running, ready, blocked],
    holds: [],
    presses: [],
    plannedPress: null,
    gates: { proof: "not-needed", waitingFor: [] },
    promisedOn: "2026-11-23",
    expected: null,
    prints: [],
    history: [],
    ...known,
  } as never);
const bench = (known: object = {}) =>
  partly<PairBenchView>({
    skis: [
      {
        side: "L",
        serial: "TY-0401-L-5",
        version: 2,
        values: { massKg: 1.761 },
        measuredAt: denver("10:00"),
        measuredBy: "Mo",
      },
      { side: "R", serial: "TY-0401-R-5", version: 0, values: {}, measuredAt: null, measuredBy: null },
    ],
    rows: [
      {
        measure: "massKg",
        target: 1.75,
        limit: 0.05,
        twinLimit: 0.025,
        left: 1.761,
        right: null,
        twinDifference: null,
        states: { L: "in", R: null, twins: null },
      },
      {
        measure: "springCentreNPerMm",
        target: 2.5,
        limit: null,
        twinLimit: null,
        left: 2.1,
        right: 2.6,
        twinDifference: 0.5,
        states: { L: "out", R: "in", twins: "out" },
      },
    ],
    ...known,
  } as never);
const page = (known: object = {}, query = {}) => {
  tell("readPair", pairWith(known));
  return shown(PairPage, { params: { code: "TY-0401" }, query });
};

beforeEach(() => {
  seeAs("maker");
  tell("findPairByCode", {
    pairId: "p-1",
    serial: "TY-0401",
    side: null,
    isScrapped: false,
    isVoid: false,
    print: null,
  });
  tell("readPairBench", bench());
  tell("buildOfRelease", catalog.build);
});

describe("a pair on the floor", () => {
  it("shows what runs and what is ready, each with its own button and version", async () => {
    const now = (await page()).part("Now");
    expect(now.all("li h3").map(({ text }) => text)).toEqual(["5 Bonding, left ski again", "6 Base"]);
    expect(now.all("li > div > p").map(({ text }) => text)).toEqual([
      "running, typically 45 min, since 10 Nov 2026, 09:00, Mo",
      "ready, typically 45 min",
      "Rests until 10 Nov 2026, 12:00",
    ]);
    expect(now.forms.map(({ buttons, sent }) => [buttons, sent])).toEqual([
      [["Finish"], { serial: "TY-0401", operationId: "op-2", version: "3" }],
      [["Start"], { serial: "TY-0401", operationId: "op-3", version: "1" }],
      [["Undo"], { serial: "TY-0401", operationId: "op-2", version: "3", reason: "Tapped by mistake" }],
    ]);
    expect(now.text).toContain("Undo the last tick: Bonding");
    expect(now.text).not.toContain("Nothing can be done");
    // The latest tick counts, whether it began or ended something.
    const ended = (await page({ operations: [operation({ finishedAt: denver("09:30") }), running] })).part("Now");
    expect(ended.text).toContain("Undo the last tick: Planing");
    seeAs("desk");
    const desk = (await page()).part("Now");
    expect(desk.forms).toEqual([]);
    expect(desk.text).toContain("Makers tick operations.");
  });

  it("asks for a press where one can be chosen, and says of each whether it is free", async () => {
    const lay = {
      ...ready,
      station: "press",
      stationNumber: 11,
      stationName: "Press",
      usesPress: true,
      notBefore: null,
    };
    const press = (id: string, known: object = {}) => ({
      press: id,
      name: id.replace("p", "Press "),
      takenBy: null,
      down: null,
      ...known,
    });
    const taken = { takenBy: { pairId: "p-9", serial: "TY-0409" } };
    const down = { down: { until: denver("16:30"), reason: "plate burnt" } };
    const now = async (presses: readonly object[], known: object = {}) =>
      (await page({ operations: [lay], presses, ...known })).part("Now");
    const told = (seen: Awaited<ReturnType<typeof now>>) => seen.all("li > div > p").slice(1);
    const two = await now([press("p1"), press("p2")], { plannedPress: "p2" });
    expect(told(two).map(({ text }) => text)).toEqual(["Press 1 is free.", "Press 2 is free."]);
    expect(two.form("Start").fields.press).toMatchObject({
      kind: "select",
      value: "p2",
      choices: { p1: "Press 1", p2: "Press 2" },
    });
    const open = (await now([press("p1"), press("p2")])).form("Start").fields.press;
    expect(open).toMatchObject({ value: "", choices: { "": "Choose a press", p1: "Press 1", p2: "Press 2" } });
    const one = await now([press("p1", taken), press("p2", down), press("p3")], { plannedPress: "p1" });
    expect(told(one).map(({ text }) => text)).toEqual([
      "Press 1: TY-0409 is in it.",
      "Press 2 is down until 10 Nov 2026, 16:30: plate burnt",
      "Press 3 is free.",
    ]);
    expect(told(one).map((each) => each.attribute("class"))).toEqual(["text-amber", "text-amber", "text-pencil"]);
    expect(one.form("Start").fields.press).toMatchObject({ kind: "hidden", value: "p3" });
    const none = await now([press("p1", taken), press("p2", { down: { until: null, reason: "away" } })]);
    expect(none.text).toContain("Press 2 is down until –: away");
    expect(none.form("Start").fields.press).toBeUndefined();
    const inside = {
      ...lay,
      state: "running",
      startedAt: denver("09:00"),
      startedBy: "Mo",
      pressName: "Press 1",
      notBefore: denver("12:00"),
    };
    const pressed = await now([press("p1"), press("p2")], { operations: [inside] });
    expect(told(pressed)).toEqual([]);
    expect(pressed.text).toContain("running, typically 45 min, since 10 Nov 2026, 09:00, Mo, in Press 1");
    expect(pressed.form("Finish").fields.press).toBeUndefined();
    expect((await now([press("p1")], { operations: [{ ...lay, usesPress: false }] })).text).not.toContain("is free");
  });

  it("says why nothing can be done, what holds it and what it waits for", async () => {
    seeAs("maker");
    expect((await page({ operations: [operation({})] })).part("Now").text).toContain("Every operation is done.");
    const stuck = (
      await page({
        operations: [operation({}), blocked],
        holds: [
          { station: "edges", stationNumber: 7, reason: "material", note: "no steel", expectedOn: "2026-11-20" },
          { station: "planing", stationNumber: 4, reason: "decision", note: "ask Ola", expectedOn: null },
        ],
        gates: { proof: null, waitingFor: ["proof"] },
      })
    ).part("Now");
    expect(stuck.text).toContain("Nothing can be done on this pair now.");
    expect(stuck.items).toContain("Held at station 7 until 20 November 2026: no steel");
    expect(stuck.items).toContain("Held at station 4 until somebody decides: ask Ola");
    expect(stuck.text).toContain("!proof");
    expect((await page({ operations: [blocked] })).part("Now").forms).toEqual([]);
  });

  it("says what it is to measure, with the bands of nine in ten", async () => {
    const facts = (await page()).part("Where it is").facts;
    expect(facts).toMatchObject({
      Done: "1/4",
      Promise: "23 November 2026",
      Mould: "M84-182",
      Revision: "2",
      // 1.645 deviations: of 25 N/cm at 2 %, of 60 g, of 1.2 % and of 10 g between twins.
      "Centre spring constant": "25.0 ± 0.8 N/cm over 1461 mm",
      "Forebody spring constant": "32.5 N/cm over 790 mm",
      "Afterbody spring constant": "47.5 N/cm over 671 mm",
      "One ski weighs": "1750 ± 99 g",
      "Balance point from the tip": "911 mm",
      "Flex, built against ordered": expect.stringMatching(/^1\.071 \/ /),
      "Twins apart in centre spring": "up to 2.0 %, limit 3 %",
      "Twins apart in mass": "up to 16 g, limit 25 g",
    });
    expect(Object.keys(facts)).not.toContain("Order");
    const bare = (
      await page({ spread: null, promisedOn: null, expected: { p50: "2026-12-10", p90: "2026-12-17" } })
    ).part("Where it is");
    expect(bare.facts).toMatchObject({
      Promise: "no promise yet, 10–17 December 2026, nine times out of ten by the later date",
      "Centre spring constant": "25.0 N/cm over 1461 mm",
      "One ski weighs": "1750 g",
    });
    expect(bare.text).not.toContain("nine pairs of ten");
    expect((await page({ promisedOn: null })).part("Where it is").facts.Promise).toBe("no promise yet");
    seeAs("desk");
    expect((await page()).part("Where it is").links["O-301"]).toBe("/shop/orders/o-1");
  });

  it("keeps its skis, papers, wood, parts and operations apart", async () => {
    const prints = [
      { print: 2, printedAt: denver("08:00"), printedBy: "Desk 1", voided: null },
      { print: 3, printedAt: denver("09:00"), printedBy: "Desk 2", voided: null },
    ];
    const seen = await page({ prints, gates: { proof: null, waitingFor: [] } });
    expect(seen.headings[0]).toBe("Pair TY-0401");
    expect(seen.text).toContain("Midlow 84 r3, 174 cm, flex class middle, for Robin");
    expect(Object.entries(seen.part("Skis").facts)).toEqual([
      ["left ski", "TY-0401-L-7✕scrapped"],
      ["right ski", "TY-0401-R-5!heldparked: rack 3"],
      ["left ski, build 2", "TY-0401-L-5✓good"],
    ]);
    const papers = seen.part("Paper");
    expect(papers.all("a").map((link) => [link.attribute("aria-label"), link.attribute("href")])).toEqual(
      [
        ["Build sheet, A4", "/files/pairs/p-1/build-sheet"],
        ["Build sheet, Letter", "/files/pairs/p-1/build-sheet?paper=letter"],
        ["Kit list, A4", "/files/pairs/p-1/kit-list"],
        ["Kit list, Letter", "/files/pairs/p-1/kit-list?paper=letter"],
        ["Labels, A4", "/files/pairs/p-1/labels"],
        ["Labels, Letter", "/files/pairs/p-1/labels?paper=letter"],
        ["See the proof, A4", "/files/proofs/shop/p-1"],
        ["See the proof, Letter", "/files/proofs/shop/p-1?paper=letter"],
      ].map(([label, href]) => [label?.startsWith("See the proof") ? expect.stringContaining("roof") : label, href]),
    );
    expect(papers.text).toContain("Last print: 3, 10 Nov 2026, 09:00, Desk 2");
    expect((await page()).part("Paper").all("a")).toHaveLength(6);
    expect(seen.table("Strips").map((row) => Object.values(row))).toEqual([
      ["L", "I", "left", "ash", "b-7", "13.24", "670", "A3"],
    ]);
    expect(seen.table("Parts").map((row) => Object.values(row))).toEqual([
      ["1", "CoreAspen", "1820 × 90", "1", "2", "3.3 m", "4"],
      ["2", "GlueAspen", "1820 × 90", "", "", "1.5 kg", "4"],
      ["3", "CoreAspen", "1820 × 90", "0.5", "2", "", "4"],
    ]);
    expect(
      seen
        .part("Parts")
        .all("strong")
        .map(({ text }) => text),
    ).toEqual(["Glue"]);
    expect(seen.csv("TY-0401-parts.csv")[1]).toEqual([
      "1",
      "core",
      "Core",
      "Aspen",
      "1820 × 90",
      "1",
      "2",
      "3.25",
      "m",
      "4",
    ]);
    const thickness = seen.table("Core thickness");
    const at = (index: number) => flex.stations[index];
    expect(thickness).toHaveLength(9);
    expect(thickness[0]).toEqual({
      "From the tip, mm": at(0)?.xMm.toFixed(0),
      "Core, mm": at(0)?.coreMm.toFixed(2),
      "Whole ski, mm": at(0)?.thicknessMm.toFixed(2),
      "Width, mm": at(0)?.widthMm.toFixed(1),
    });
    expect(thickness.at(-1)?.["From the tip, mm"]).toBe(flex.stations.at(-1)?.xMm.toFixed(0));
    const middle = at(Math.round((flex.stations.length - 1) / 2));
    expect(thickness[4]?.["From the tip, mm"]).toBe(middle?.xMm.toFixed(0));
    expect(
      (await page({ flex: { ...flex, stations: flex.stations.slice(0, 3) } })).table("Core thickness"),
    ).toHaveLength(3);
    expect(seen.table("Operations").map((row) => Object.values(row))).toEqual([
      ["4 Planing", "✓done", "10 Nov 2026, 08:00 Mo", "10 Nov 2026, 08:40 Ola"],
      ["5 Bondingleft ski again", "irunning", "10 Nov 2026, 09:00 Mo", ""],
      ["6 Base", "iready", "", ""],
      ["7 Edges", "!blocked", "", ""],
    ]);
    expect(
      (await page({ operations: [operation({ pressName: "Press 1", state: "redo" })] })).table("Operations")[0],
    ).toMatchObject({ State: "✕again", Started: "10 Nov 2026, 08:00 Moin Press 1" });
    expect(seen.text).not.toContain("Strips are short");
    const short = await page({ isStripsShort: true, strips: [] });
    expect(short.links["See the ways out"]).toBe("/shop/strips/TY-0401");
    expect(short.text).toContain("No strips are set aside.");
    expect(seen.part("Tip to tail").all("svg").length).toBeGreaterThan(5);
    // Ticks in from either edge where the boot stands: at the mount line, and where the zone of the bindings ends.
    expect(seen.part("Tip to tail").all('path[stroke="var(--larch)"]').length).toBeGreaterThan(0);
  });

  it("tells what was scanned: one ski, a scrapped one, a void print, or nothing", async () => {
    expect((await page()).text).not.toContain("Scanned");
    const asked: unknown[] = [];
    const scan = {
      pairId: "p-1",
      serial: "TY-0401",
      side: "R",
      isScrapped: true,
      isVoid: true,
      print: { print: 2, voided: { at: denver("08:00"), reason: "changed" } },
    };
    tell("findPairByCode", (input: unknown) => {
      asked.push(input);
      return scan;
    });
    const seen = await page({}, { print: "2" });
    expect(asked).toEqual([{ code: "TY-0401?print=2" }]);
    expect(seen.text).toContain("Scanned: right ski");
    expect(seen.all("[role=alert]").map(({ text }) => text)).toEqual([
      "✕This serial is a scrapped ski's. Another one is built in its place.",
      "✕Print 2 is void: changed. Print the sheet again.",
    ]);
    tell("findPairByCode", { ...scan, isVoid: false, isScrapped: false });
    expect((await page()).all("[role=alert]")).toEqual([]);
    tell("findPairByCode", refusal("not-found", { what: "pair" }));
    expect((await page()).headings).toEqual(["TY-0401"]);
  });
});

describe("the bench", () => {
  it("has a form for each ski with target and limits, in the bench's units", async () => {
    const seen = (await page()).part("Measure this pair");
    const [left, right] = seen.forms;
    expect(left?.sent).toEqual({
      serial: "TY-0401",
      pairId: "p-1",
      side: "L",
      version: "2",
      massKg: "1761",
      springCentreNPerMm: "",
    });
    expect(right?.sent).toEqual({
      serial: "TY-0401",
      pairId: "p-1",
      side: "R",
      version: "0",
      massKg: "",
      springCentreNPerMm: "",
    });
    expect([left?.fields.massKg?.hint, left?.fields.springCentreNPerMm?.hint]).toEqual([
      "Target 1750 g, 1700 to 1800",
      "Target 25.0 N/cm",
    ]);
    expect([left?.buttons, right?.buttons]).toEqual([["Save the left ski"], ["Save the right ski"]]);
    expect(seen.all("section h3").map(({ text }) => text)).toEqual(["Left ski TY-0401-L-5", "Right ski TY-0401-R-5"]);
    expect(seen.all("section > p").map(({ text }) => text)).toEqual(["Read 10 Nov 2026, 10:00 by Mo"]);
    expect(seen.table("Readings against target and twin")).toEqual([
      { Measure: "Mass", Target: "1750 g", Left: "1761✓in", Right: "–", "Between twins": "–", "Twins at most": "25 g" },
      {
        Measure: "Centre spring",
        Target: "25.0 N/cm",
        Left: "21.0✕out",
        Right: "26.0✓in",
        "Between twins": "5.0✕out",
        "Twins at most": "–",
      },
    ]);
    seeAs("desk");
    const desk = (await page()).part("Measure this pair");
    expect(desk.forms).toEqual([]);
    expect(desk.text).toContain("Makers and the owner measure.");
    for (const state of ["waiting", "released", "cancelled"])
      expect((await page({ state })).part("Measure this pair").text).toContain(
        "It can be measured once its build has begun.",
      );
    for (const state of ["ready", "shipped"])
      expect((await page({ state })).part("Measure this pair").all("table")).toHaveLength(1);
  });
});

describe("one ski built again", () => {
  const own = { serial: "TY-0401", movedWorkingDays: 6, standingAfter: "late" };
  const view = (known: object = {}) =>
    partly<ReworkView>({
      pairId: "p-1",
      serial: "TY-0401",
      version: 7,
      side: "L",
      fault: "core-wrong",
      fromStation: "milling",
      fromNumber: 2,
      scrappedSerial: "TY-0401-L-7",
      newSerial: "TY-0401-L-5",
      heldSerial: "TY-0401-R-5",
      stations: [
        { station: "milling", number: 2, name: "Milling", isOneSki: true },
        { station: "gluing", number: 3, name: "Gluing", isOneSki: false },
      ],
      strips: { isFound: true, count: 7, differencePercent: -1.236, bins: ["A3", "A4"] },
      letters: { text: "ADA", sheetColour: "black" },
      effect: {
        own,
        ready: { p50: "2026-12-10", p90: "2026-12-17" },
        queue: partly<QueueEffect>({ crossing: [own, { serial: "TY-0409" }] as never }),
      },
      ...known,
    } as never);
  const asked = { side: "L", fault: "core-wrong", from: "milling" };
  const title = "Build one ski again";
  it("is shown with what it takes before anything is scrapped", async () => {
    const inputs: unknown[] = [];
    tell("previewRework", (input: unknown) => {
      inputs.push(input);
      return view();
    });
    const seen = (await page({}, asked)).part(title);
    expect(inputs).toEqual([{ pairId: "p-1", side: "L", fault: "core-wrong", fromStation: "milling" }]);
    expect(seen.facts).toEqual({
      Scrapped: "TY-0401-L-7",
      "Built from station 2": "TY-0401-L-5",
      Waits: "TY-0401-R-5",
      "Done again": "2, 3 (both skis: the work was under way)",
      Strips: "7 strips within 1.24 % of the other ski's own, in A3, A4",
      Letters: "“ADA” needs an extra set, cut from a spare sheet of black.",
      "This pair": "6 working days later: ready 10–17 December 2026",
      "Its promise": "late",
      "Other promises at risk by it": "TY-0409",
    });
    expect(seen.form("Scrap it and build it again").sent).toEqual({
      serial: "TY-0401",
      pairId: "p-1",
      version: "7",
      side: "L",
      fault: "core-wrong",
      fromStation: "milling",
      location: "",
      note: "",
    });
    tell(
      "previewRework",
      view({
        strips: { isFound: false, limitPercent: 3 },
        letters: null,
        effect: { own: null, ready: null, queue: partly<QueueEffect>({ crossing: [] }) },
      }),
    );
    const calm = (await page({}, asked)).part(title).facts;
    expect(calm).toMatchObject({
      Strips: "None within 3 % of the other ski's own: the pair will wait at the glue-up.",
      "This pair": "moves by less than half a working day",
      "Other promises at risk by it": "none",
    });
    expect(Object.keys(calm)).not.toContain("Its promise");
    expect(Object.keys(calm)).not.toContain("Letters");
    tell(
      "previewRework",
      view({
        strips: null,
        effect: {
          own: null,
          ready: { p50: "2026-12-10", p90: "2026-12-17" },
          queue: partly<QueueEffect>({ crossing: [] }),
        },
      }),
    );
    expect((await page({}, asked)).part(title).facts).toMatchObject({
      Strips: "The core is kept.",
      "This pair": "ready 10–17 December 2026",
    });
    tell("previewRework", refusal("not-allowed"));
    const refused = (await page({}, asked)).part(title);
    expect(refused.text).toContain("You may not do this.");
    expect(refused.buttons).toEqual(["Show what it takes"]);
  });

  it("asks first, keeps what was asked, and is there for whom and when it can be", async () => {
    tell("previewRework", view());
    const first = (await page()).part(title);
    expect(first.facts).toEqual({});
    expect(first.forms[0]?.sent).toMatchObject({ side: "L", fault: "void-after-press" });
    // Nothing is built again from the paper of the first station.
    const from = (
      await page({
        operations: [
          operation({ station: "release", stationNumber: 1, stationName: "Release" }),
          operation({ station: "milling", stationNumber: 2, operationId: "op-5" }),
          ready,
        ],
      })
    ).part(title);
    expect(Object.keys(from.forms[0]?.fields.from?.choices ?? {})).toEqual(["milling", "base"]);
    const inputs: unknown[] = [];
    tell("previewRework", (input: unknown) => {
      inputs.push(input);
      return view();
    });
    await page({}, { side: "L", fault: "core-wrong", from: "bonding" });
    await page({}, { side: "L", fault: "core-wrong" });
    expect(inputs.map((input) => (input as { fromStation: string }).fromStation)).toEqual(["bonding", "milling"]);
    expect(first.forms[0]?.fields.side?.choices).toEqual({ L: "Left", R: "Right" });
    const again = (await page({}, { ...asked, side: "R" })).part(title).forms[0];
    expect(again?.sent).toMatchObject({ side: "R", fault: "core-wrong" });
    expect((await page({}, { side: "X", fault: "core-wrong" })).part(title).facts).toEqual({});
    expect((await page({}, { side: "L", fault: "none" })).part(title).facts).toEqual({});
    for (const state of ["waiting", "released", "shipped"]) expect((await page({ state })).hasPart(title)).toBe(false);
    expect((await page({ state: "ready" })).hasPart(title)).toBe(true);
    seeAs("desk");
    const desk = (await page()).part(title);
    expect(desk.forms).toEqual([]);
  });
});
