/** What the shop reads off its records, as tables: presses, gates, money, wood, steps, what holds a pair up. No database. */
import { describe, expect, it } from "vitest";
import type { FloorChangeRecord } from "#data/floor-changes";
import type { PairSpec } from "#engine/configuration";
import { cents, isoDate } from "#engine/units";
import { type AwayNow, blockedPairs } from "#shop/board/blocked";
import { changesOf, isInForce } from "#shop/board/changes";
import { pressDays } from "#shop/board/press-plan";
import { isFree, isOn, longestAway, pressChoices, pressNames } from "#shop/floor/presses";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import {
  isLastStation,
  pairWay,
  positionOf,
  stationIdFor,
  stationIdTaking,
  stationNumber,
  stationTitle,
} from "#shop/floor/stations";
import { orderMoney, paidCents } from "#shop/money/money";
import { clubNumber, numberIn, orderNumber, quoteNumber } from "#shop/names/numbers";
import { customerSpecified } from "#shop/order/customer-specified";
import { gateFacts, gatesView, orderClock, type PairGates } from "#shop/order/gate-facts";
import { progressSteps } from "#shop/order/progress-steps";
import { acceptableUntil, quoteStateOf } from "#shop/order/quote-state";
import { artworkIdOf, paymentView, proofView, rightsView, slotLostView, startedStations } from "#shop/order/view";
import { standingSki } from "#shop/pair/standing-ski";
import { openConditions, openForPrint, orderedOn } from "#shop/queue/on-floor";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import { isCoreUncut, isStripsShort, lackingSide } from "#shop/stock/is-short";
import { addDays, isTooFar } from "#shop/time/shop-time";

const at = (iso: string) => new Date(`2026-12-${iso}Z`);
const now = at("01T17:00:00");
const before = at("01T16:59:59");
const after = at("01T17:00:01");
const press = stationIdFor("press");
const layUp = stationIdFor("lay-up");
const print = stationIdFor("print");
const gluing = stationIdTaking("strips");

const record = (data: object, fromAt: Date | null = null, toAt: Date | null = null, reason = "so") =>
  ({ data, fromAt, toAt, reason }) as unknown as FloorChangeRecord;

describe("a change of the floor", () => {
  it.each([
    [null, null, true],
    [now, null, true],
    [after, null, false],
    [null, now, false],
    [null, after, true],
    [before, after, true],
    [before, before, false],
  ])("from %s to %s is in force: %s", (from, to, on) => {
    expect(isOn(record({}, from, to), now)).toBe(on);
    const shown = { from: from?.toISOString() ?? null, to: to?.toISOString() ?? null };
    expect(isInForce(shown as never, now)).toBe(on);
  });

  it("that lasts longest is told; one without an end lasts longest of all", () => {
    const short = record({}, null, after);
    const long = record({}, null, at("09T00:00:00"));
    const open = record({}, null, null);
    expect(longestAway([short, long])).toBe(long);
    expect(longestAway([long, open, short])).toBe(open);
    expect(longestAway([])).toBeNull();
  });

  const floor = floorCatalog();
  const shownAs = (data: object) => changesOf([record(data, before, after, "why")], floor.hours.timeZone)[0]?.shown;
  const trim = stationIdFor("trim");

  it.each([
    [{ kind: "press-down", press: floor.presses[0]?.id }, floor.presses[0]?.label],
    [{ kind: "press-down", press: "gone" }, "gone"],
    [{ kind: "person-away", person: floor.crew[0]?.id }, floor.crew[0]?.label],
    [{ kind: "person-away", person: "gone" }, "gone"],
    [{ kind: "station-down", station: trim }, stationTitle(trim)],
    [{ kind: "mould-out", mould: "M1" }, "M1"],
    [{ kind: "extra-press", press: { id: "x", label: "Hired", kind: "heated" } }, "Hired"],
    [{ kind: "extra-person", person: { id: "x", label: "Guest", stations: [], isReserve: false } }, "Guest"],
    [{ kind: "shop-closed" }, null],
    [{ kind: "overtime" }, null],
    [{ kind: "overtime", stations: [trim] }, `${stationNumber(trim)}`],
    [{ kind: "overtime", daily: { fromMinute: 545, toMinute: 1110 } }, "09:05–18:30"],
    [
      { kind: "overtime", stations: [trim], daily: { fromMinute: 990, toMinute: 1110 } },
      `${stationNumber(trim)}, 16:30–18:30`,
    ],
  ])("%j is called %s", (data, name) => {
    expect(shownAs(data)).toEqual({
      kind: (data as { kind: string }).kind,
      what: name,
      from: before.toISOString(),
      to: after.toISOString(),
      reason: "why",
    });
  });
});

