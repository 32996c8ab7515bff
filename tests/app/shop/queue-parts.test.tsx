/** The queue's views, drawn from a board made by hand: every bar at its minute, every figure under its heading. */
import { describe, expect, it } from "vitest";
import { Blocked } from "#app/shop/(staff)/queue/blocked.tsx";
import { Board } from "#app/shop/(staff)/queue/board.tsx";
import { BoardList } from "#app/shop/(staff)/queue/board-list.tsx";
import { axisOf, placeOf } from "#app/shop/(staff)/queue/board-axis.ts";
import { Base } from "#app/shop/(staff)/queue/breakdown/base.tsx";
import { Effect, signedDays } from "#app/shop/(staff)/queue/breakdown/effect.tsx";
import { Ways } from "#app/shop/(staff)/queue/breakdown/ways.tsx";
import { Floor } from "#app/shop/(staff)/queue/floor.tsx";
import { OrderTable } from "#app/shop/(staff)/queue/order/order-table.tsx";
import { PressPlan } from "#app/shop/(staff)/queue/press-plan.tsx";
import { Promises } from "#app/shop/(staff)/queue/promises.tsx";
import { InForce } from "#app/shop/(staff)/queue/what-if/in-force.tsx";
import type {
  BaseShortage,
  BlockedPair,
  FloorChangeView,
  PromiseEffect,
  QueueBoard,
  QueueEffect,
  QueueOrder,
  QueuePair,
  RemedyOption,
} from "#services";
import { partly } from "../../support/builders/views";
import { drawn, drawnRouted } from "../../support/drawn";
import type { Reading } from "../../support/page-reading";

/** Winter in Denver is seven hours behind UTC. */
const denver = (time: string, day = "2026-11-10") =>
  new Date(Date.parse(`${day}T${time}:00.000Z`) + 7 * 3_600_000).toISOString();
/** Two stations by id, and the numbers that people know them by. */
const first = "planing";
const second = "bonding";
const numbers = { [first]: 4, [second]: 5 };
const stations = [
  {
    station: first,
    number: numbers[first],
    name: "Planing",
    capacity: 1,
    ready: 1,
    running: 1,
    blocked: 0,
    minutesWaiting: 0,
  },
  {
    station: second,
    number: numbers[second],
    name: "Bonding",
    capacity: 1,
    ready: 3,
    running: 0,
    blocked: 0,
    minutesWaiting: 0,
  },
] as const;
const boardWith = (known: Parameters<typeof partly<QueueBoard>>[0]) =>
  partly<QueueBoard>({ stations, pairs: [], days: [], today: "2026-11-10", ...known });

/** Tuesday 07:30–12:00 and 12:30–16:30, a closed Wednesday, Thursday with two hours more. */
const days = [
  {
    date: "2026-11-10",
    axis: { fromMinute: 450, toMinute: 990 },
    open: [
      { fromMinute: 450, toMinute: 720 },
      { fromMinute: 750, toMinute: 990 },
    ],
    overtime: [],
    closedBecause: null,
  },
  { date: "2026-11-11", axis: { fromMinute: 0, toMinute: 0 }, open: [], overtime: [], closedBecause: "Veterans Day" },
  {
    date: "2026-11-12",
    axis: { fromMinute: 450, toMinute: 1110 },
    open: [{ fromMinute: 450, toMinute: 1110 }],
    overtime: [{ fromMinute: 990, toMinute: 1110 }],
    closedBecause: null,
  },
] as const;
const piece = { date: "2026-11-10", fromMinute: 600, toMinute: 660 } as const;
const bar = {
  pairId: "p-1",
  serial: "TY-0401",
  operationId: "op-1",
  station: first,
  state: "running",
  standing: "safe",
  lane: 0,
  startsAt: denver("10:00"),
  endsAt: denver("11:00"),
  freeAt: denver("11:00"),
  attended: [piece],
  unattended: [],
  label: { piece, isBeside: false },
} as const;
const stationBoard = {
  days,
  now: { date: "2026-11-10", minute: 610 },
  changes: [],
  rows: [
    { station: first, lanes: 1, bars: [bar], down: [] },
    { station: second, lanes: 1, bars: [], down: [] },
  ],
} as const;
type BoardKnown = NonNullable<Parameters<typeof boardWith>[0]["board"]>;
const board = (known: BoardKnown = {}) => drawn(<Board board={boardWith({ board: { ...stationBoard, ...known } })} />);

