/** The shop's small rules as tables: paging, merging, leases, letters, what-ifs and ways on from a breakdown. No database. */
import { describe, expect, it } from "vitest";
import { UnreadableRow } from "#data/columns";
import type { PairSpec } from "#engine/configuration";
import { isoDate } from "#engine/units";
import type { RemedySettings } from "#schemas/content/index";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import { stationIdFor } from "#shop/floor/stations";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import type { PromiseEffect, QueueEffect } from "#shop/queue/views";
import { leavesPalette, paletteGraphic } from "../../lib/services/clubs/palette";
import { benchRow } from "../../lib/services/learning/bench-row";
import { decisionsInForce, readingKey, versionOf } from "../../lib/services/learning/learn";
import { changedParts } from "../../lib/services/orders/changed-parts";
import { pageOf, sliceOf } from "../../lib/services/paging";
import { floorFacts } from "../../lib/services/papers/floor-facts";
import { colourOffer } from "../../lib/services/planning/breakdowns/colour-offer";
import { delayLetter, longDay, replyBy } from "../../lib/services/planning/breakdowns/delay-letter";
import { hasBegun } from "../../lib/services/planning/breakdowns/has-begun";
import { remedies } from "../../lib/services/planning/breakdowns/remedies";
import { fixedBecause } from "../../lib/services/planning/order/fixed-place";
import { keptPeriod } from "../../lib/services/planning/promises/kept-period";
import type { KeptOrder } from "../../lib/services/planning/promises/views";
import { costCentsPerWeek, floorChangesOf, situationIf } from "../../lib/services/planning/what-if/situation-if";
import { leaseFor, leaseMinutes, mayHold, noLease } from "../../lib/services/sheets/lease";
import { mergeFields } from "../../lib/services/sheets/merge";

// Noon in the shop's winter; what is written for "now" below counts from it.
const now = new Date("2026-11-30T19:00:00Z");
const minutesLater = (minutes: number) => new Date(now.getTime() + minutes * 60_000);
const desk = { now, actor: { kind: "staff", staffId: "s-1", name: "Desk 1", role: "office" } } as unknown as Context;

describe("a page of rows", () => {
  it.each([
    [undefined, 1],
    [1, 1],
    [2, 2],
    [100_000, 100_000],
    [100_001, 1],
    [0, 1],
    [-1, 1],
    [1.5, 1],
    [Number.NaN, 1],
  ])("asked as %s is page %d, of 25 rows", (asked, page) => {
    expect(sliceOf(asked)).toEqual({ skip: (page - 1) * 25, take: 25 });
    const odd = new UnreadableRow("orders", "O-7", "price", "is not one");
    expect(pageOf({ rows: ["a"], total: 60, unreadable: [odd] }, (row) => row.toUpperCase(), asked)).toEqual({
      rows: ["A"],
      total: 60,
      page,
      pageSize: 25,
      unreadable: [{ table: "orders", row: "O-7", column: "price", why: "is not one" }],
    });
  });
});