describe("the presses", () => {
  const floor = {
    presses: [
      { id: "p1", label: "One", kind: "heated" },
      { id: "p2", label: "Two", kind: "heated" },
    ],
  } as never;
  const visit = (station: string, own: string | null, serial: string, by: string | null = "Ida") =>
    ({ station, press: own, pair: { serial }, startedByName: by }) as never;
  const extra = record({ kind: "extra-press", press: { id: "p3", label: "Three", kind: "heated" } }, before, after);

  it("are those of the floor, then those that were added and are there", () => {
    const names = (changes: readonly FloorChangeRecord[], when = now) =>
      pressChoices(floor, changes, [], when).map(({ name }) => name);
    expect(names([])).toEqual(["One", "Two"]);
    expect(names([extra])).toEqual(["One", "Two", "Three"]);
    expect(names([extra], after)).toEqual(["One", "Two"]);
    expect([...pressNames(floor, [extra, record({ kind: "shop-closed" })])]).toEqual([
      ["p1", "One"],
      ["p2", "Two"],
      ["p3", "Three"],
    ]);
  });

  it("are taken by what runs in them; what has no press recorded is in the first", () => {
    const takenBy = (...running: readonly never[]) =>
      pressChoices(floor, [], running, now).map((choice) => choice.takenBy);
    expect(takenBy(visit(press, "p2", "TY-2"))).toEqual([null, { serial: "TY-2", by: "Ida" }]);
    expect(takenBy(visit(press, null, "TY-1", null))).toEqual([{ serial: "TY-1", by: "" }, null]);
    expect(takenBy(visit(layUp, "p2", "TY-2"))).toEqual([null, null]);
  });

  it("are down while a change says so, until the last of them ends", () => {
    const down = (own: string, to: Date | null, from: Date | null = before) =>
      record({ kind: "press-down", press: own }, from, to, `until ${to?.toISOString()}`);
    const choices = pressChoices(
      floor,
      [down("p2", after), down("p2", at("05T00:00:00")), down("p1", null, after)],
      [],
      now,
    );
    expect(choices.map((choice) => choice.down?.until ?? null)).toEqual([null, "2026-12-05T00:00:00.000Z"]);
    expect(choices[1]?.down?.reason).toBe("until 2026-12-05T00:00:00.000Z");
    expect(choices.map(isFree)).toEqual([true, false]);
    expect(isFree({ takenBy: { serial: "TY-1", by: "" }, down: null } as never)).toBe(false);
  });
});