describe("the board's axis", () => {
  it("lays working hours side by side at 0.7 px a minute, a closed day as wide as its word", () => {
    const axis = axisOf(partly<QueueBoard["board"]["days"]>(days));
    expect(axis.columns.map(({ left, width }) => [left, width].map(Math.round))).toEqual([
      [0, 378],
      [378, 64],
      [442, 462],
    ]);
    // 378 + 64 + 462, and 48 for a serial beside the last bar.
    expect(axis.width).toBeCloseTo(952, 9);
    expect(placeOf(axis, "2026-11-10", 450)).toBe(0);
    expect(placeOf(axis, "2026-11-10", 610)).toBeCloseTo(112, 9);
    expect(placeOf(axis, "2026-11-12", 550)).toBeCloseTo(512, 9);
    expect(placeOf(axis, "2026-11-13", 550)).toBeNull();
  });
});

describe("the board", () => {
  const strip = (known: Partial<typeof bar> | object, lanes = 1, down: readonly (typeof piece)[] = []) =>
    board({ rows: [{ station: first, lanes, bars: [{ ...bar, ...known }], down }] }).all("li svg")[0];

  it("heads each day with its weekday and hours, its closure or its overtime, and marks the present", () => {
    const head = board().one("svg");
    expect(head.all("svg > g").map(({ text }) => text)).toEqual([
      "Tue 10 November07:30–16:30",
      "Wed 11closedclosed: Veterans Day",
      "Thu 12 Novemberovertime 16:30–18:30",
    ]);
    expect(head.attribute("width")).toBe("952");
    expect(head.all("svg > g > path").map((line) => line.attribute("d"))).toEqual([
      "M0.5 0V40",
      "M378.5 0V40",
      "M442.5 0V40",
    ]);
    expect(head.all("svg > g text:first-of-type").map((day) => [day.attribute("fill"), day.attribute("x")])).toEqual([
      ["var(--larch)", "6"],
      ["var(--ink)", "384"],
      ["var(--ink)", "448"],
    ]);
    expect(head.all("svg > text").map((now) => [now.text, now.attribute("x")])).toEqual([["now", "115"]]);
    expect(board({ now: null }).one("svg").all("svg > text")).toEqual([]);
  });

  it("draws a visit where its minutes lie, with its signs", () => {
    const svg = strip({});
    const box = svg?.one("a rect");
    expect(
      [box?.attribute("x"), box?.attribute("width"), box?.attribute("y"), box?.attribute("height")].map(Number),
    ).toEqual([105, 42, 4, 23]);
    expect(svg?.one("a").attribute("class")).toBe("running safe");
    expect(svg?.one("a").attribute("href")).toBe("/shop/pair/TY-0401");
    const label = svg?.one("a text");
    expect([label?.text, Number(label?.attribute("x")), Number(label?.attribute("y"))]).toEqual(["▸0401", 109, 19]);
    expect(svg?.one("title").text).toBe("TY-0401, running, safe. 10 November, 10:00–11:00");
    // The present: a line through the strip at 112 px.
    expect(svg?.all("svg > path").map((line) => line.attribute("d"))).toEqual(["M112 0V68"]);
    expect(Number(svg?.attribute("height"))).toBe(68);
  });

  it("tells states and standings apart, hatches what works by itself and what is down", () => {
    const late = strip(
      {
        state: "blocked",
        standing: "late",
        lane: 2,
        label: { piece, isBeside: true },
        freeAt: denver("14:00"),
        unattended: [{ date: "2026-11-10", fromMinute: 660, toMinute: 840 }],
      },
      3,
      [{ ...piece, fromMinute: 450, toMinute: 550 } as unknown as typeof piece],
    );
    const box = late?.one("a rect");
    expect(Number(late?.attribute("height"))).toBe(86);
    expect(box?.attribute("y")).toBe("56");
    expect(late?.one("a").attribute("class")).toBe("blocked late beside");
    const label = late?.one("a text");
    // Beside the bar: behind 105 + 42, with 3 px of air.
    expect([label?.text, label?.attribute("x")]).toEqual(["·0401✕", "150"]);
    expect(late?.one("title").text).toBe("TY-0401, blocked, late. 10 November, 10:00–11:00, free from 14:00");
    // From 660 to 840 of the day, behind 105 + 42: 126 wide, 12 high.
    expect(late?.all("path.rest").map((each) => each.attribute("d"))).toEqual(["M147 62h126v12h-126z"]);
    const down = late?.all("g > rect.away") ?? [];
    expect(down.map((each) => [each.attribute("x"), each.attribute("width"), each.attribute("height")])).toEqual([
      ["0", "70", "86"],
    ]);
    expect(late?.text).toContain("down");
    const signs = (["ready", "done", "redo"] as const).map(
      (state) => strip({ state, standing: "at-risk" })?.one("a text").text,
    );
    expect(signs).toEqual(["○0401!", "✓0401!", "↺0401!"]);
    expect(strip({ state: "ready", standing: "open" })?.one("a").attribute("class")).toBe("ready open");
    expect(strip({ standing: "at-risk" })?.one("a").attribute("class")).toBe("running at-risk");
    // A minute is too narrow to see: two pixels at least.
    const short = { ...piece, toMinute: 601 };
    expect(
      strip({ attended: [short] })
        ?.one("a rect")
        .attribute("width"),
    ).toBe("2");
  });

  it("shades lunch and closed days, once for all strips", () => {
    const shown = board();
    expect(shown.all("li svg use").map((each) => each.attribute("href"))).toEqual(["#board-ground", "#board-ground"]);
    const shaded = shown.all("#board-ground > rect");
    expect(shaded.map(({ element }) => element.getAttribute("height"))).toEqual(["68", "68"]);
    expect(shaded.map((each) => [Number(each.attribute("x")), Number(each.attribute("width"))])).toEqual([
      [189, 21],
      [378, 64],
    ]);
  });

  const list = (known: BoardKnown = {}, page?: string) =>
    drawn(<BoardList board={boardWith({ board: { ...stationBoard, ...known } })} page={page} />);

  it("names the stations with what is at them, and says the same as a list", () => {
    const seen = board();
    expect(seen.links["The board as a list"]).toBe("/shop/queue?view=list");
    expect(Object.entries(seen.links).slice(0, 2)).toEqual([
      [`${numbers[first]} Planing`, `/shop/queue?view=floor&station=${first}`],
      ["▸0401TY-0401, running, safe. 10 November, 10:00–11:00".replace("▸0401", ""), "/shop/pair/TY-0401"].map(
        (text, index) => (index === 0 ? "TY-0401, running, safe. 10 November, 10:00–11:00▸0401" : text),
      ),
    ]);
    expect(seen.text).toContain("ready 1, running 1");
    expect(seen.text).toContain("ready 3, running 0");
    expect(list().table("What is planned, station by station")).toEqual([
      {
        Station: `${numbers[first]} Planing`,
        Pair: "TY-0401",
        State: "running",
        Promise: "safe",
        From: "10 Nov 2026, 10:00",
        "Work until": "10 Nov 2026, 11:00",
        "Free from": "–",
      },
    ]);
    expect(list({ rows: [] }).text).toContain("Nothing is planned in these days.");
    const cures = list({
      rows: [{ station: first, lanes: 1, down: [], bars: [{ ...bar, freeAt: denver("14:10") }] }],
    });
    expect(cures.table("What is planned, station by station")[0]?.["Free from"]).toBe("10 Nov 2026, 14:10");
    const bars = Array.from({ length: 120 }, (_, index) => ({ ...bar, operationId: `op-${index}` }));
    const second = list({ rows: [{ station: first, lanes: 1, down: [], bars }] }, "2");
    expect(second.table("What is planned, station by station")).toHaveLength(50);
    expect(second.links["Further down the list"]).toBe("/shop/queue?view=list&page=3");
  });

  it("says above it what is different about the floor", () => {
    const changes = [
      { kind: "press-down", what: "Press 1", from: denver("07:30"), to: denver("16:30"), reason: "plate" },
      { kind: "overtime", what: null, from: denver("16:30"), to: null, reason: "season" },
      { kind: "extra-press", what: null, from: null, to: null, reason: "" },
    ] as const;
    const list = board({ changes }).one('ul[aria-label="Different about the floor"]');
    expect(list.items).toEqual([
      "!press downPress 1 · 10 Nov 2026, 07:30 – 10 Nov 2026, 16:30 · plate",
      "iovertime10 Nov 2026, 16:30 – for good · season",
      "iextra press",
    ]);
    expect(board().all('ul[aria-label="Different about the floor"]')).toEqual([]);
  });
});