describe("merging what two desks typed", () => {
  const stamp = { version: 4, by: "me", at: "now" };
  const stored = (version: number, value: unknown) => ({ value, version, by: "them", at: "then" });

  it.each([
    ["older than what I began with", 2, "x", "y", "mine"],
    ["as old as what I began with", 3, "x", "y", "mine"],
    ["newer, another value", 4, "x", "y", "conflict"],
    ["newer, the same value", 4, "y", "y", "mine"],
  ])("a field that is %s", (_, version, theirs, yours, outcome) => {
    const { fields, savedPaths, conflicts } = mergeFields(
      { "answers.ability": stored(version, theirs) },
      { "answers.ability": yours },
      3,
      stamp,
    );
    if (outcome === "mine") {
      expect(fields["answers.ability"]).toEqual({ value: yours, ...stamp });
      expect([savedPaths, conflicts]).toEqual([["answers.ability"], []]);
    } else {
      expect(fields["answers.ability"]).toEqual(stored(version, theirs));
      expect(savedPaths).toEqual([]);
      expect(conflicts).toEqual([{ path: "answers.ability", yours, theirs, by: "them" }]);
    }
  });

  it("takes values alike whatever the order of their members", () => {
    const before = { "typed.height": stored(9, { unit: "cm", cm: 180 }), "answers.heightCm": stored(9, 180) };
    expect(mergeFields(before, { "typed.height": { cm: 180, unit: "cm" } }, 3, stamp).conflicts).toEqual([]);
  });

  it.each([
    // 6 ft are 72 in of 2.54 cm; 100 lb of 0.45359237 kg.
    [{ "typed.height": { unit: "ft-in", feet: 6, inches: 0 } }, "answers.heightCm", 182.88],
    [{ "typed.mass": { unit: "lb", lb: 100 } }, "answers.massKg", 45.359_237],
    [{ "typed.height": null }, "answers.heightCm", null],
    [{ "typed.mass": null }, "answers.massKg", null],
    [{ "answers.heightCm": 181 }, "typed.height", { unit: "cm", cm: 181 }],
    [{ "answers.massKg": 80 }, "typed.mass", { unit: "kg", kg: 80 }],
    [{ "answers.heightCm": null }, "typed.height", null],
    [{ "answers.massKg": null }, "typed.mass", null],
  ])("keeps a measure in both its forms: %j", (patch, path, value) => {
    const got = mergeFields({}, patch, 0, stamp).fields;
    if (typeof value === "number") expect(got[path]?.value).toBeCloseTo(value, 1);
    else expect(got[path]?.value).toEqual(value);
    expect(Object.keys(got)).toHaveLength(2);
  });

  it("adds no measure to a patch that has none", () => {
    expect(mergeFields({}, { "answers.ability": "x" }, 0, stamp).savedPaths).toEqual(["answers.ability"]);
  });
});

describe("the lease of a draft", () => {
  const guest = { now, actor: { kind: "guest" } } as unknown as Context;
  const held = (leaseUntil: Date | null, leaseHolderId: string | null = "s-2") =>
    ({ leaseHolderId, leaseHolderName: "Desk 2", leaseUntil }) as never;

  it("is a desk's for a quarter of an hour, and nobody else's", () => {
    expect(leaseMinutes).toBe(15);
    expect(leaseFor(desk)).toEqual({ leaseHolderId: "s-1", leaseHolderName: "Desk 1", leaseUntil: minutesLater(15) });
    expect(leaseFor(guest)).toEqual(noLease);
    expect(noLease).toEqual({ leaseHolderId: null, leaseHolderName: null, leaseUntil: null });
  });

  it.each([
    ["free", held(null, null), true],
    ["over this very instant", held(now), true],
    ["another's for a minute more", held(minutesLater(1)), false],
    ["one's own", held(minutesLater(1), "s-1"), true],
  ])("that is %s", (_, record, may) => {
    expect(mayHold(desk, record)).toBe(may);
    expect(mayHold(guest, record)).toBe(false);
  });
});

describe("what keeps its place in the queue", () => {
  const layUp = stationIdFor("lay-up");
  const pair = (state: string | null, pressSlotAt: Date | null = null) =>
    ({
      operations: state === null ? [] : [{ station: layUp, visit: 1, state, side: null }],
      pressSlotAt,
    }) as unknown as PairInQueue;

  it.each([
    ["blocked", null, false],
    ["ready", null, false],
    ["running", "in-lay-up", true],
    ["done", "in-lay-up", true],
    ["redo", null, false],
  ])("laid up %s", (state, because, begun) => {
    expect(fixedBecause(pair(state), now)).toBe(because);
    expect(hasBegun(pair(state), layUp)).toBe(begun);
    expect(hasBegun(pair(state), stationIdFor("press"))).toBe(false);
  });

  it("a press slot to come, and none that is past", () => {
    expect(fixedBecause(pair("ready", minutesLater(1)), now)).toBe("frozen");
    expect(fixedBecause(pair("ready", now), now)).toBeNull();
    expect(fixedBecause(pair("running", minutesLater(1)), now)).toBe("in-lay-up");
    expect(fixedBecause(pair(null), now)).toBeNull();
  });
});