describe("the days of the press", () => {
  // Open to 16:30 in a zone 7 h behind Greenwich; the 1st is a Tuesday, the 5th a Saturday.
  const floor = {
    presses: [{ id: "p1", label: "One", kind: "heated" }],
    moulds: [
      { id: "A1", family: "A" },
      { id: "A2", family: "A" },
      { id: "B1", family: "B" },
    ],
    changeoverMinutes: { sameMould: 5, sameFamily: 20, otherFamily: 45, hotExtra: 30 },
    hours: {
      timeZone: "America/Denver",
      workingWeekdays: [1, 2, 3, 4, 5],
      windows: [
        { fromMinute: 450, toMinute: 720 },
        { fromMinute: 750, toMinute: 990 },
      ],
    },
  };
  const slot = (pairId: string, mould: string, startsAt: Date, endsAt: Date, own = "p1") => ({
    press: own,
    pairId,
    mould,
    startsAt,
    endsAt,
    changeoverMinutes: 99,
    isFixed: false,
  });
  const pair = (id: string, state = "released") =>
    ({
      id,
      serial: `TY-${id}`,
      state,
      order: { depositPaidAt: null },
      specLockedAt: null,
      proofNeeded: false,
      rightsNeeded: false,
    }) as unknown as PairInQueue;
  const days = (slots: readonly object[], pairs: readonly PairInQueue[], own: object = floor) =>
    pressDays({ pressPlan: slots } as never, pairs, own as never);

  it("have each slot on its day in the shop, by the press's own name", () => {
    const slots = [
      slot("a", "A1", at("01T20:00:00"), at("01T21:00:00")),
      slot("b", "A1", at("02T06:00:00"), at("02T06:30:00"), "gone"),
      slot("c", "A1", at("02T16:00:00"), at("02T17:00:00")),
    ];
    const got = days(
      slots,
      ["a", "b", "c"].map((id) => pair(id)),
    );
    expect(got.map(({ date, slots: own }) => [date, own.map(({ pairId, press: name }) => [pairId, name])])).toEqual([
      [
        "2026-12-01",
        [
          ["a", "One"],
          ["b", "gone"],
        ],
      ],
      ["2026-12-02", [["c", "One"]]],
    ]);
    expect(got[0]?.slots[0]).toMatchObject({
      serial: "TY-a",
      mould: "A1",
      changeoverMinutes: 99,
      startsAt: "2026-12-01T20:00:00.000Z",
      endsAt: "2026-12-01T21:00:00.000Z",
    });
  });

  it.each([
    ["A1", "heated", 5],
    ["A2", "heated", 50],
    ["B1", "heated", 75],
    ["A2", "cold", 20],
    ["B1", "cold", 45],
  ])("leave out who waits for a customer; %s in a %s press then follows A1 by %d min", (mould, kind, minutes) => {
    const own = { ...floor, presses: [{ ...floor.presses[0], kind }] };
    const slots = [
      slot("a", "A1", at("01T15:00:00"), at("01T16:00:00")),
      slot("b", "B1", at("01T17:00:00"), at("01T18:00:00")),
      slot("c", mould, at("01T19:00:00"), at("01T20:00:00")),
      slot("d", mould, at("01T21:00:00"), at("01T22:00:00")),
    ];
    const got = days(slots, [pair("a"), pair("b", "waiting"), pair("c"), pair("d")], own)[0]?.slots;
    expect(got?.map(({ pairId, changeoverMinutes }) => [pairId, changeoverMinutes])).toEqual([
      ["a", 99],
      ["c", minutes],
      ["d", 99],
    ]);
  });

  it.each([
    [at("01T23:30:00"), false],
    [at("01T23:31:00"), true],
    [at("02T08:00:00"), true],
  ])("say when a cure ends after closing: %s", (endsAt, past) => {
    expect(days([slot("a", "A1", at("01T20:00:00"), endsAt)], [pair("a")])[0]?.slots[0]?.curesPastClosing).toBe(past);
  });

  it("have no hours on a Saturday, and leave out who is not in the queue", () => {
    const saturday = [
      slot("a", "A1", at("05T15:00:00"), at("05T16:00:00")),
      slot("x", "A1", at("05T17:00:00"), at("05T18:00:00")),
    ];
    expect(days(saturday, [pair("a")])).toMatchObject([
      { date: "2026-12-05", slots: [{ pairId: "a", curesPastClosing: true }] },
    ]);
  });
});

const gates = (change: Partial<PairGates> = {}): PairGates => ({
  specLockedAt: now,
  proofNeeded: true,
  proofAt: now,
  rightsNeeded: true,
  rightsAt: now,
  ...change,
});

describe("the gates of a clock", () => {
  it.each([
    ["deposit", null, {}],
    ["specification-lock", now, { specLockedAt: null }],
    ["proof", now, { proofAt: null }],
    ["rights", now, { rightsAt: null }],
  ] as const)("%s alone holds it", (condition, deposit, change) => {
    expect(orderClock(deposit, [gates(), gates(change)])).toEqual({ started: false, waitingFor: [condition] });
    expect(gatesView(deposit, gates(change)).waitingFor).toEqual([condition]);
  });

  it("that are not needed hold nothing, and start with the last of the others, of the last pair", () => {
    const none = gates({ proofNeeded: false, proofAt: null, rightsNeeded: false, rightsAt: null });
    expect(gateFacts(now, none)).toMatchObject({ proofApprovedAtMs: "not-needed", rightsConfirmedAtMs: "not-needed" });
    expect(gatesView(now, none)).toEqual({
      deposit: now.toISOString(),
      specificationLock: now.toISOString(),
      proof: "not-needed",
      rights: "not-needed",
      waitingFor: [],
    });
    const started = (...pairs: readonly PairGates[]) => orderClock(before, pairs);
    const late = gates({ proofAt: after });
    expect(started(late, none)).toEqual({ started: true, startedAtMs: after.getTime(), last: "proof" });
    expect(started(none, late)).toEqual({ started: true, startedAtMs: after.getTime(), last: "proof" });
    expect(gatesView(null, gates({ proofAt: after, rightsAt: before, specLockedAt: null }))).toMatchObject({
      deposit: null,
      specificationLock: null,
      proof: after.toISOString(),
      rights: before.toISOString(),
    });
  });
});