describe("one station at a time", () => {
  const cell = (serial: string, state: "running" | "ready" | "blocked", station = second) => ({
    serial,
    state,
    station,
  });
  const known = {
    pairs: [{ serial: "TY-0402", modelName: "Midlow 95", lengthCm: 178 }],
    days: [
      {
        cells: [
          cell("TY-0404", "ready"),
          cell("TY-0402", "ready"),
          cell("TY-0403", "running"),
          cell("TY-0405", "blocked"),
          cell("TY-0406", "ready", first),
        ],
      },
    ],
  } as const;

  it("opens at the busiest, running work before ready work, by serial", () => {
    const seen = drawn(<Floor board={boardWith(known)} station={undefined} />);
    expect(seen.headings).toEqual([`${numbers[second]} Bonding`]);
    const work = seen.part(`${numbers[second]} Bonding`).all("li:not([data-caution])");
    expect(work.map(({ text }) => text)).toEqual([
      "TY-0403▸ running",
      "TY-0402Midlow 95, 178 cm○ ready",
      "TY-0404○ ready",
    ]);
    expect(seen.all("nav a").map((each) => [each.attribute("aria-label"), each.attribute("aria-current")])).toEqual([
      [`${numbers[first]} Planing, ready 1, running 1`, null],
      [`${numbers[second]} Bonding, ready 3, running 0`, "page"],
    ]);
    expect(seen.all("nav a").map(({ text }) => text)).toEqual([
      `${numbers[first]} Planing2`,
      `${numbers[second]} Bonding3`,
    ]);
    const other = drawn(<Floor board={boardWith(known)} station={first} />);
    expect(other.all("li:not([data-caution])").map(({ text }) => text)).toEqual(["TY-0406○ ready"]);
    expect(other.links["TY-0406○ ready"]).toBe("/shop/pair/TY-0406");
    const idle = drawn(<Floor board={boardWith({ ...known, days: [] })} station={first} />);
    expect(idle.all("li:not([data-caution])")).toEqual([]);
    expect(idle.all("section > p")).toHaveLength(1);
    expect(drawn(<Floor board={boardWith({ stations: [] })} station={first} />).text).toBe("");
  });
});