describe("the parts that differ between two specs", () => {
  const spec = {
    model: "a",
    lengthCm: 178,
    core: "c",
    reinforcements: [],
    flexRatio: 1,
    graphic: { kind: "house", house: "h", layout: "same", windows: [] },
    base: { left: "x", right: "x", inlay: "none" },
    mount: { offsetMm: 0 },
    finish: { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 0, detuneTailMm: 0, structure: "M" },
    tipTailProtectors: false,
  } as unknown as PairSpec;

  it.each<[string, Partial<PairSpec>]>([
    ["shape", { model: "b" as never }],
    ["shape", { lengthCm: 180 }],
    ["core", { core: "d" as never }],
    ["reinforcements", { reinforcements: ["r" as never] }],
    ["flex", { flexRatio: 1.01 }],
    ["mount", { mount: { offsetMm: 1 } }],
    ["base", { base: { ...spec.base, left: "y" as never } }],
    ["graphic", { graphic: { ...spec.graphic, layout: "mirrored" } }],
    ["protectors", { tipTailProtectors: true }],
    ["finish", { finish: { ...spec.finish, baseBevelDeg: 0.5 } }],
  ])("%s alone", (part, change) => {
    expect(changedParts(spec, { ...spec, ...change })).toEqual([part]);
  });

  it("none where all is alike", () => {
    expect(changedParts(spec, structuredClone(spec))).toEqual([]);
  });
});

describe("a club's palette", () => {
  const palette = { house: "h", isNamed: true, base: { left: "x", right: "y" } } as never;
  const spec = { base: { left: "x", right: "y" }, graphic: { kind: "house", house: "h" } };

  it("names the skier in capitals where the club wants names and there is one", () => {
    expect(paletteGraphic(palette, " Ada ").text?.text).toBe("ADA");
    expect(paletteGraphic(palette, "  ").text).toBeUndefined();
    expect(paletteGraphic({ ...(palette as object), isNamed: false } as never, "Ada").text).toBeUndefined();
    expect(paletteGraphic(palette, "")).toEqual({ kind: "house", house: "h", layout: "same", windows: [] });
  });

  it.each([
    [{}, false],
    [{ base: { left: "z", right: "y" } }, true],
    [{ base: { left: "x", right: "z" } }, true],
    [{ graphic: { kind: "own", house: "h" } }, true],
    [{ graphic: { kind: "house", house: "i" } }, true],
  ])("is left by %j: %s", (change, leaves) => {
    expect(leavesPalette({ ...spec, ...change } as unknown as PairSpec, palette)).toBe(leaves);
  });
});

describe("the decisions about readings that are in force", () => {
  const decision = (serial: string, measure: string, value: number, choice: string) => ({
    serial,
    measure,
    value,
    choice,
  });
  const data = (decisions: readonly object[], measured: object) =>
    ({ decisions, records: [{ serial: "A", measured }] }) as never;

  it("are the last of each reading, while the reading is still that one", () => {
    const first = decision("A", "massKg", 1.8, "leave-out");
    const second = decision("A", "massKg", 1.8, "keep");
    const other = decision("A", "camberMm", 4, "leave-out");
    expect(decisionsInForce(data([first, second, other], { massKg: 1.8, camberMm: 4 }))).toEqual([second, other]);
    expect(decisionsInForce(data([first], { massKg: 1.9 }))).toEqual([]);
    expect(decisionsInForce(data([decision("B", "massKg", 1.8, "keep")], { massKg: 1.8 }))).toEqual([]);
    expect(readingKey("A", "massKg")).not.toBe(readingKey("massKg", "A"));
    expect(versionOf(3)).toBe("CB-3");
  });
});

const effect = {
  pairId: "p-1",
  skierFirstName: "Ada",
  ski: "Midlow 95",
  promisedOn: isoDate("2026-12-10"),
  after: { p50: isoDate("2026-12-14"), p90: isoDate("2026-12-21") },
} as unknown as PromiseEffect;