describe("what a pair in the queue waits for", () => {
  const pair = (state: string, change: Partial<PairGates>, operations: readonly object[] = []) =>
    ({ state, operations, order: { depositPaidAt: null }, ...gates(change) }) as unknown as PairInQueue;

  it("is its gates while it waits, and what the print needs afterwards", () => {
    const open = { proofAt: null, rightsAt: null };
    expect(openConditions(pair("waiting", open))).toEqual(["deposit", "proof", "rights"]);
    expect(openForPrint(pair("waiting", open))).toEqual([]);
    expect(openConditions(pair("released", open))).toEqual([]);
    expect(openForPrint(pair("released", open))).toEqual(["proof", "rights"]);
    expect(openForPrint(pair("released", { proofAt: null }))).toEqual(["proof"]);
    expect(openForPrint(pair("released", { rightsAt: null }))).toEqual(["rights"]);
    expect(openForPrint(pair("released", { ...open, proofNeeded: false }))).toEqual(["rights"]);
  });

  it.each([
    ["ready", 2],
    ["running", 0],
    ["done", 0],
    ["redo", 0],
  ])("once the print is %s: %d things", (state, count) => {
    expect(openForPrint(pair("released", { proofAt: null, rightsAt: null }, [{ station: print, state }]))).toHaveLength(
      count,
    );
    expect(
      openForPrint(pair("released", { proofAt: null, rightsAt: null }, [{ station: press, state: "done" }])),
    ).toHaveLength(2);
  });

  const spec = (...reinforcements: readonly string[]) => ({ reinforcements }) as unknown as PairSpec;
  const bought = (clockStartedAt: Date | null, own: PairSpec, revisions: readonly (readonly [string, PairSpec])[]) =>
    orderedOn(
      {
        spec: own,
        order: { clockStartedAt },
        revisions: revisions.map(([day, each]) => ({ createdAt: at(`${day}T12:00:00`), spec: each })),
      } as never,
      isoDate("2026-12-20"),
      "America/Denver",
    )("metal");

  it("is bought when its clock starts, or by the change that brought it in, or today", () => {
    const started = at("05T12:00:00");
    expect(bought(null, spec("metal"), [["01", spec("metal")]])).toBe("2026-12-20");
    expect(bought(started, spec(), [["01", spec()]])).toBe("2026-12-20");
    expect(bought(started, spec("metal"), [["01", spec("metal")]])).toBe("2026-12-05");
    expect(
      bought(started, spec("metal"), [
        ["01", spec()],
        ["08", spec("metal")],
        ["09", spec("metal")],
      ]),
    ).toBe("2026-12-08");
    expect(
      bought(started, spec("metal"), [
        ["01", spec()],
        ["03", spec("metal")],
      ]),
    ).toBe("2026-12-05");
  });
});