describe("the press plan", () => {
  const slot = (known: object) => ({
    press: "Press 1",
    pairId: "p-1",
    serial: "TY-0401",
    mould: "M95-178",
    startsAt: denver("08:00"),
    endsAt: denver("10:08"),
    changeoverMinutes: 0,
    isFixed: false,
    curesPastClosing: false,
    ...known,
  });
  it("groups neighbours of one mould on one press, and adds up the changes of mould", () => {
    const slots = [
      slot({ changeoverMinutes: 25 }),
      slot({ pairId: "p-2", serial: "TY-0402", press: "Press 2", changeoverMinutes: 40 }),
      slot({ pairId: "p-3", serial: "TY-0403", startsAt: denver("10:10"), endsAt: denver("12:20"), isFixed: true }),
      slot({
        pairId: "p-4",
        serial: "TY-0404",
        mould: "M84-182",
        startsAt: denver("14:00"),
        endsAt: denver("17:10"),
        curesPastClosing: true,
        changeoverMinutes: 25,
      }),
    ];
    const seen = drawn(
      <PressPlan
        board={boardWith({
          pressPlan: [
            { date: "2026-11-10", slots },
            { date: "2026-11-11", slots: [] },
          ],
        })}
      />,
    );
    expect(seen.headings).toEqual(["10 November 2026"]);
    expect(seen.text).toContain("Pressings: 4. Changing moulds: 90 min.");
    const groups = seen.all("section > ul > li").map((group) => group.text);
    expect(groups).toHaveLength(3);
    expect(groups[0]).toMatch(/^Press 1, mould M95-178, .*25 min.*08:00–10:08TY-040110:10–12:20TY-0403i/);
    expect(groups[1]).toMatch(/^Press 2, mould M95-178, .*40 min.*08:00–10:08TY-0402$/);
    expect(groups[2]).toMatch(/^Press 1, mould M84-182, .*14:00–17:10TY-0404☾ cures past closing$/);
    expect(drawn(<PressPlan board={boardWith({ pressPlan: [{ date: "2026-11-11", slots: [] }] })} />).headings).toEqual(
      [],
    );
  });
});