describe("letters about a delay", () => {
  it("ask for an answer within a week of the shop's day", () => {
    expect(replyBy(now)).toBe("2026-12-07");
    // One in the morning of the next day in Greenwich is still the evening before in the shop.
    expect(replyBy(new Date("2026-12-01T01:00:00Z"))).toBe("2026-12-07");
    expect(longDay("2026-12-07")).toBe("7 December 2026");
  });

  it("tell old day, new range, reason and what can be answered", () => {
    const { body, data } = delayLetter(now, "press", effect);
    expect(data).toEqual({
      oldDate: "2026-12-10",
      newDates: effect.after,
      reason: "press",
      options: ["accept", "cancel-and-refund"],
      replyBy: "2026-12-07",
    });
    for (const words of [
      "Ada",
      "Midlow 95",
      "10 December 2026",
      "14 December 2026",
      "21 December 2026",
      "7 December 2026",
    ])
      expect(body).toContain(words);
    expect(body.indexOf("14 December")).toBeLessThan(body.indexOf("21 December"));
    expect(delayLetter(now, "nothing we know", effect).body).toContain("Ada");
  });

  const base = { colour: "red", label: "signal red", expectedOn: isoDate("2026-12-20") } as never;
  const need = (labels: readonly string[], counterchangedWith: string | null = null) =>
    ({ skierFirstName: "Ada", counterchangedWith, alternatives: labels.map((label) => ({ label })) }) as never;

  it.each([
    [["black"], "black"],
    [["black", "white"], "black or white"],
    [["black", "white", "blue"], "black, white or blue"],
  ])("offer the colours that fit: %j", (labels, words) => {
    const { body, data } = colourOffer(now, base, need(labels), "Midlow 95", null);
    expect(body).toContain(words);
    expect(body).toContain("20 December 2026");
    expect(body).not.toContain("14 December");
    expect(data).toMatchObject({ colour: "red", expectedOn: "2026-12-20", replyBy: "2026-12-07" });
  });

  it("tell what waiting means, and of the other base, where they must", () => {
    const plain = colourOffer(now, base, need(["black"]), "Midlow 95", null).body;
    const told = colourOffer(now, base, need(["black"], "blue"), "Midlow 95", effect).body;
    expect(told).toContain("14 December 2026");
    expect(told).toContain("21 December 2026");
    expect(told.split("\n\n")).toHaveLength(plain.split("\n\n").length + 2);
  });
});