describe("who is held up", () => {
  const floor = floorCatalog();
  const pair = (change: object) =>
    ({
      id: "p",
      serial: "TY-1",
      skierName: "Ada Byron",
      state: "released",
      mould: "M1",
      operations: [],
      holds: [],
      order: { slotLostAt: null, depositPaidAt: now },
      ...gates(),
      createdAt: before,
      revisions: [],
      proofs: [],
      proofState: "approved",
      ...change,
    }) as unknown as PairInQueue;
  const away = (change: object): AwayNow =>
    ({
      change,
      reason: "so",
      shown: { kind: "x", what: "It", from: "f", to: "t", reason: "so" },
    }) as unknown as AwayNow;
  const reasons = (change: object, ...gone: readonly AwayNow[]) =>
    blockedPairs([pair(change)], gone, floor, now)[0]?.reasons;
  const ready = (station: string) => ({
    operations: [{ id: "o", station, visit: 1, state: "ready", side: null, startedAt: null, finishedAt: null }],
  });
  const downs = floor.presses.map(({ id }) => away({ kind: "press-down", press: id }));

  it("is told by first name, with the customer's part, a hold, a lost slot", () => {
    const hold = {
      station: print,
      reason: "material",
      expectedOn: isoDate("2026-12-09"),
      note: "no paper",
      madeAt: before,
    };
    const [blocked] = blockedPairs(
      [pair({ holds: [hold], order: { slotLostAt: after, depositPaidAt: now } })],
      [],
      floor,
      now,
    );
    expect(blocked).toMatchObject({ pairId: "p", serial: "TY-1", skierFirstName: "Ada" });
    expect(blocked?.reasons).toEqual([
      { kind: "no-slot", since: after.toISOString() },
      {
        kind: "material",
        station: print,
        stationNumber: stationNumber(print),
        expectedOn: "2026-12-09",
        note: "no paper",
        since: before.toISOString(),
      },
    ]);
    const waits = { state: "waiting", order: { slotLostAt: null, depositPaidAt: null } };
    expect(
      reasons({
        ...waits,
        proofAt: null,
        proofState: "issued",
        proofs: [{ state: "issued", issuedAt: after, answeredAt: null }],
      }),
    ).toEqual([
      { kind: "customer", condition: "deposit", isAsked: false, since: before.toISOString() },
      { kind: "customer", condition: "proof", isAsked: true, since: after.toISOString() },
    ]);
    expect(blockedPairs([pair(ready(stationIdFor("release")))], [], floor, now)).toEqual([]);
  });

  it("by a press only when none is left, and only what needs one", () => {
    const kept = [{ station: layUp, kind: "away" }];
    expect(reasons(ready(layUp), ...downs)).toHaveLength(downs.length);
    expect(reasons(ready(layUp), ...downs)?.[0]).toMatchObject({ ...kept[0], what: "It", until: "t", since: "f" });
    expect(reasons(ready(stationIdFor("trim")), ...downs)).toBeUndefined();
    const hired = away({ kind: "extra-press", press: { id: "hired", label: "Hired", kind: "heated" } });
    expect(reasons(ready(layUp), ...downs, hired)).toBeUndefined();
    if (downs.length > 1) expect(reasons(ready(layUp), ...downs.slice(1))).toBeUndefined();
  });

  it("by its own station and its own mould alone", () => {
    const trim = stationIdFor("trim");
    expect(reasons(ready(trim), away({ kind: "station-down", station: trim }))).toHaveLength(1);
    expect(reasons(ready(trim), away({ kind: "station-down", station: layUp }))).toBeUndefined();
    expect(reasons(ready(layUp), away({ kind: "mould-out", mould: "M1" }))).toHaveLength(1);
    expect(reasons(ready(layUp), away({ kind: "mould-out", mould: "M2" }))).toBeUndefined();
    expect(reasons(ready(trim), away({ kind: "mould-out", mould: "M1" }))).toBeUndefined();
    expect(reasons(ready(layUp), away({ kind: "shop-closed" }))).toBeUndefined();
  });

  it("by people only when too few who can are left", () => {
    const trim = stationIdFor("trim");
    const able = floor.crew.filter(({ stations }) => stations.includes(trim));
    const gone = able.map(({ id }) => away({ kind: "person-away", person: id }));
    expect(reasons(ready(trim), ...gone)).toHaveLength(able.length);
    const needed = floor.stations.find(({ id }) => id === trim)?.crewNeeded ?? 1;
    expect(reasons(ready(trim), ...gone.slice(needed))).toBeUndefined();
    expect(reasons(ready(trim), away({ kind: "person-away", person: "nobody" }))).toBeUndefined();
  });
});