describe("promises", () => {
  const pair = (known: Parameters<typeof partly<QueuePair>>[0]) =>
    partly<QueuePair>({
      pairId: "p-1",
      serial: "TY-0401",
      modelName: "Midlow 95",
      lengthCm: 178,
      now: null,
      doneOperations: 3,
      allOperations: 14,
      plannedReady: "2026-11-17",
      expected: { p50: "2026-11-18", p90: "2026-11-20" },
      promisedOn: "2026-11-23",
      promiseClass: "promise",
      slackDays: 1,
      standing: "safe",
      chanceKept: 0.895,
      ...known,
    });
  it("stand tightest first, those without one last, with each day under its own heading", () => {
    const pairs = [
      pair({
        pairId: "p-4",
        serial: "TY-0404",
        slackDays: null,
        promisedOn: null,
        promiseClass: "estimate",
        standing: "open",
        chanceKept: null,
        expected: null,
      }),
      pair({}),
      pair({
        pairId: "p-2",
        serial: "TY-0402",
        slackDays: -3,
        standing: "late",
        promiseClass: "hard-date",
        now: { station: second, stationNumber: numbers[second], stationName: "Bonding", state: "ready" },
        chanceKept: 0.4,
      }),
      pair({ pairId: "p-3", serial: "TY-0400", slackDays: 1, standing: "at-risk" }),
    ];
    const seen = drawn(<Promises board={boardWith({ pairs })} />);
    const rows = seen.table("Promises");
    expect(rows.map((row) => row.Pair)).toEqual(["TY-0402", "TY-0400", "TY-0401", "TY-0404"]);
    expect(rows[2]).toEqual({
      Pair: "TY-0401",
      Ski: "Midlow 95, 178 cm",
      Now: "–",
      Done: "3/14",
      "Planned ready": "17 November 2026",
      "Half of the runs or more by": "18 November 2026",
      "Nine of ten or more by": "20 November 2026",
      Promised: "23 November 2026",
      Class: "promise",
      "Slack, working days": "1",
      Standing: "✓safe",
      "Kept in, % of runs": "89.5",
    });
    expect(rows[0]).toMatchObject({
      Now: `${numbers[second]} Bonding`,
      Class: "hard date",
      "Slack, working days": "−3",
      Standing: "✕late",
      "Kept in, % of runs": "40",
    });
    expect(rows[1]?.Standing).toBe("!at risk");
    expect(rows[3]).toMatchObject({
      "Half of the runs or more by": "–",
      Promised: "–",
      Class: "estimate",
      "Slack, working days": "–",
      Standing: "ino promise yet",
      "Kept in, % of runs": "–",
    });
  });
});

describe("lists of five hundred pairs", () => {
  const many = Array.from({ length: 500 }, (_, index) => ({
    pairId: `pair-${index}`,
    serial: `TY-${String(9000 - index)}`,
    skierFirstName: "Robin",
    modelName: "Midlow 95",
    lengthCm: 178,
    ski: "Midlow 95, 178 cm",
    mould: "M95-178",
    now: { station: second, stationNumber: numbers[second], stationName: "Bonding", state: "ready" },
    doneOperations: 3,
    allOperations: 14,
    plannedReady: "2026-11-17",
    expected: { p50: "2026-11-18", p90: "2026-11-20" },
    promisedOn: "2026-11-23",
    promiseClass: "promise",
    slackDays: index,
    standing: "safe",
    chanceKept: 0.95,
    isByHand: false,
    fixedBecause: null,
    reasons: [{ kind: "before", stationNumber: 4, since: "2026-11-10T10:00:00.000Z" }],
  }));
  const board = partly<QueueBoard>({ ...boardWith({}), pairs: many } as never);
  const order = partly<QueueOrder>({ places: many } as never);
  const asked = (page: string) => ({
    promises: drawn(<Promises board={board} page={page} />),
    blocked: drawn(<Blocked pairs={many as never} page={page} />),
    order: drawnRouted(<OrderTable order={order} mayMove page={page} />),
  });
  const serials = (seen: Reading) => seen.all("tbody th, tbody tr").flatMap(({ text }) => /TY-\d{4}/.exec(text) ?? []);

  it("come fifty at a time, each page light: the framework sends a page twice, and 150 kB is the most", () => {
    for (const list of Object.values(asked("2"))) {
      const own = [...new Set(serials(list))];
      expect([own.length, own[0], own.at(-1)]).toEqual([50, "TY-8950", "TY-8901"]);
      expect(list.text).toContain("page 2 of 10");
      expect(list.element.innerHTML.length).toBeLessThan(65_000);
    }
    expect(asked("2").promises.links["Further down the list"]).toBe("/shop/queue?view=promises&page=3");
    expect(asked("2").blocked.links["Earlier in the list"]).toBe("/shop/queue?view=waiting&page=1");
    expect(asked("10").order.links).not.toHaveProperty("Further down the list");
    // What is no page is the first or the last.
    expect(serials(asked("none").promises)[0]).toBe("TY-9000");
    expect(serials(asked("99").promises)[0]).toBe("TY-8550");
  });

  it("count places over all pages, and move across their borders", () => {
    const { order: second } = asked("2");
    expect(second.all("tbody tr:first-child > *").map(({ text }) => text)[0]).toBe("51");
    const links = second.all("td a[aria-label]").map((link) => link.attribute("href"));
    expect(links[0]).toBe("/shop/queue/order?move=pair-50&before=pair-49");
    expect(links.at(-1)).toBe("/shop/queue/order?move=pair-99&before=pair-101");
  });
});