describe("what if", () => {
  // Shop minutes count from 1970-01-01: 2026-12-01 is day 20,788.
  const day = 20_788 * 1440;
  const span = { from: "2026-12-01", until: "2026-12-02" };

  it.each([
    [
      { kind: "closure", ...span },
      { kind: "shop-closed", fromMinute: day, toMinute: day + 2880 },
    ],
    [
      { kind: "drop-mould", mould: "M", ...span },
      { kind: "mould-out", mould: "M", fromMinute: day, toMinute: day + 2880 },
    ],
    [
      { kind: "rework", factor: 2 },
      { kind: "rework-factor", factor: 2 },
    ],
  ])("%j", (input, change) => {
    expect(floorChangesOf(input as never, "x")).toEqual([change]);
    expect(costCentsPerWeek(input as never)).toBeNull();
  });

  it("a hand or a press more is there from its day on, and costs by the week", () => {
    const { remedies: settings } = currentCatalog();
    const hire = { kind: "hire", from: "2026-12-01", stations: [stationIdFor("trim")] } as never;
    expect(floorChangesOf(hire, "x")).toMatchObject([
      {
        kind: "extra-person",
        person: { id: "hire-x", stations: [stationIdFor("trim")], isReserve: false },
        fromMinute: day,
        toMinute: null,
      },
    ]);
    expect(costCentsPerWeek(hire)).toBe(settings.hire.centsPerWeek);
    const press = { kind: "second-press", from: "2026-12-01" } as never;
    expect(floorChangesOf(press, "x")).toMatchObject([
      {
        kind: "extra-press",
        press: { id: "press-x", kind: settings.secondPress.kind },
        fromMinute: day,
        toMinute: null,
      },
    ]);
    expect(costCentsPerWeek(press)).toBe(settings.secondPress.centsPerWeek);
    expect(floorChangesOf({ kind: "club-order", pairs: 3 } as never, "x")).toEqual([]);
  });

  const situation = {
    now: day + 600,
    pairs: [
      { pairId: "a", waitingOn: [] },
      { pairId: "b", waitingOn: [{ reason: "deposit", holdsUpStation: "release" }] },
    ],
    changes: [{ kind: "rework-factor", factor: 1.5 }],
  } as never;
  const asked = (input: object, begun: readonly string[] = []) =>
    situationIf(desk, situation, input as never, new Set(begun));

  it("a supplier is late for the pairs that have not begun", () => {
    const { pairs, changes } = asked({ kind: "supplier-lead", station: "base-cut", weeks: 2 }, ["a"]);
    const wait = { reason: "material", holdsUpStation: "base-cut", expectedDate: "2026-12-15" };
    expect(pairs.map(({ waitingOn }) => waitingOn)).toEqual([
      [],
      [{ reason: "deposit", holdsUpStation: "release" }, wait],
    ]);
    expect(changes).toHaveLength(1);
  });

  it("a club comes behind the queue, ready to begin now", () => {
    const { pairs } = asked({ kind: "club-order", pairs: 2 });
    expect(pairs.map(({ pairId }) => pairId)).toEqual(["a", "b", "club-1", "club-2"]);
    expect(pairs.slice(2)).toMatchObject(
      Array(2).fill({ queuedAtMinute: day + 600, operations: [], waitingOn: [], promise: null }),
    );
  });

  it("a change of the floor comes beside those that are there", () => {
    const { changes, pairs } = asked({ kind: "rework", factor: 2 });
    expect(changes).toEqual([
      { kind: "rework-factor", factor: 1.5 },
      { kind: "rework-factor", factor: 2 },
    ]);
    expect(pairs).toHaveLength(2);
  });
});