describe("money", () => {
  const payment = (kind: string, state: string, amount: number, receivedAt: Date | null = null) =>
    ({ kind, state, cents: cents(amount), receivedAt }) as never;
  const money = (payments: readonly never[], change: object = {}) =>
    orderMoney({ payments, state: "waiting", totalCents: cents(10_000), rushCents: null, ...change } as never);

  it("paid is what was received less what was given back", () => {
    const payments = [
      payment("deposit", "received", 5_000),
      payment("balance", "requested", 4_000),
      payment("refund", "received", 1_500),
      payment("rush", "received", 700),
    ];
    expect(paidCents({ payments })).toBe(4_200);
    expect(money(payments)).toMatchObject({ paidCents: 4_200, totalCents: 10_700, openCents: 6_500 });
  });

  it("a rush fee counts with its tax while it is asked for, not once it is waived", () => {
    expect(money([payment("rush", "requested", 1_060)], { rushCents: cents(1_000) })).toEqual({
      totalCents: 11_060,
      rush: { taxCents: 60, totalCents: 1_060, paidAt: null },
      paidCents: 0,
      openCents: 11_060,
    });
    expect(money([payment("rush", "received", 1_060, now)]).rush).toEqual({
      taxCents: 0,
      totalCents: 1_060,
      paidAt: now.toISOString(),
    });
    expect(money([payment("rush", "requested", 900)], { rushCents: cents(1_000) }).rush?.taxCents).toBe(0);
    expect(money([payment("rush", "waived", 1_060)])).toMatchObject({ rush: null, totalCents: 10_000 });
  });

  it("nothing is open of a cancelled order, nor of one that paid too much", () => {
    expect(money([], { state: "cancelled" }).openCents).toBe(0);
    expect(money([payment("deposit", "received", 12_000)]).openCents).toBe(0);
  });
});

describe("a quote's state", () => {
  const quote = (state: string, validUntil: Date, honouredUntil: Date | null = null, next: unknown = null) => ({
    state,
    validUntil,
    honouredUntil,
    next,
  });
  it.each([
    [quote("accepted", before), "accepted"],
    [quote("withdrawn", after), "withdrawn"],
    [quote("withdrawn", after, null, {}), "replaced"],
    [quote("open", after), "open"],
    [quote("open", now), "expired"],
    [quote("open", before, after), "open"],
    [quote("open", after, before), "open"],
  ])("%j is %s", (standing, state) => {
    expect(quoteStateOf(standing, now)).toBe(state);
  });

  it("holds to the later of its day and the one it was honoured to", () => {
    expect(acceptableUntil(quote("open", before, after))).toBe(after);
    expect(acceptableUntil(quote("open", after, before))).toBe(after);
    expect(acceptableUntil(quote("open", before))).toBe(before);
  });
});

describe("what is the customer's own", () => {
  const plain = {
    graphic: { kind: "house", windows: [] },
    base: { inlay: "none" },
    mount: { offsetMm: 0 },
    core: "aspen-ash",
    flexRatio: 1.066,
  };
  const count = (change: object) => customerSpecified({ ...plain, ...change } as unknown as PairSpec).length;
  it.each([
    // A stiffness that the shop works out from its own classes is no specification of the customer's.
    [{}, 0],
    [{ graphic: { kind: "own", windows: [] } }, 1],
    [{ graphic: { kind: "house", windows: [], text: { text: "ADA" } } }, 1],
    [{ graphic: { kind: "house", windows: [{}] } }, 1],
    [{ base: { inlay: "complex" } }, 1],
    [{ base: { inlay: "counterchange", inlayText: "FERN" } }, 1],
    [{ mount: { offsetMm: -5 } }, 1],
    [{ core: "own:aspen.ash.aspen.aspen" }, 1],
  ])("%j: %d things", (change, things) => {
    expect(count(change)).toBe(things);
  });

  it("is told with its letters", () => {
    const told = customerSpecified({
      ...plain,
      base: { inlay: "complex", inlayText: "FERN" },
      graphic: { ...plain.graphic, text: { text: "ADA" } },
    } as unknown as PairSpec).join("; ");
    for (const words of ["FERN", "ADA"]) expect(told).toContain(words);
    const bare = customerSpecified({ ...plain, base: { inlay: "complex" } } as unknown as PairSpec).join("; ");
    expect(bare).not.toContain("{");
  });
});