describe("blocked pairs", () => {
  it("say why, what is known, since when and who acts next", () => {
    const reasons = [
      { kind: "customer", condition: "deposit", isAsked: false, since: denver("07:30") },
      { kind: "customer", condition: "proof", isAsked: true, since: null },
      {
        kind: "material",
        station: second,
        stationNumber: numbers[second],
        expectedOn: "2026-11-20",
        note: "ash",
        since: null,
      },
      { kind: "decision", station: second, stationNumber: numbers[second], expectedOn: null, note: "", since: null },
      { kind: "rest", station: first, stationNumber: numbers[first], until: denver("14:10"), since: null },
      { kind: "before", station: first, stationNumber: numbers[first], since: null },
      { kind: "away", station: second, stationNumber: numbers[second], what: "Press 1", until: null, since: null },
      {
        kind: "away",
        station: second,
        stationNumber: numbers[second],
        what: "Mo",
        until: denver("16:30"),
        since: null,
      },
      { kind: "no-slot", since: null },
    ] as const;
    const pair = partly<BlockedPair>({
      pairId: "p-1",
      serial: "TY-0401",
      skierFirstName: "Robin",
      reasons: reasons as never,
    });
    const rows = drawn(<Blocked pairs={[pair]} />).table("Blocked, why, and since when");
    expect(rows.map((row) => Object.values(row).slice(1))).toEqual([
      ["!deposit", "its clock has not started", "10 Nov 2026, 07:30", "customer, then desk"],
      ["!proof", "its clock has not started", "–", "customer approves"],
      [
        "!waits for material",
        `station ${numbers[second]}, expected 20 November 2026, ash`,
        "–",
        "the shop: order or chase it",
      ],
      ["!waits for a decision", `station ${numbers[second]}, no date known`, "–", "the owner decides"],
      ["irests or cures", `station ${numbers[first]}, until 10 Nov 2026, 14:10`, "–", "nobody: time passes"],
      ["!waits for work before it", `station ${numbers[first]}`, "–", "the station named"],
      ["!something is away", `station ${numbers[second]}, Press 1, no end known`, "–", "the shop: see what broke"],
      [
        "!something is away",
        `station ${numbers[second]}, Mo, until 10 Nov 2026, 16:30`,
        "–",
        "the shop: see what broke",
      ],
      ["✕no slot any more", "–", "–", "the desk: give it a new slot"],
    ]);
    expect(rows[0]?.Pair).toBe("TY-0401 Robin");
    expect(drawn(<Blocked pairs={[]} />).text).toContain("Nothing is blocked.");
  });
});

describe("the order of the queue", () => {
  const place = (index: number, known: object = {}) => ({
    pairId: `p-${index}`,
    serial: `TY-040${index}`,
    skierFirstName: "Robin",
    ski: "Midlow 95, 178 cm",
    mould: "M95-178",
    promisedOn: "2026-11-23",
    expected: { p50: "2026-11-18", p90: "2026-11-20" },
    standing: "at-risk",
    isByHand: false,
    fixedBecause: null,
    ...known,
  });
  const order = partly<QueueOrder>({
    places: [
      place(1, { fixedBecause: "frozen" }),
      place(2, { isByHand: true, standing: "late", expected: null }),
      place(3, { standing: "safe" }),
      place(4, { standing: "open", promisedOn: null }),
    ] as never,
  });
  it("moves a pair one place up or down by a link, the last behind all others", () => {
    const seen = drawnRouted(<OrderTable order={order} mayMove />);
    const rows = seen.table("Open pairs in the order in which they are served");
    expect(rows[1]).toEqual({
      "No.": "2",
      Pair: "TY-0402 Robin",
      Ski: "Midlow 95, 178 cm",
      Mould: "M95-178",
      Promised: "23 November 2026",
      "Nine of ten or more by": "–",
      Standing: "✕late",
      Move: "↑ Up↓ Downby hand",
    });
    expect(rows.map((row) => [row.Standing, row["Nine of ten or more by"], row.Move])).toEqual([
      ["!at risk", "20 November 2026", "press slot fixed"],
      ["✕late", "–", "↑ Up↓ Downby hand"],
      ["✓safe", "20 November 2026", "↑ Up↓ Down"],
      ["ino promise", "20 November 2026", "↑ Up"],
    ]);
    const handles = seen.all("td a[aria-label]").map((link) => [link.attribute("aria-label"), link.attribute("href")]);
    expect(handles).toEqual([
      ["Show TY-0402 one place earlier", "/shop/queue/order?move=p-2&before=p-1"],
      ["Show TY-0402 one place later", "/shop/queue/order?move=p-2&before=p-4"],
      ["Show TY-0403 one place earlier", "/shop/queue/order?move=p-3&before=p-2"],
      ["Show TY-0403 one place later", "/shop/queue/order?move=p-3&before="],
      ["Show TY-0404 one place earlier", "/shop/queue/order?move=p-4&before=p-3"],
    ]);
    expect(seen.all("[data-pair]").map((each) => each.attribute("data-movable"))).toEqual(["no", "yes", "yes", "yes"]);
    expect(seen.text).toContain("Or drag a row");
    const reader = drawnRouted(<OrderTable order={order} mayMove={false} />);
    expect(reader.all("td a[aria-label]")).toEqual([]);
    expect(reader.all("[data-movable=yes]")).toEqual([]);
    expect(reader.text).not.toContain("Or drag a row");
    expect(reader.table("Open pairs in the order in which they are served")[1]?.Move).toBe("by hand");
  });
});