describe("ways on from a breakdown", () => {
  // 2026-12-01 is a Tuesday; open 8 to 12 and 13 to 17 on weekdays, Thursday the 3rd is a holiday.
  const day = (index: number) => (20_788 + index) * 1440;
  const pair = (pairId: string, queuedAtMinute: number, date: string | null = null) => ({
    pairId,
    queuedAtMinute,
    promise: date === null ? null : { class: "promise", date: isoDate(date) },
  });
  const situationOf = (pairs: readonly object[] = []) =>
    ({
      now: day(0) + 600,
      pairs,
      floor: {
        crew: [{ isReserve: false }, { isReserve: false }, { isReserve: true }],
        hours: {
          windows: [
            { fromMinute: 480, toMinute: 720 },
            { fromMinute: 780, toMinute: 1020 },
          ],
          workingWeekdays: [1, 2, 3, 4, 5],
          closedDays: [{ date: isoDate("2026-12-03") }],
        },
      },
    }) as never;
  const settings = {
    overtime: { evenings: 4, minutesAnEvening: 90, centsPerPersonHour: 4_000 },
    overnightCure: { procedure: "sheet 7", stations: ["press"], people: 1 },
    secondPress: { kind: "heated", weeks: 2, centsPerWeek: 90_000 },
    swap: { slackToLendWorkingDays: 5 },
  } as never;
  const none = { slack: [], crossing: [] } as unknown as QueueEffect;

  it("cost hours, weeks and people as the settings say", () => {
    const ways = remedies(situationOf(), none, day(0) + 900, settings);
    // Four evenings of 1.5 h are 6 h: two people at $40 an hour are $480, one is $240.
    expect(ways.map(({ way, costCents, places, figures }) => [way, costCents, places, figures])).toEqual([
      ["wait", 0, [], undefined],
      ["overtime", 48_000, [], { hours: 1.5, days: 4 }],
      ["overnight-cure", 24_000, [], { hours: 1.5, days: 4 }],
      ["second-press", 180_000, [], { weeks: 2 }],
    ]);
    expect(ways[0]?.changes).toEqual([]);
  });

  it("cure nothing overnight with nobody there unless the shop names its written procedure", () => {
    const cure = (procedure: string | null) =>
      remedies(situationOf(), none, day(0) + 900, {
        ...(settings as RemedySettings),
        overnightCure: { procedure, stations: ["press"], people: 1 },
      });
    expect(cure("sheet 7").find(({ way }) => way === "overnight-cure")).toMatchObject({ procedure: "sheet 7" });
    expect(cure(null).map(({ way }) => way)).toEqual(["wait", "overtime", "second-press"]);
  });

  it("begin with the first evening after closing, leave out holidays and weekends, and end with the last", () => {
    const [, overtime, cure] = remedies(situationOf(), none, day(0) + 900, settings);
    // Tuesday, Wednesday, Friday, Monday: the 1st to the 7th, from 17:00 to 18:30.
    const evenings = {
      kind: "overtime",
      fromMinute: day(0) + 1020,
      toMinute: day(6) + 1110,
      daily: { fromMinute: 1020, toMinute: 1110 },
    };
    expect(overtime?.changes).toEqual([evenings]);
    expect(cure?.changes).toEqual([{ ...evenings, stations: ["press"] }]);
  });

  it("hire a press from the next working day on for whole weeks", () => {
    const changes = remedies(situationOf(), none, day(0) + 900, settings)[3]?.changes;
    expect(changes).toMatchObject([
      { kind: "extra-press", press: { kind: "heated" }, fromMinute: day(1), toMinute: day(15) },
    ]);
  });

  it("let a late pair go before one that has days to lend and ranks before it", () => {
    const pairs = [pair("lender", day(-9)), pair("poor", day(-8)), pair("late", day(-3)), pair("later", day(-2))];
    const effectOf = (slack: number) =>
      ({
        slack: [
          { pairId: "lender", after: slack },
          { pairId: "poor", after: 4.9 },
          { pairId: "late", after: 9 },
        ],
        crossing: [{ pairId: "late" }, { pairId: "later" }],
      }) as unknown as QueueEffect;
    const swap = (slack: number) => remedies(situationOf(pairs), effectOf(slack), day(0), settings)[4];
    const place = swap(5)?.places ?? [];
    expect(place.map(({ pairId }) => pairId)).toEqual(["late", "later"]);
    // An hour before the lender, the second a minute behind the first.
    expect((place[1]?.placeMinute ?? 0) - (place[0]?.placeMinute ?? 0)).toBe(1);
    expect(swap(5)).toMatchObject({ way: "swap-with-slack", changes: [], costCents: 0 });
    expect(swap(4.9)).toBeUndefined();
    const behind = [pair("late", day(-9)), pair("lender", day(-3))];
    expect(remedies(situationOf(behind), effectOf(9), day(0), settings)[4]).toBeUndefined();
  });
});