describe("wood", () => {
  const strips = (left: number, right: number) => [
    ...Array(left).fill({ side: "L" }),
    ...Array(right).fill({ side: "R" }),
  ];
  const pair = (left: number, right: number, change: object = {}) =>
    ({
      state: "released",
      heldStrips: strips(left, right),
      operations: [{ station: gluing, visit: 1, side: null, state: "ready", startedAt: null }],
      ...change,
    }) as never;
  const glued = { operations: [{ station: gluing, visit: 1, side: null, state: "running", startedAt: now }] };
  it.each([
    ["13 strips", pair(7, 6), true],
    ["14 strips", pair(7, 7), false],
    ["none, but shipped", pair(0, 0, { state: "shipped" }), false],
    ["none, but glued", pair(0, 0, glued), false],
    ["none, and no gluing", pair(0, 0, { operations: [] }), false],
  ])("is short: %s", (_, facts, short) => {
    expect(isStripsShort(facts)).toBe(short);
  });
  it.each([
    [7, 0, "R"],
    [0, 7, "L"],
    [7, 7, null],
    [0, 0, null],
    [1, 6, null],
  ])("%d left and %d right lack %s", (left, right, side) => {
    expect(lackingSide(pair(left, right))).toBe(side);
  });
  it("is uncut until the gluing that comes next has begun", () => {
    expect([isCoreUncut(pair(0, 0)), isCoreUncut(pair(0, 0, glued))]).toEqual([true, false]);
  });
});

describe("a skier's steps", () => {
  const all = pairWay().map(({ station }) => station);
  const steps = (states: (station: string) => object, order: object = {}) =>
    progressSteps(
      {
        operations: all.map((station) => ({
          station,
          startedAt: null,
          finishedAt: null,
          state: "blocked",
          ...states(station),
        })),
      } as never,
      { acceptedAt: before, ...placed, clockStartedAt: null, deliveredAt: null, state: "waiting", ...order } as never,
    );
  const stateOf = (rows: ReturnType<typeof steps>) => Object.fromEntries(rows.map(({ key, state }) => [key, state]));

  /** Sold by the desk. */
  const placed = { confirmedAt: before, confirmedHow: "desk" } as const;

  it("wait first for somebody to stand behind a guest's order, and show so to nobody else", () => {
    const keys = (order: object) =>
      steps(() => ({}), order)
        .slice(0, 3)
        .map(({ key, state }) => `${key} ${state}`);
    const alone = { confirmedAt: null, confirmedHow: null };
    expect(keys(alone)).toEqual(["accepted done", "confirmed now", "ready-to-build to-come"]);
    const paid = { confirmedAt: now, confirmedHow: "money" };
    expect(keys(paid)).toEqual(["accepted done", "confirmed done", "ready-to-build now"]);
    expect(keys({ confirmedHow: "earlier" }).slice(0, 2)).toEqual(["accepted done", "ready-to-build now"]);
  });

  it("begin with the acceptance and wait for the clock", () => {
    const rows = steps(() => ({}));
    expect(rows[0]).toMatchObject({ key: "accepted", state: "done", at: before.toISOString() });
    expect(stateOf(rows)).toMatchObject({
      "ready-to-build": "now",
      core: "to-come",
      press: "to-come",
      shipped: "to-come",
    });
    const started = steps(() => ({}), { clockStartedAt: now });
    expect(started[1]).toMatchObject({ state: "done", at: now.toISOString() });
  });

  it("go on with the first work, and end with the last of it", () => {
    const running = steps((station) => (station === gluing ? { state: "running", startedAt: now } : {}));
    expect(stateOf(running)).toMatchObject({ core: "now", base: "to-come" });
    expect(running.find(({ key }) => key === "core")?.at).toBeNull();
    const done = steps((station) => ({
      state: "done",
      startedAt: before,
      finishedAt: station === layUp ? after : now,
    }));
    expect(done.find(({ key }) => key === "press")).toMatchObject({ state: "done", at: after.toISOString() });
    expect(done.find(({ key }) => key === "core")).toMatchObject({ state: "done", at: now.toISOString() });
    const order = { state: "delivered", deliveredAt: after };
    expect(steps(() => ({}), order).at(-1)).toMatchObject({ key: "shipped", state: "done", at: after.toISOString() });
    expect(steps(() => ({}), { state: "ready" }).at(-1)).toMatchObject({ state: "to-come" });
  });
});