describe("what a change does to the queue", () => {
  const effectOf = (known: Parameters<typeof partly<PromiseEffect>>[0]) =>
    partly<PromiseEffect>({
      pairId: "p-1",
      serial: "TY-0401",
      skierFirstName: "Robin",
      promisedOn: "2026-11-23",
      before: { p50: "2026-11-18", p90: "2026-11-20" },
      after: { p50: "2026-11-24", p90: "2026-11-26" },
      movedWorkingDays: 4,
      slackWorkingDays: -2.5,
      standingBefore: "safe",
      standingAfter: "late",
      ...known,
    });
  const effect = partly<QueueEffect>({
    basis: { runs: 200 },
    pairs: 12,
    crossing: [effectOf({})],
    moved: [
      effectOf({}),
      effectOf({
        pairId: "p-2",
        serial: "TY-0402",
        promisedOn: null,
        movedWorkingDays: -0.5,
        slackWorkingDays: null,
        standingAfter: "open",
      }),
      effectOf({
        pairId: "p-3",
        serial: "TY-0403",
        movedWorkingDays: 0,
        slackWorkingDays: 1,
        standingAfter: "at-risk",
      }),
      effectOf({ pairId: "p-4", serial: "TY-0404", standingAfter: "safe" }),
    ],
    expectedLate: { before: 0.25, after: 1.75 },
  });
  it("counts who moves and who crosses, with days before and after by their nine-of-ten day", () => {
    const seen = drawn(<Effect effect={effect} />);
    expect(seen.text).toContain(
      "4 of 12 pairs move, 1 cross a promise. Promises broken on average: 0.3 now, 1.8 with it. From 200 runs.",
    );
    expect(seen.table("Pairs that cross their promise")).toEqual([
      {
        Pair: "TY-0401 Robin",
        Promised: "23 November 2026",
        "Nine of ten or more by, before": "20 November 2026",
        "Nine of ten or more by, after": "26 November 2026",
        "Moves, working days": "+4.0",
        "In hand, working days": "−2.5",
        Stands: "✕late",
      },
    ]);
    expect(seen.table("Pairs that move").map((row) => Object.values(row).slice(4))).toEqual([
      ["+4.0", "−2.5", "✕late"],
      ["−0.5", "–", "ino promise"],
      ["0.0", "+1.0", "!at risk"],
      ["+4.0", "−2.5", "✓safe"],
    ]);
    const none = drawn(<Effect effect={{ ...effect, crossing: [], moved: [] }} />);
    expect(none.text).toContain("Nobody crosses a promise.");
    expect(none.text).toContain("Nobody moves by half a working day or more.");
    expect([signedDays(1.25), signedDays(-12), signedDays(0)]).toEqual(["+1.3", "−12.0", "0.0"]);
  });

  it("sets the ways on side by side, their cost for whom it concerns", () => {
    const option = (known: Parameters<typeof partly<RemedyOption>>[0]) =>
      partly<RemedyOption>({
        way: "wait",
        costCents: 0,
        places: [],
        crossing: [],
        saved: 0,
        expectedLate: 1.5,
        ...known,
      });
    const options = [
      option({ crossing: [{ serial: "TY-0401" }, { serial: "TY-0402" }] }),
      option({ way: "overtime", figures: { hours: 2, days: 5 }, costCents: 123_450, saved: 2, expectedLate: 0.125 }),
      option({ way: "swap-with-slack", places: [{ pairId: "p-1", placeMinute: 1 }] }),
    ];
    const owner = drawn(<Ways options={options} showCost />).table("Ways on");
    expect(owner).toEqual([
      {
        "Way on": "Wait: change nothing",
        Cost: "$0",
        "Promises saved": "0",
        "Still crossing": "TY-0401, TY-0402",
        "Promises broken on average": "1.50",
      },
      {
        "Way on": "2 h longer each evening for 5 working days",
        Cost: "$1,234.50",
        "Promises saved": "2",
        "Still crossing": "nobody",
        "Promises broken on average": "0.13",
      },
      {
        "Way on": "Put the pairs in danger before pairs that have days in handPairs that change place: 1.",
        Cost: "$0",
        "Promises saved": "0",
        "Still crossing": "nobody",
        "Promises broken on average": "1.50",
      },
    ]);
    expect(Object.keys(drawn(<Ways options={options} showCost={false} />).table("Ways on")[0] ?? {})).not.toContain(
      "Cost",
    );
  });

  it("hands out a base that is short in metres, with what fits for the others", () => {
    const need = (known: object) => ({
      pairId: "p-1",
      serial: "TY-0401",
      skierFirstName: "Robin",
      needM: 3.9,
      isServed: true,
      counterchangedWith: null,
      alternatives: [],
      ...known,
    });
    const base = partly<BaseShortage>({
      label: "Lake",
      neededM: 11.7,
      leftM: 4,
      shortM: 7.7,
      expectedOn: "2026-12-01",
      pairs: [
        need({}),
        need({
          pairId: "p-2",
          serial: "TY-0402",
          isServed: false,
          counterchangedWith: { label: "Black", lot: "K7" },
          alternatives: [
            { colour: "moss", label: "Moss", lot: "K7" },
            { colour: "red", label: "Red", lot: "K8" },
          ],
        }),
        need({ pairId: "p-3", serial: "TY-0403", isServed: false, counterchangedWith: { label: "Black", lot: null } }),
        need({ pairId: "p-4", serial: "TY-0404", counterchangedWith: { label: "Black", lot: "K7" } }),
      ] as never,
    });
    const seen = drawn(<Base base={base} />);
    expect(seen.text).toContain("Lake: 11.70 m are to be cut, 4.00 m are left, 7.70 m are short.");
    expect(seen.table("Who gets what is left").map((row) => Object.values(row))).toEqual([
      ["TY-0401 Robin", "3.90", "✓from what is left", "–"],
      [
        "TY-0402 Robin",
        "3.90",
        "!waits for 1 DecemberLetters counterchanged with Black. New material must be of thickness lot K7, or both bases are cut from a new lot.",
        "Moss (lot K7), Red (lot K8)",
      ],
      [
        "TY-0403 Robin",
        "3.90",
        "!waits for 1 DecemberLetters counterchanged with Black. None of Black is on the shelf: cut both bases from one lot.",
        "none on the shelf",
      ],
      ["TY-0404 Robin", "3.90", "✓from what is leftLetters counterchanged with Black.", "–"],
    ]);
  });

  it("lists what is in force, and lets who may take it back", () => {
    const change = partly<FloorChangeView>({
      floorChangeId: "f-1",
      kind: "overtime",
      fromAt: denver("16:30"),
      toAt: denver("18:30"),
      reason: "season",
      costCents: 50_000,
      madeAt: denver("08:00"),
      madeBy: "Ola",
    });
    const seen = drawn(
      <InForce
        changes={[
          change,
          { ...change, floorChangeId: "f-2" as never, toAt: null, costCents: null },
          { ...change, floorChangeId: "f-3" as never, fromAt: null },
        ]}
        mayWithdraw
      />,
    );
    expect(seen.all("li > p:first-child").map(({ text }) => text)).toEqual([
      "overtime, 10 Nov 2026, 16:30 – 10 Nov 2026, 18:30, $500",
      "overtime, 10 Nov 2026, 16:30 – for good",
      "overtime, $500",
    ]);
    expect(seen.text).toContain("season (Ola, 10 Nov 2026, 08:00)");
    expect(seen.forms.map(({ sent }) => sent)).toEqual(
      ["f-1", "f-2", "f-3"].map((id) => ({ floorChangeId: id, reason: "" })),
    );
    expect(drawn(<InForce changes={[change]} mayWithdraw={false} />).forms).toEqual([]);
    expect(drawn(<InForce changes={[]} mayWithdraw />).text).toBe("The floor is as its settings say.");
  });
});