describe("what the bench read beside target and limits", () => {
  // Absolute limits are written in the bench's units: grams, millimetres, newtons per centimetre.
  const limit = (measure: string, band: object | undefined, twinBands?: readonly object[]) =>
    ({ measure, band, twinBands }) as never;
  const absolute = (amount: number) => ({ kind: "absolute", amount });
  const percent = (amount: number) => ({ kind: "percent", amount });

  it.each([
    ["massKg", "mass", 1.8, percent(5), 0.09],
    ["massKg", "mass", 1.8, absolute(25), 0.025],
    ["camberMm", "camber", 4, absolute(1.5), 1.5],
    ["camberMm", "camber", -4, percent(50), 2],
    ["springCentreNPerMm", "springCentre", 3.8, percent(7), 0.266],
    ["springCentreNPerMm", "springCentre", 3.8, absolute(2), 0.2],
    ["springForebodyNPerMm", "springEnds", 0.8, absolute(2), 0.2],
    ["springAfterbodyNPerMm", "springEnds", 1.3, absolute(2), 0.2],
  ] as const)("%s by the limit of %s at %d", (measure, of, target, band, most) => {
    const limits = [limit("other", absolute(99)), limit(of, band)];
    const row = (off: number) => benchRow(measure, target, limits, target + off, target - off);
    expect(row(0).limit).toBeCloseTo(most, 9);
    expect(row(most).states).toMatchObject({ L: "in", R: "in" });
    expect(row(most * 1.01).states).toMatchObject({ L: "out", R: "out" });
    expect(benchRow(measure, target, limits, target, target + 2 * most).states).toMatchObject({ L: "in", R: "out" });
  });

  it("lets twins be apart by the widest of their limits", () => {
    // 25 g or 1.5 % of 1.8 kg, 27 g: 27 g.
    const limits = [limit("mass", undefined, [absolute(25), percent(1.5)])];
    const row = (left: number, right: number) => benchRow("massKg", 1.8, limits, left, right);
    expect(row(1.8, 1.827)).toMatchObject({ limit: null, states: { L: null, R: null, twins: "in" } });
    expect(row(1.827, 1.8).twinLimit).toBeCloseTo(0.027, 9);
    expect(row(1.83, 1.8).states.twins).toBe("out");
    expect(row(1.83, 1.8).twinDifference).toBeCloseTo(0.03, 9);
  });

  it("says nothing of a ski that was not read, nor without a limit", () => {
    const limits = [limit("mass", percent(5), [percent(1)])];
    expect(benchRow("massKg", 1.8, limits, undefined, 1.8)).toMatchObject({
      left: null,
      right: 1.8,
      twinDifference: null,
      states: { L: null, R: "in", twins: null },
    });
    expect(benchRow("massKg", 1.8, limits, 1.8, undefined)).toMatchObject({
      left: 1.8,
      right: null,
      twinDifference: null,
      states: { L: "in", R: null, twins: null },
    });
    expect(benchRow("massKg", 1.8, [], 1.8, 9)).toMatchObject({
      limit: null,
      twinLimit: null,
      states: { L: null, R: null, twins: null },
    });
  });
});

describe("how promises were kept", () => {
  const hours = { workingWeekdays: [1, 2, 3, 4, 5], closedDays: [], windows: [] } as never;
  const order = (p50: string | null, p80: string | null, p90: string, promisedOn: string, readyOn: string | null) =>
    ({
      p50: p50 && isoDate(p50),
      p80: p80 && isoDate(p80),
      p90: isoDate(p90),
      promisedOn: isoDate(promisedOn),
      readyOn: readyOn && isoDate(readyOn),
    }) as unknown as KeptOrder;
  // Wednesday 2 December 2026.
  const today = isoDate("2026-12-02");
  const period = (...orders: readonly KeptOrder[]) => keptPeriod("2026-11", orders, today, hours);
  const counts = ({ shares, onTime }: ReturnType<typeof period>) => [
    ...shares.map(({ level, expected, orders, kept }) => [level, expected, orders, kept]),
    [onTime.orders, onTime.kept],
  ];

  it("counts an order at a level once its day has passed, ready or not", () => {
    const early = order("2026-11-20", "2026-11-25", "2026-11-27", "2026-11-30", "2026-11-20");
    const between = order("2026-11-20", "2026-11-25", "2026-11-27", "2026-11-30", "2026-11-26");
    const late = order("2026-11-20", "2026-11-25", "2026-11-27", "2026-12-02", null);
    const young = order("2026-12-02", "2026-12-04", "2026-12-07", "2026-12-07", "2026-11-30");
    expect(counts(period(early, between, late, young))).toEqual([
      ["p50", 0.5, 3, 1],
      ["p80", 0.8, 3, 1],
      ["p90", 0.9, 3, 2],
      [2, 2],
    ]);
    // What should be kept is the mean of what was told; who was told no share counts by the level.
    const told = { ...early, shares: { p50: 0.75, p80: 0.875, p90: 0.9375 } };
    expect(period(told, between).shares.map(({ expected }) => expected)).toEqual([
      0.625,
      expect.closeTo(0.8375, 10),
      expect.closeTo(0.91875, 10),
    ]);
    expect(counts(period(order(null, null, "2026-11-27", "2026-11-27", "2026-12-01")))).toEqual([
      ["p50", 0.5, 0, 0],
      ["p80", 0.8, 0, 0],
      ["p90", 0.9, 1, 0],
      [1, 0],
    ]);
  });

  it("has the band that chance alone would give at its own share, nineteen times of twenty", () => {
    const ten = Array.from({ length: 10 }, () =>
      order("2026-11-20", "2026-11-25", "2026-11-27", "2026-11-27", "2026-11-20"),
    );
    // Binomial, n = 10: 2 to 8 at one half, 5 to 10 at 0.8, 7 to 10 at 0.9.
    expect(period(...ten).shares.map(({ band }) => [band.low, band.high])).toEqual([
      [2, 8],
      [5, 10],
      [7, 10],
    ]);
  });

  it("is late by working days from the P90 day to the day it was ready, or to today", () => {
    // From Friday 27 November: ready on Monday 30, one day; not ready by Wednesday, three; ready on Thursday 26, one early.
    const lateness = (...readyOn: readonly (string | null)[]) =>
      period(...readyOn.map((day) => order(null, null, "2026-11-27", "2026-11-27", day))).meanLateness;
    expect(lateness("2026-11-30")).toBe(1);
    expect(lateness(null)).toBe(3);
    expect(lateness("2026-11-26")).toBe(-1);
    expect(lateness("2026-11-30", null)).toBe(2);
    expect(period(order(null, null, "2026-12-02", "2026-12-02", null)).meanLateness).toBeNull();
    expect(period().month).toBe("2026-11");
  });
});