describe("small views", () => {
  it("of numbers as people say them", () => {
    expect([quoteNumber({ number: 212, revision: 1 }), quoteNumber({ number: 212, revision: 2 })]).toEqual([
      "Q-212",
      "Q-212 r2",
    ]);
    expect([orderNumber({ number: 3 }), clubNumber({ number: 4 })]).toEqual(["O-3", "C-4"]);
    expect(["Q-212", "q212 r2", " 212", "O-212", "ada", "1234567890"].map((text) => numberIn(text, "Q"))).toEqual([
      212,
      212,
      212,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("of the ski that will be sold", () => {
    const skis = [
      { side: "L", state: "scrapped", serial: "a" },
      { side: "R", state: "good", serial: "b" },
      { side: "L", state: "good", serial: "c" },
    ];
    expect(standingSki({ skis } as never, "L")?.serial).toBe("c");
    expect(standingSki({ skis } as never, "R")?.serial).toBe("b");
    expect(standingSki({ skis: skis.slice(0, 1) } as never, "L")).toBeUndefined();
  });

  it("of stations whose work began, of this visit or an earlier one", () => {
    const operation = (station: string, state: string, visit = 0) => ({ station, state, visit }) as never;
    expect(
      startedStations([
        operation("a", "ready"),
        operation("b", "running"),
        operation("b", "ready", 1),
        operation("c", "ready", 1),
        operation("d", "done"),
        operation("e", "blocked"),
      ]),
    ).toEqual(["b", "c", "d"]);
  });

  it("of a lost slot, a picture, a payment, a proof and the rights", () => {
    const lost = (slotLostReason: string | null, slotLostAt: Date | null = now) =>
      slotLostView({ slotLostAt, slotLostReason } as never);
    expect(lost("proof-late")).toEqual({ at: now.toISOString(), reason: "proof-late" });
    expect(lost("hold-lapsed")?.reason).toBe("hold-lapsed");
    expect(lost("proof-late", null)).toBeNull();
    expect(artworkIdOf({ graphic: { artwork: { id: "art-1" } } } as never)).toBe("art-1");
    expect(artworkIdOf({ graphic: {} } as never)).toBeNull();
    const paid = {
      kind: "deposit",
      state: "received",
      cents: 5,
      method: "counter",
      reference: null,
      requestedAt: before,
      receivedAt: now,
    };
    expect(paymentView(paid as never)).toEqual({
      kind: "deposit",
      state: "received",
      cents: 5,
      method: "counter",
      reference: null,
      at: now.toISOString(),
    });
    expect(paymentView({ ...paid, receivedAt: null } as never).at).toBe(before.toISOString());
    const proof = {
      id: "x",
      revision: 2,
      state: "approved",
      specHash: "h",
      note: null,
      issuedAt: before,
      answeredAt: null,
      answeredByName: null,
    };
    expect(proofView(proof as never)).toMatchObject({ issuedAt: before.toISOString(), answeredAt: null });
    expect(proofView({ ...proof, answeredAt: now } as never).answeredAt).toBe(now.toISOString());
    const rights = { basis: "own", name: "Ada" };
    expect(rightsView({ rights, rightsAt: now } as never)).toEqual({
      basis: "own",
      name: "Ada",
      at: now.toISOString(),
    });
    expect([
      rightsView({ rights: null, rightsAt: now } as never),
      rightsView({ rights, rightsAt: null } as never),
    ]).toEqual([null, null]);
  });

  it("of stations in the way of a pair", () => {
    const way = pairWay();
    expect(way.map(({ position }) => position)).toEqual(way.map((_, index) => index + 1));
    expect(way.map(({ station }) => positionOf(station))).toEqual(way.map(({ position }) => position));
    const last = way.at(-1)?.station ?? "";
    expect(way.map(({ station }) => isLastStation(station))).toEqual(way.map(({ station }) => station === last));
    const found = floorCatalog().stations.find(({ id }) => id === press);
    expect(stationTitle(press)).toBe(`${found?.number} ${found?.label}`);
    expect([stationNumber("gone" as never), stationTitle("gone" as never)]).toEqual(["gone", "gone"]);
    const resting = floorCatalog().stations.find(({ waitMinutes }) => waitMinutes !== undefined);
    expect(stationRecipe(resting?.id as never)).toMatchObject({
      restMinutes: resting?.waitMinutes?.low,
      typicalMinutes: resting?.minutes.typ,
      capacity: resting?.capacity,
    });
    const plain = floorCatalog().stations.find(({ waitMinutes }) => waitMinutes === undefined);
    expect(stationRecipe(plain?.id as never).restMinutes).toBe(0);
  });

  it("of days ahead", () => {
    expect(isTooFar(isoDate("2027-12-02"), isoDate("2026-12-01"))).toBe(false);
    expect(isTooFar(isoDate("2027-12-03"), isoDate("2026-12-01"))).toBe(true);
    expect(addDays(isoDate("2026-12-31"), 1)).toBe("2027-01-01");
  });
});