describe("what papers quote of the floor", () => {
  const catalog = currentCatalog();
  const facts = floorFacts(catalog, catalog.safety);

  it("is each station with its own number, minutes, cautions, wait and second signature", () => {
    expect(facts.stations.map(({ number }) => number)).toEqual(catalog.floor.stations.map(({ number }) => number));
    for (const [index, { id, role, label, minutes }] of catalog.floor.stations.entries()) {
      const station = facts.stations[index];
      expect(station).toMatchObject({ role, name: label, typicalMinutes: minutes.typ });
      const cautions = catalog.safety.hazards.filter(({ stations }) => stations.includes(role));
      expect(cautions.length).toBeGreaterThan(0);
      expect(station?.safety).toEqual(cautions);
      const own = catalog.recipe.stations.find(({ station: of }) => of === id);
      expect([station?.wait, station?.needsSecondSignOff]).toEqual([own?.wait, own?.needsSecondSignOff ?? false]);
    }
    expect(facts.stations.some(({ needsSecondSignOff }) => needsSecondSignOff)).toBe(true);
    expect(facts.stations.some(({ needsSecondSignOff }) => !needsSecondSignOff)).toBe(true);
  });

  it("is the press's programme, the resin's ratio and the limits of the check, lots to be written in", () => {
    const { heatUpMinutes, dwellMinutes, coolMinutes } = catalog.floor.pressProgramme;
    expect(facts.press).toMatchObject({ ...catalog.recipe.press, heatUpMinutes, dwellMinutes, coolMinutes });
    const { system, hardenerPer100 } = catalog.parts.resin;
    expect(facts.resin).toMatchObject({
      ...catalog.recipe.resin,
      system,
      hardenerPer100,
      resinLot: null,
      hardenerLot: null,
    });
    for (const { measure, toTarget, twins, band } of catalog.finish.qcLimits)
      expect(facts.qcLimits[measure]).toEqual(band === undefined ? { toTarget, twins } : { toTarget, twins, band });
    expect(facts).toMatchObject({
      surfacePreparation: catalog.recipe.surfacePreparation,
      wax: catalog.finish.wax,
      printScaleFactor: null,
      printFace: catalog.recipe.printFace,
    });
  });
});
