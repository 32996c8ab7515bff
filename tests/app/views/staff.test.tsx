/** The shop's pages, drawn from views made by hand: each figure under its heading, each button for whom it is meant. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import ClubPage from "#app/shop/(staff)/clubs/[clubId]/page.tsx";
import ClubsPage, * as clubsModule from "#app/shop/(staff)/clubs/page.tsx";
import MeasuredPage from "#app/shop/(staff)/measured/page.tsx";
import NoticesPage from "#app/shop/(staff)/notices/page.tsx";
import HardDatePage from "#app/shop/(staff)/orders/[orderId]/hard-date/page.tsx";
import DeskPage from "#app/shop/(staff)/page.tsx";
import { Guessing } from "#app/shop/(staff)/people/guessing.tsx";
import KeptPromisesPage from "#app/shop/(staff)/promises/page.tsx";
import IncidentPage from "#app/shop/(staff)/queue/breakdown/[incidentId]/page.tsx";
import QueueOrderPage from "#app/shop/(staff)/queue/order/page.tsx";
import WhatIfPage from "#app/shop/(staff)/queue/what-if/page.tsx";
import SearchPage from "#app/shop/(staff)/search/page.tsx";
import StripsShortPage from "#app/shop/(staff)/strips/[code]/page.tsx";
import StripsPage from "#app/shop/(staff)/strips/page.tsx";
import breakdownWords from "#content/copy/breakdowns.json";
import type {
  ClubView,
  DeskOverview,
  HardDatePreview,
  IncidentView,
  KeptPromises,
  LearningView,
  NoticeView,
  OrderView,
  QueueEffect,
  QueueOrder,
  StripStockView,
  StripsShortView,
} from "#services";
import { catalog } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";
import { sentTo, shown, tabTitle } from "../../support/page-render";
import { refusal, seeAs, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));

/** Winter in Denver is seven hours behind UTC. */
const denver = (time: string, day = "2026-11-10") =>
  new Date(Date.parse(`${day}T${time}:00.000Z`) + 7 * 3_600_000).toISOString();
const range = (p50: string, p90: string) => ({ p50, p90 });
const effect = partly<QueueEffect>({
  basis: { runs: 200 },
  pairs: 12,
  crossing: [],
  moved: [],
  rescued: [],
  slack: [],
  expectedLate: { before: 1, after: 2 },
  oneMore: null,
});

beforeEach(() => seeAs("owner"));

describe("kept promises", () => {
  const share = (level: "p50" | "p80" | "p90", orders: number, kept: number, low = 0, high = orders) => ({
    level,
    expected: 0.9,
    orders,
    kept,
    band: { low, high },
  });
  const period = (month: string | null, orders: number, kept: number, meanLateness: number | null = -1.26) => ({
    month,
    shares: [share("p50", orders, 3, 1, 8), share("p80", orders, 7, 5, 9), share("p90", orders, kept, 6, 10)],
    onTime: { orders, kept: 2 },
    meanLateness,
  });
  const kept = (known: Parameters<typeof partly<KeptPromises>>[0]) =>
    tell(
      "readKeptPromises",
      partly<KeptPromises>({ all: period(null, 40, 36), months: [], orders: [], open: 7, overdue: 2, ...known }),
    );
  beforeEach(() => tell("readPromiseRisk", null));

  const verdict = async (orders: number, keptCount: number) => {
    kept({ all: period(null, orders, keptCount) });
    return (await shown(KeptPromisesPage)).part("All promises whose day has passed").text;
  };

  it("judges the last day by what was told with it from twenty orders on, give or take 5 of 100", async () => {
    expect(await verdict(0, 0)).toContain("No promised day has passed yet.");
    expect(await verdict(19, 19)).toContain("19 orders so far. Under some 20 chance decides");
    expect(await verdict(20, 17)).toContain("the dates are honest");
    expect(await verdict(100, 84)).toContain("Over 5 of 100 fewer");
    expect(await verdict(100, 95)).toContain("the dates are honest");
    expect(await verdict(100, 96)).toContain("Over 5 of 100 more");
  });

  it("shows each level's share under its own heading, month by month and all together", async () => {
    const order = {
      orderId: "o-1",
      number: "O-301",
      fixedAt: denver("10:00"),
      p50: "2026-11-18",
      p80: "2026-11-19",
      p90: "2026-11-20",
      shares: { p50: 0.74, p80: 0.8, p90: 0.93 },
      promisedOn: "2026-11-23",
      readyOn: null,
      changes: [{ at: denver("11:00"), to: "2026-12-01", reason: "asked", by: "Ola" }],
    };
    kept({
      months: [period("2026-10", 8, 6, 0.5), period("2026-11", 0, 0, null)],
      orders: [
        order,
        {
          ...order,
          orderId: "o-2",
          number: "O-302",
          p50: null,
          p80: null,
          shares: null,
          readyOn: "2026-11-17",
          changes: [],
        },
      ],
    });
    const page = await shown(KeptPromisesPage);
    expect(page.text).toContain("7 promises are open; 2 of them are past their nine-of-ten day.");
    expect(page.table("By month of the clock start")).toEqual([
      {
        Month: "October 2026",
        "First day (half or more)": "38 %3 of 8; told 90 %, by chance 1–8",
        "Eight of ten or more by": "88 %7 of 8; told 90 %, by chance 5–9",
        "Last day (nine of ten or more)": "75 %6 of 8; told 90 %, by chance 6–10",
        "By the promised day": "2 of 8",
        "Mean days after the last day (− before)": "+0.5",
      },
      {
        Month: "November 2026",
        "First day (half or more)": "–",
        "Eight of ten or more by": "–",
        "Last day (nine of ten or more)": "–",
        "By the promised day": "–",
        "Mean days after the last day (− before)": "–",
      },
      {
        Month: "all",
        "First day (half or more)": "8 %3 of 40; told 90 %, by chance 1–8",
        "Eight of ten or more by": "18 %7 of 40; told 90 %, by chance 5–9",
        "Last day (nine of ten or more)": "90 %36 of 40; told 90 %, by chance 6–10",
        "By the promised day": "2 of 40",
        "Mean days after the last day (− before)": "−1.3",
      },
    ]);
    expect(page.numbersOf("By month of the clock start")).toEqual(["Mean days after the last day (− before)"]);
    expect(page.table("Every promise")).toEqual([
      {
        Order: "O-301",
        "Clock started": "10 Nov 2026, 10:00",
        "First day (half or more)": "18 November 2026three of four",
        "Eight of ten or more by": "19 November 2026four of five",
        "Last day (nine of ten or more)": "20 November 202619 of 20",
        "Promised for": "23 November 2026",
        Ready: "open",
        "Changed since": "to 1 December 2026: asked (Ola)",
      },
      {
        Order: "O-302",
        "Clock started": "10 Nov 2026, 10:00",
        "First day (half or more)": "–",
        "Eight of ten or more by": "–",
        "Last day (nine of ten or more)": "20 November 2026",
        "Promised for": "23 November 2026",
        Ready: "17 November 2026",
        "Changed since": "–",
      },
    ]);
    expect(page.csv("kept-promises.csv")).toEqual([
      ["month", "by_p50", "of_p50", "by_p80", "of_p80", "by_p90", "of_p90", "on_time", "of_promises", "mean_days_late"],
      ["2026-10", "3", "8", "7", "8", "6", "8", "2", "8", "0.5"],
      ["2026-11", "3", "0", "7", "0", "0", "0", "2", "0", ""],
      ["all", "3", "40", "7", "40", "36", "40", "2", "40", "-1.26"],
    ]);
    expect(page.csv("promises-told.csv").slice(1)).toEqual([
      ["O-301", denver("10:00"), "2026-11-18", "2026-11-19", "2026-11-20", "2026-11-23", "", "1"],
      ["O-302", denver("10:00"), "", "", "2026-11-20", "2026-11-23", "2026-11-17", "0"],
    ]);
    // Shares from 0 at y 172 to 1 at y 34: 6 of 8 is 172 − 0.75 · 138.
    const svg = page.one("svg[role=img]");
    expect(
      svg
        .all("circle")
        .slice(1)
        .map((dot) => [dot.attribute("cx"), dot.attribute("cy")].map(Number)),
    ).toEqual([[198, 68.5]]);
    // What chance gives, 6 to 10 of 8 orders, is from 0.75 to 1.25.
    expect(svg.all("path").at(-1)?.attribute("d")).toBe("M194 -0.5h8M198 -0.5V68.5M194 68.5h8");
    expect(svg.all("line").map((line) => Math.round(Number(line.attribute("y1")) * 10) / 10)).toEqual([
      172, 103, 34, 47.8,
    ]);
    expect(svg.all("text").map(({ text }) => text)).toEqual([
      "ready by that day",
      "what chance allows",
      "0 %",
      "50 %",
      "100 %",
      "nine of ten",
      "Oct 26",
    ]);
  });

  it("names every second month where seven have no room", async () => {
    kept({ months: ["03", "04", "05", "06", "07", "08", "09"].map((month) => period(`2026-${month}`, 8, 6)) });
    const names = (await shown(KeptPromisesPage))
      .one("svg[role=img]")
      .all("text")
      .map(({ text }) => text)
      .filter((text) => text.endsWith("26"));
    expect(names).toEqual(["Mar 26", "May 26", "Jul 26", "Sep 26"]);
    // Names stand 8 px above the lower edge, in the middle under their dots.
    const svg = (await shown(KeptPromisesPage)).one("svg[role=img]");
    const months = svg.all("text").filter(({ text }) => text.endsWith("26"));
    expect(new Set(months.map((text) => text.attribute("y")))).toEqual(new Set(["192"]));
    expect(months.map((text) => text.attribute("x"))).toEqual(
      svg
        .all("circle")
        .slice(1)
        .filter((_, index) => index % 2 === 0)
        .map((dot) => dot.attribute("cx")),
    );
    kept({});
    expect((await shown(KeptPromisesPage)).all("svg[role=img]")).toEqual([]);
  });
});

describe("letters", () => {
  const notice = (known: Parameters<typeof partly<NoticeView>>[0]) =>
    partly<NoticeView>({
      noticeId: "n-1",
      orderId: "o-1",
      orderNumber: "O-301",
      recipient: "Robin Alder",
      kind: "delay",
      state: "draft",
      version: 2,
      body: "Dear Robin,\nlater.",
      draftedAt: denver("10:00"),
      decided: null,
      byMail: true,
      letter: null,
      ...known,
    });
  it("wait for a person with their text, and are listed once decided", async () => {
    const decided = { at: denver("16:00"), by: "Desk 1", reason: null };
    tell("listNotices", [
      notice({}),
      notice({ noticeId: "n-2", state: "sent", decided }),
      notice({ noticeId: "n-4", state: "sent", letter: "waiting", decided }),
      notice({ noticeId: "n-5", state: "sent", letter: "sent", decided }),
      notice({ noticeId: "n-6", state: "sent", letter: "dead", decided }),
      notice({ noticeId: "n-7", state: "sent", byMail: false, decided }),
      notice({ noticeId: "n-3", kind: "colour-offer", state: "dropped", decided: { ...decided, reason: "called" } }),
    ]);
    const page = await shown(NoticesPage);
    expect(page.links["Delay: O-301, to Robin Alder"]).toBe("/shop/orders/o-1");
    expect(page.text).toContain("Drafted 10 Nov 2026, 10:00");
    expect(page.forms.map(({ sent, buttons }) => [buttons, sent])).toEqual([
      [["Send it"], { noticeId: "n-1", version: "2", body: "Dear Robin,\nlater." }],
      [["Drop it"], { noticeId: "n-1", version: "2", reason: "" }],
    ]);
    expect(page.table("Sent and dropped").map((row) => Object.values(row))).toEqual([
      ["O-301", "Delay", "sent", "Desk 1, 10 Nov 2026, 16:00", "–"],
      ["O-301", "Delay", "waiting to be sent", "Desk 1, 10 Nov 2026, 16:00", "–"],
      [
        "O-301",
        "Delay",
        "handed over: to the mail server, or as a file to the folder of letters",
        "Desk 1, 10 Nov 2026, 16:00",
        "–",
      ],
      ["O-301", "Delay", "given up, see above", "Desk 1, 10 Nov 2026, 16:00", "–"],
      ["O-301", "Delay", "told by a person", "Desk 1, 10 Nov 2026, 16:00", "–"],
      ["O-301", "Another colour", "dropped", "Desk 1, 10 Nov 2026, 16:00", "called"],
    ]);
    tell("listNotices", []);
    expect(page.text).not.toContain("No letter waits.");
    expect(page.one("textarea").attribute("rows")).toBe("12");
    tell("listNotices", []);
    const empty = await shown(NoticesPage);
    expect(empty.text).toContain("No letter waits.");
    expect(empty.text).toContain("No letter was sent or dropped yet.");
    tell("listNotices", refusal("not-allowed"));
    expect(await sentTo(NoticesPage)).toBe("not-found");
  });

  it("on their way are listed with tries and problem, and one that was given up can be sent again", async () => {
    const letter = { recipient: "robin@alder.example", subject: "Your pair", tries: 1, problem: null };
    tell("listNotices", []);
    tell("listWaitingLetters", []);
    expect((await shown(NoticesPage)).hasPart("On the way")).toBe(false);
    tell("listWaitingLetters", [
      { ...letter, letterId: "l-1", state: "waiting", canBeSentAgain: false },
      { ...letter, letterId: "l-2", state: "dead", tries: 9, problem: "no such mailbox", canBeSentAgain: true },
    ]);
    const page = await shown(NoticesPage);
    expect(page.table("On the way").map((row) => Object.values(row))).toEqual([
      ["robin@alder.example", "Your pair", "on its way", "1", "–", ""],
      ["robin@alder.example", "Your pair", "given up", "9", "no such mailbox", "Send it again"],
    ]);
    expect(page.forms.map(({ buttons, sent }) => [buttons, sent])).toEqual([[["Send it again"], { letterId: "l-2" }]]);
    tell("listWaitingLetters", []);
  });
});

describe("the strip rack", () => {
  it("names who lacks strips, what there is and what to buy", async () => {
    tell(
      "readStripStock",
      partly<StripStockView>({
        reorderLevel: 60,
        species: [
          {
            species: "ash",
            free: 41,
            reserved: 12,
            used: 8,
            toBuy: 19,
            bins: [
              { bin: "A3", free: 5, reserved: 2 },
              { bin: "A4", free: 7, reserved: 0 },
            ],
          },
        ],
        short: [
          { pairId: "p-1", serial: "TY-0401", promisedOn: "2026-11-23", held: 3, needed: 8, waitsUntil: null },
          { pairId: "p-2", serial: "TY-0402", promisedOn: null, held: 0, needed: 8, waitsUntil: "2026-12-01" },
        ],
      }),
    );
    const page = await shown(StripsPage);
    expect(page.table("Short").map((row) => Object.values(row))).toEqual([
      ["TY-0401", "3/8", "23 November 2026", "–"],
      ["TY-0402", "0/8", "–", "1 December 2026"],
    ]);
    expect(page.links["TY-0401"]).toBe("/shop/strips/TY-0401");
    expect(page.table("In the rack")).toEqual([
      { Species: "ash", Free: "41", Reserved: "12", Used: "8", "To buy": "19" },
    ]);
    expect(page.csv("strips.csv")).toEqual([
      ["species", "free", "reserved", "used", "to buy"],
      ["ash", "41", "12", "8", "19"],
    ]);
    expect(page.numbersOf("Short")).toEqual(["Held"]);
    expect(page.numbersOf("In the rack")).toEqual(["Free", "Reserved", "Used", "To buy"]);
    expect(page.numbersOf("ash, bins: 2")).toEqual(["Free", "Reserved"]);
    expect(page.text).toContain("Strips to buy to have 60 free of a species again.");
    expect(page.table("ash, bins: 2")).toEqual([
      { Bin: "A3", Free: "5", Reserved: "2" },
      { Bin: "A4", Free: "7", Reserved: "0" },
    ]);
    tell("readStripStock", partly<StripStockView>({ reorderLevel: 60, species: [], short: [] }));
    const empty = await shown(StripsPage);
    expect(empty.text).toContain("Every pair has its strips.");
    expect(empty.part("By bin").text).toContain("No strip has been measured yet.");
  });

  it("offers the ways out of one pair, and says first what waiting would do", async () => {
    const view = partly<StripsShortView>({
      pairId: "p-1",
      serial: "TY-0401",
      version: 4,
      isShort: true,
      why: [{ code: "too-few-strips", position: "I", usable: 2, needed: 4 }] as never,
      options: [
        { id: "w", kind: "wait" },
        {
          id: "t",
          kind: "take-from",
          fromPairId: "p-9",
          serial: "TY-0409",
          promisedOn: "2026-12-01",
          slackWorkingDays: 6,
        },
        {
          id: "s",
          kind: "other-species",
          position: "I",
          from: "ash",
          species: "beech",
          massG: 12.4,
          ratioPercent: -3.2,
          thicknessMm: 0.14,
          isDenseOutside: true,
        },
      ] as never,
      waiting: { movedWorkingDays: 4, standingAfter: "at-risk" },
    });
    tell("findPairByCode", { pairId: "p-1", serial: "TY-0401" });
    const asked: unknown[] = [];
    tell("stripsShort", (input: unknown) => {
      asked.push(input);
      return view;
    });
    const plain = await shown(StripsShortPage, { params: { code: "TY-0401" } });
    expect(plain.headings[0]).toBe("Strips for TY-0401");
    expect(plain.part("Why").items).toEqual(["I: 2 strips where 4 are needed"]);
    expect(plain.part("Wait for a batch").text).not.toContain("Waiting until then");
    const form = plain.form("Take this way");
    expect(form.sent).toEqual({ pairId: "p-1", version: "4", expectedOn: "", reason: "" });
    expect(Object.keys(form.fields.option?.choices ?? {})).toEqual(["w", "t", "s"]);
    expect(form.optional).toEqual(["expectedOn"]);
    expect(plain.forms[0]?.fields.expectedOn?.error).toBeNull();
    expect(form.fields.option?.choices.t).toContain("Take those of TY-0409, promised 1 December 2026");
    expect(form.fields.option?.choices.t).toContain("6 working days in hand");
    expect(form.fields.option?.choices.s).toContain("beech instead of ash at I");
    expect(form.fields.option?.choices.s).toContain("Dense wood belongs under the foot");
    const waiting = await shown(StripsShortPage, { params: { code: "TY-0401" }, query: { expectedOn: "2026-12-04" } });
    expect(asked.at(-1)).toEqual({ pairId: "p-1", expectedOn: "2026-12-04" });
    expect(waiting.part("Wait for a batch").text).toContain(
      "4 December 2026Waiting until then: 4 working days later, its promise at risk.",
    );
    expect(waiting.form("Take this way").sent.expectedOn).toBe("2026-12-04");
    tell("stripsShort", { ...view, waiting: null });
    expect(
      (await shown(StripsShortPage, { params: { code: "TY-0401" }, query: { expectedOn: "2026-12-04" } })).text,
    ).toContain("less than half a working day");
    // A day that cannot be: words at the field, the ways out all the same.
    tell("stripsShort", (input: { expectedOn?: string }) =>
      input.expectedOn === undefined ? view : refusal("day-past", { path: "expectedOn" }),
    );
    const wrong = await shown(StripsShortPage, { params: { code: "TY-0401" }, query: { expectedOn: "1999-01-01" } });
    expect(wrong.forms[0]?.fields.expectedOn?.error).toBeTruthy();
    expect(wrong.part("Wait for a batch").text).not.toContain("Waiting until then");
    expect(wrong.buttons).toContain("Take this way");
    seeAs("desk");
    tell("stripsShort", view);
    const desk = await shown(StripsShortPage, { params: { code: "TY-0401" } });
    expect(desk.buttons).not.toContain("Take this way");
    expect(desk.text).toContain("Makers and the owner decide this.");
    expect(desk.part("Way out").items).toHaveLength(3);
    expect(desk.part("Way out").items[1]).toContain("6 working days in hand");
    tell("stripsShort", { ...view, isShort: false });
    const fine = await shown(StripsShortPage, { params: { code: "TY-0401" } });
    expect(fine.text).toContain("This pair has all the strips it needs.");
    expect(fine.hasPart("Way out")).toBe(false);
    expect(fine.text).toContain("✓This pair has all");
  });
});

describe("measured pairs", () => {
  const residual = (known: object) => ({
    skiId: "TY-0401-L",
    pair: "TY-0401",
    measure: "massKg",
    measured: 1.8,
    predictedBefore: 1.7,
    predictedAfter: 1.75,
    studentised: 4.6,
    leftOut: false,
    ...known,
  });
  const suspect = residual({});
  const fits = residual({
    skiId: "TY-0402-L",
    pair: "TY-0402",
    measure: "springCentreNPerMm",
    measured: 3.81,
    predictedBefore: 3.6,
    predictedAfter: 3.7,
    studentised: 0.46,
  });
  const fitsWorse = residual({
    skiId: "TY-0403-R",
    measure: "camberMm",
    measured: 3.25,
    predictedBefore: 3,
    predictedAfter: 3.1,
    studentised: -1.2,
  });
  const out = residual({ skiId: "TY-0404-L", studentised: 9, leftOut: true });
  const learning = (known: Parameters<typeof partly<LearningView>>[0] = {}) =>
    tell(
      "readLearning",
      partly<LearningView>({
        calibration: {
          pairs: 21,
          enoughPairs: true,
          residuals: [fits, out, fitsWorse, suspect] as never,
          suspects: [suspect] as never,
          quality: [
            { measure: "massKg", readings: 42, biasBefore: 2.14, rmsBefore: 3.26, biasAfter: -0.12, rmsAfter: 1.05 },
            {
              measure: "camberMm",
              readings: 40,
              biasBefore: -0.253,
              rmsBefore: 0.404,
              biasAfter: 0.011,
              rmsAfter: 0.152,
            },
          ],
          factors: [
            { kind: "modulus", material: "ash", value: 1.08, sd: 0.02, learnt: 0.6 },
            { kind: "density", material: "nothing-known", value: 0.99, sd: 0.02, learnt: 0.2 },
            { kind: "core-offset", value: 0.12, sd: 0.02, learnt: 0.845 },
          ],
          corrections: { version: "CB-2" },
        },
        fingerprint: "f-7",
        leastPairs: 20,
        undecided: [],
        notCompared: [],
        decisions: [],
        books: [],
        ...known,
      }),
    );
  beforeEach(() => tell("activeCatalog", { engine: catalog, hash: "h" }));

  it("say how far computed was from measured, in the bench's units", async () => {
    learning();
    const page = await shown(MeasuredPage);
    // Four skis are read: one reading each.
    expect(page.text).toContain("21 pairs, 4 skis measured. A book needs 20 pairs.");
    expect(page.text).toContain("No book is in force");
    expect(page.text).not.toContain("Not compared");
    expect(page.table("How far computed was from measured")).toEqual([
      {
        Measure: "Mass",
        Readings: "42",
        "Average before": "+2.1 %",
        "Typical before": "3.3 %",
        "Average after": "-0.1 %",
        "Typical after": "1.1 %",
      },
      {
        Measure: "Camber",
        Readings: "40",
        "Average before": "-0.25 mm",
        "Typical before": "0.40 mm",
        "Average after": "+0.01 mm",
        "Typical after": "0.15 mm",
      },
    ]);
    expect(page.numbersOf("How far computed was from measured")).toHaveLength(5);
    expect(page.numbersOf("What the pairs teach")).toEqual(["Value", "Standard deviation", "Learnt"]);
    expect(page.numbersOf("All readings")).toEqual(["Measured", "Handbook", "With factors", "Scatters away"]);
    const ash = catalog.build.materials.woods.find(({ id }) => id === "ash")?.label ?? "";
    expect(page.table("What the pairs teach")).toEqual([
      { Factor: "Core milled thicker than told", Value: "0.12 mm", "Standard deviation": "0.02", Learnt: "85 %" },
      { Factor: `${ash}, stiffness`, Value: "1.080", "Standard deviation": "0.020", Learnt: "60 %" },
      { Factor: "nothing-known, density", Value: "0.990", "Standard deviation": "0.020", Learnt: "20 %" },
    ]);
    // Furthest from the handbook by its own deviation: 6 of the offset, 4 of ash; half a deviation is none.
    expect(page.text).toContain(`Most changed: Core milled thicker than told 0.12 mm; ${ash}, stiffness 1.080.`);
    expect(page.table("All readings").map((row) => Object.values(row))).toEqual([
      ["TY-0401-L", "Mass", "1800 g", "1700", "1750", "4.6", "does not fit"],
      ["TY-0404-L", "Mass", "1800 g", "1700", "1750", "9.0", "left out"],
      ["TY-0403-R", "Camber", "3.3 mm", "3.0", "3.1", "-1.2", "fits"],
      ["TY-0402-L", "Centre spring", "38.1 N/cm", "36.0", "37.0", "0.5", "fits"],
    ]);
    expect(page.links["Download as CSV"]).toBe("/shop/measured/csv");
    expect(page.text).toContain("Show all 4 readings");
    expect(page.text).toContain("None yet.");
    expect(page.text).toContain("None was approved yet.");
  });

  it("let the owner decide about a reading and approve a book, and nobody else", async () => {
    learning();
    const page = await shown(MeasuredPage);
    expect(page.part("Readings that do not fit").text).toContain("TY-0401-L, mass");
    expect(page.text).toContain("Read 1800 g, expected 1750 g: 5 times the usual scatter away.");
    const decide = page.form("Decide");
    expect(decide.sent).toEqual({
      serial: "TY-0401-L",
      measure: "massKg",
      value: "1.8",
      choice: "leave-out",
      reason: "",
    });
    expect(decide.fields.choice?.choices).toEqual({ "leave-out": "Leave it out", keep: "Keep it" });
    expect(page.hasPart("Make CB-2 of it")).toBe(true);
    expect(page.form("Approve CB-2").sent).toEqual({ fingerprint: "f-7" });
    expect(page.text).not.toContain("Not yet");
    expect(page.form("Add this pair").fields["left-massKg"]?.label).toContain("Left ski, mass");
    expect(page.form("Add this pair").fields["right-camberMm"]?.label).toContain("Right ski, camber");
    // A pair of the book is whole but for readings that were not taken.
    const add = page.form("Add this pair");
    expect(Object.keys(add.fields).filter((name) => !add.optional.includes(name))).toEqual([
      "serial",
      "model",
      "lengthCm",
      "core",
      "reinforcement",
      "flexRatio",
    ]);
    expect(add.optional.every((name) => /^(left|right)-/.test(name))).toBe(true);
    expect(page.text).toContain("Most changed:");
    seeAs("desk");
    const desk = await shown(MeasuredPage);
    expect(desk.buttons).toEqual([]);
    expect(desk.text).toContain("The owner decides.");
    expect(desk.text).toContain("Only the owner approves a book.");
    seeAs("maker");
    expect((await shown(MeasuredPage)).buttons).toEqual(["Add this pair"]);
  });

  it("wait for enough pairs, then for open decisions, and remember what was decided", async () => {
    learning({
      calibration: {
        pairs: 3,
        enoughPairs: false,
        residuals: [],
        suspects: [],
        quality: [],
        factors: [],
        corrections: { version: "CB-1" },
      },
      undecided: [suspect] as never,
    });
    const few = await shown(MeasuredPage);
    expect(few.text).toContain("Not yet: 3 of 20 pairs are measured.");
    expect(few.text).toContain("Every reading fits the others.");
    expect(few.text).not.toContain("Most changed");
    const decision = (known: object) => ({
      serial: "TY-0401-L",
      measure: "massKg",
      value: 1.8,
      choice: "keep",
      reason: "weighed twice",
      by: "Ola",
      at: denver("10:00"),
      holds: true,
      ...known,
    });
    learning({
      undecided: [suspect] as never,
      notCompared: ["TY-0390-L", "TY-0390-R"],
      decisions: [
        decision({}),
        decision({ holds: false, choice: "leave-out", reason: "slipped", at: denver("09:00") }),
      ] as never,
      books: [
        {
          version: "CB-1",
          effectiveAt: denver("08:00"),
          approvedBy: "Ola",
          summary: { pairs: 20, leftOut: [{ serial: "TY-0388-L", measure: "camberMm", reason: "warped" }] },
        },
        {
          version: "CB-0",
          effectiveAt: denver("08:00", "2026-10-01"),
          approvedBy: "Ada",
          summary: { pairs: 18, leftOut: [] },
        },
      ],
    });
    const page = await shown(MeasuredPage);
    expect(page.text).toContain("Readings that wait for a decision: 1.");
    expect(page.text).toContain("kept: weighed twice, Ola");
    expect(page.text).toContain("In force: CB-1, since 10 Nov 2026, 08:00, approved by Ola.");
    expect(page.text).toContain(
      "Not compared, because the catalogue no longer has what they were built of: TY-0390-L, TY-0390-R.",
    );
    expect(page.table("Decisions").map((row) => Object.values(row))).toEqual([
      ["10 Nov 2026, 10:00", "TY-0401-L, Mass 1800 g", "Keep it", "weighed twice", "Ola", "yes"],
      ["10 Nov 2026, 09:00", "TY-0401-L, Mass 1800 g", "Leave it out", "slipped", "Ola", "no, superseded"],
    ]);
    expect(page.table("Books").map((row) => Object.values(row))).toEqual([
      ["CB-1", "10 Nov 2026, 08:00", "20", "TY-0388-L, camber: warped", "Ola"],
      ["CB-0", expect.stringContaining("1 Oct 2026"), "18", "–", "Ada"],
    ]);
  });
});

describe("what if", () => {
  const days = (...all: readonly [number, number, number, number, number]) => ({
    p10: all[0],
    p50: all[1],
    p80: all[2],
    p90: all[3],
    p95: all[4],
  });
  const answer = {
    effect: {
      ...effect,
      rescued: [],
      slack: [
        { pairId: "p-1", before: 2, after: 7 },
        { pairId: "p-2", before: 4.9, after: 5 },
        { pairId: "p-3", before: -0.1, after: -3 },
      ],
      oneMore: {
        before: { ...range("2026-12-01", "2026-12-08"), workingDays: days(10, 14, 17, 20, 22) },
        after: { ...range("2026-11-26", "2026-12-02"), workingDays: days(8, 11, 13, 15, 18) },
      },
    },
    costCentsPerWeek: 160_000,
    ordersRescued: 3,
    canApply: true,
  };
  beforeEach(() => {
    tell("listFloorChanges", []);
    tell("askWhatIf", answer);
  });
  const ask = { kind: "hire", stations: "10, 11", from: "2026-12-01" };

  it("shows one more pair's days before and after, at their places on one scale", async () => {
    const page = await shown(WhatIfPage, { query: ask });
    const part = page.part("Before and after");
    expect(part.text).toContain("Orders rescued: 3. Costs $1,600 a week.");
    expect(part.text).toContain(
      "Half the runs are ready by 1 December 2026 before, by 26 November 2026 after; nine of ten by 8 December 2026 before, by 2 December 2026 after.",
    );
    expect(part.table("Working days until ready")).toEqual(
      [
        ["10 %", "10.0", "8.0"],
        ["50 %", "14.0", "11.0"],
        ["80 %", "17.0", "13.0"],
        ["90 %", "20.0", "15.0"],
        ["95 %", "22.0", "18.0"],
      ].map(([level, before, after]) => ({ "Share ready by then": level, Before: before, After: after })),
    );
    // Niced from 8 to 24 over 68 to 346 px: 17.375 px a day.
    const x = (day: number) => 68 + (day - 8) * 17.375;
    const paths = page
      .all("svg[aria-label='One more pair ordered now'] g[stroke] > path")
      .map((path) => path.attribute("d"));
    const [line, box, mark, lineAfter, boxAfter] = paths;
    const numbers = (text: string | null | undefined) => (text ?? "").match(/-?[\d.]+/g)?.map(Number) ?? [];
    const near = (found: readonly number[], expected: readonly number[]) => {
      for (const [index, value] of expected.entries()) expect(found[index]).toBeCloseTo(value, 6);
    };
    near(numbers(line), [x(10), 34, x(22)]);
    near(numbers(box), [x(14), 25, x(20), 43, x(14)]);
    near(numbers(mark), [x(17), 25, 43]);
    near(numbers(lineAfter), [x(8), 88, x(18)]);
    near(numbers(boxAfter), [x(11), 79, x(15), 97, x(11)]);
    const dashes = page
      .all("svg[aria-label='One more pair ordered now'] g[stroke]")
      .map((group) => [group.attribute("stroke"), group.one("path").attribute("stroke-dasharray")]);
    expect(dashes).toEqual([
      ["var(--pencil)", "5 3"],
      ["var(--larch)", null],
    ]);
    const ticks = page
      .all("svg[aria-label='One more pair ordered now'] g:not([stroke]) text")
      .map((text) => [Number(text.text), Number(text.attribute("x"))]);
    expect(ticks.length).toBeGreaterThan(2);
    for (const [day, at] of ticks) expect(at).toBeCloseTo(x(day ?? 0), 6);
    const words = page
      .all("svg[aria-label='One more pair ordered now'] g[stroke] text")
      .map((text) => [text.text, Number(text.attribute("x")), Number(text.attribute("y"))]);
    expect(words.map(([text]) => text)).toEqual([
      "Before",
      "50",
      "90",
      "10",
      "80",
      "95",
      "After",
      "50",
      "90",
      "10",
      "80",
      "95",
    ]);
    near(
      [words[1]?.[1] as number, words[2]?.[1] as number, words[1]?.[2] as number, words[3]?.[2] as number],
      [x(14), x(20), 21, 55],
    );
  });

  it("counts promises by weeks in hand, half-open, with bars as high as their counts", async () => {
    const page = await shown(WhatIfPage, { query: ask });
    expect(
      page.table("Negative is late, by the day nine of ten runs are ready.").map((row) => Object.values(row)),
    ).toEqual([
      ["−5 … 0", "1", "1"],
      ["0 … 5", "2", "0"],
      ["5 … 10", "0", "2"],
    ]);
    const bars = page
      .all("svg[aria-label='Working days in hand of every promise'] g > path")
      .map((path) => path.attribute("d") ?? "")
      .filter((d) => /^M[\d.]+ 118V/.test(d));
    // Two pairs reach the top at 26 px, one half of the way from the floor at 118, none stays on it.
    expect(bars.map((d) => Number(/V([\d.]+)h/.exec(d)?.[1]))).toEqual([72, 72, 26, 118, 118, 26]);
    expect(bars.map((d) => Math.round(Number(/^M([\d.]+) /.exec(d)?.[1]) * 10) / 10)).toEqual([
      38.7, 81.7, 146.1, 189, 253.4, 296.3,
    ]);
    tell("askWhatIf", { ...answer, costCentsPerWeek: null, effect: { ...answer.effect, slack: [], oneMore: null } });
    const bare = (await shown(WhatIfPage, { query: ask })).part("Before and after");
    expect(bare.text).toContain("Orders rescued: 3. Working");
    expect(bare.all("svg")).toEqual([]);
  });

  it("keeps what was asked, and is applied by whom it may", async () => {
    const page = await shown(WhatIfPage, { query: ask });
    expect(page.form("Make it so").sent).toMatchObject({ ...ask, reason: "" });
    expect(page.form("Make it so").sent.changeId).toMatch(/^new-/);
    expect(page.form("Ask the queue").sent).toEqual(ask);
    seeAs("desk");
    expect((await shown(WhatIfPage, { query: ask })).buttons).not.toContain("Make it so");
    seeAs("owner");
    tell("askWhatIf", { ...answer, canApply: false });
    expect((await shown(WhatIfPage, { query: ask })).buttons).not.toContain("Make it so");
    const first = await shown(WhatIfPage, { query: { kind: "closure" } });
    expect(first.form("Ask the queue").sent).toEqual({ kind: "closure", from: "2026-11-10", until: "2026-11-10" });
    expect(first.hasPart("Before and after")).toBe(false);
    const usual = await shown(WhatIfPage, { query: { kind: "supplier-lead" } });
    expect(usual.form("Ask the queue").sent.weeks).toBe("8");
    expect(usual.form("Ask the queue").fields.station?.choices).toMatchObject({
      release: "1 Release, build sheet, kit list",
      check: "14 QC, match, serial, photo, pack",
    });
    expect(usual.all("[aria-current]").map(({ text }) => text)).toEqual(["A supplier takes longer"]);
    const mould = (await shown(WhatIfPage, { query: { kind: "drop-mould" } })).form("Ask the queue");
    expect(Object.entries(mould.fields.mould?.choices ?? {}).every(([value, label]) => value === label)).toBe(true);
    expect(mould.sent).toMatchObject({ from: "2026-11-10", until: "2026-11-10" });
    for (const [kind, name, value] of [
      ["club-order", "pairs", "8"],
      ["rework", "factor", "2"],
    ] as const)
      expect((await shown(WhatIfPage, { query: { kind } })).form("Ask the queue").sent).toEqual({
        kind,
        [name]: value,
      });
    // A person at lay-up and press, by the numbers that people know stations by.
    const hire = (await shown(WhatIfPage, { query: { kind: "hire" } })).form("Ask the queue");
    expect([hire.sent.stations, hire.fields.stations?.label]).toEqual([
      "10, 11",
      "Stations the person can work at, such as 10, 11",
    ]);
    const none = await shown(WhatIfPage);
    expect(none.buttons).toEqual([]);
    expect(none.all("[aria-current]")).toEqual([]);
    expect(none.text).toContain("The floor is as its settings say.");
    const change = {
      floorChangeId: "f-1",
      kind: "overtime",
      fromAt: denver("16:30"),
      toAt: denver("18:30"),
      reason: "season",
      costCents: 50_000,
      madeAt: denver("08:00"),
      madeBy: "Ola",
    };
    tell("listFloorChanges", [change]);
    expect((await shown(WhatIfPage)).form("Withdraw").sent).toEqual({ floorChangeId: "f-1", reason: "" });
    seeAs("desk");
    const desk = await shown(WhatIfPage);
    expect(desk.buttons).toEqual([]);
    expect(desk.text).toContain("overtime, 10 Nov 2026, 16:30 – 10 Nov 2026, 18:30, $500");
    seeAs("owner");
    expect(none.links["A second press"]).toBe("/shop/queue/what-if?kind=second-press");
    const wrong = await shown(WhatIfPage, { query: { kind: "hire", stations: "ten", from: "soon" } });
    expect(wrong.form("Ask the queue").fields.stations?.error).toContain("Stations: numbers");
    expect(wrong.form("Ask the queue").fields.from?.error).toContain("From: a day is needed");
    expect(wrong.all("[autofocus]").map((field) => field.attribute("name"))).toEqual(["stations"]);
    tell("askWhatIf", refusal("not-found", { what: "mould" }));
    const refused = await shown(WhatIfPage, { query: ask });
    expect(refused.one("[role=alert]").text).not.toBe("");
    expect(refused.hasPart("Before and after")).toBe(false);
  });
});

describe("a breakdown", () => {
  const incident = (known: Parameters<typeof partly<IncidentView>>[0]) =>
    tell(
      "readIncident",
      partly<IncidentView>({
        incidentId: "i-1",
        number: "INC-3",
        state: "open",
        version: 5,
        note: "",
        crossing: 1,
        reportedAt: denver("10:00"),
        reportedBy: "Mo",
        input: { kind: "press-down", press: "press-1", from: denver("07:30"), until: denver("16:30") } as never,
        effect: effect as never,
        options: [
          { way: "wait", costCents: 0, places: [], crossing: [], saved: 0, expectedLate: 1.5 },
          {
            way: "second-press",
            figures: { weeks: 2 } as never,
            costCents: 90_000,
            places: [],
            crossing: [],
            saved: 2,
            expectedLate: 0.5,
          },
        ],
        base: null,
        chosen: null,
        closed: null,
        notices: [],
        history: [],
        ...known,
      }),
    );
  const page = () => shown(IncidentPage, { params: { incidentId: "i-1" } });
  it("is decided by the owner and closed by the floor, with its version", async () => {
    incident({ note: "plate burnt" });
    const open = await page();
    expect(open.headings[0]).toBe("INC-3: A press is down");
    expect(open.text).toContain("Reported by Mo, 10 Nov 2026, 10:00");
    expect(open.text).toContain("not decided yet");
    expect(open.text).toContain("Note: plate burnt");
    expect(open.form("It is over").sent).toEqual({ incidentId: "i-1", version: "5" });
    expect(open.form("Choose and draft the letters").sent).toMatchObject({
      incidentId: "i-1",
      version: "5",
      reason: "",
    });
    expect(open.table("Ways on").map((row) => row.Cost)).toEqual(["$0", "$900"]);
    seeAs("maker");
    const maker = await page();
    expect(maker.buttons).not.toContain("Choose and draft the letters");
    expect(Object.keys(maker.table("Ways on")[0] ?? {})).not.toContain("Cost");
    expect(maker.text).toContain("The owner chooses.");
    // Letters are the office's.
    expect(maker.hasPart("Letters")).toBe(false);
    expect(maker.buttons).toEqual(["It is over"]);
    seeAs("desk");
    const desk = await page();
    expect(desk.hasPart("Letters")).toBe(true);
    expect(desk.text).toContain("The owner chooses.");
    expect(desk.table("Ways on").map((row) => row.Cost)).toEqual(["$0", "$900"]);
    seeAs("owner");
    expect(open.text).not.toContain("The owner chooses.");
    expect(open.form("Choose and draft the letters").fields.option?.choices).toEqual({
      wait: "Wait: change nothing",
      "second-press": "Hire a second press for 2 weeks",
    });
    expect(open.hasPart("Who gets what is left")).toBe(false);
    incident({ input: { kind: "ski-rebuild" } as never, note: "" });
    const rebuild = await page();
    expect(rebuild.headings[0]).toBe("INC-3: One ski must be rebuilt");
    expect(rebuild.text).toContain(breakdownWords.incident.rebuild);
    expect(rebuild.text).not.toContain("Note:");
    incident({ state: "closed", closed: null });
    expect((await page()).text).not.toContain("Over since");
    incident({ state: "closed", closed: { at: denver("17:00"), by: "Ola" } });
    expect(open.text).toContain("!not decided yet");
    expect(open.text).toContain("No letters were drafted.");
    incident({
      notices: [{}, {}] as never,
      history: [{ seq: "1", at: denver("10:00"), by: "Mo", kind: "incident-reported", data: {} }] as never,
    });
    expect((await page()).text).toContain("Letters drafted: 2.");
    expect((await page()).part("History").items).toEqual(["10 Nov 2026, 10:00 Mo: reported"]);
    incident({ state: "closed", closed: { at: denver("17:00"), by: "Ola" } });
    const closed = await page();
    expect(closed.text).toContain("iover");
    expect(closed.text).toContain("Over since 10 Nov 2026, 17:00, said by Ola.");
    expect(closed.buttons).toEqual([]);
    incident({
      state: "decided",
      chosen: { option: "second-press", reason: "busy", costCents: 90_000, at: denver("11:00"), by: "Ola" },
    });
    const decided = await page();
    expect(decided.text).toContain(
      "Hire a second press for 2 weeks. “busy” Chosen by Ola, 10 Nov 2026, 11:00, cost $900",
    );
    expect(decided.buttons).toEqual(["It is over"]);
  });
});

describe("a hard date", () => {
  const order = partly<OrderView>({ orderId: "o-1", number: "O-301", version: 3, promiseClass: "promise" });
  const preview = (known: Parameters<typeof partly<HardDatePreview>>[0]) => {
    tell("readOrder", order);
    tell(
      "previewHardDate",
      partly<HardDatePreview>({
        orderId: "o-1",
        on: "2026-12-24",
        revision: 9,
        p95: { now: "2026-12-20", moved: "2026-12-18" },
        fits: "now",
        movedSerials: [],
        breaksPromises: [],
        feeCents: 0,
        feeTaxCents: 0,
        effect: null,
        ...known,
      }),
    );
    return shown(HardDatePage, { params: { orderId: "o-1" }, query: { on: "2026-12-24" } });
  };
  it("says whether the day can be kept, who gives way and what it costs", async () => {
    const now = await preview({});
    expect(now.headings[0]).toBe("Hard date for order O-301");
    expect(now.text).toContain("95 of 100 runs are ready by 20 December 2026.");
    expect(now.text).not.toContain("Nobody else moves.");
    expect(now.text).toContain("No fee: nobody gives way.");
    const fix = now.form("Approve the hard date");
    expect(fix.sent).toEqual({ orderId: "o-1", version: "3", revision: "9", on: "2026-12-24", planB: "" });
    const moved = await preview({
      fits: "by-moving",
      movedSerials: ["TY-0402", "TY-0403"],
      breaksPromises: ["TY-0403"],
      feeCents: 15_000,
      feeTaxCents: 900,
    });
    expect(moved.text).toContain(
      "It stands too late now (20 December 2026). Moved forward, 95 of 100 runs are ready by 18 December 2026.",
    );
    expect(moved.text).toContain("Who gives way: TY-0402, TY-0403.");
    expect(moved.text).toContain("These promises would stand worse: TY-0403.");
    expect(moved.text).toContain("Rush fee: $150.00, with tax $159.00");
    expect(moved.form("Approve the hard date").sent).toMatchObject({ planB: "", overrideReason: "" });
    expect((await preview({ fits: "by-moving" })).text).toContain("Nobody else moves.");
    const never = await preview({ fits: "not-at-all" });
    expect(never.text).toContain("ready only by 18 December 2026.");
    expect(never.buttons).not.toContain("Approve the hard date");
    seeAs("desk");
    const desk = await preview({});
    expect(desk.buttons).not.toContain("Approve the hard date");
    expect(desk.text).toContain("Only an owner may approve it.");
  });
  it("puts a wrong day's words beside the day", async () => {
    tell("readOrder", order);
    const wrong = await shown(HardDatePage, { params: { orderId: "o-1" }, query: { on: "2026-13-01" } });
    expect(wrong.forms[0]?.fields.on).toMatchObject({
      value: "2026-13-01",
      error: expect.stringContaining("not “2026-13-01”"),
    });
    tell("previewHardDate", refusal("day-past", { path: "on" }));
    const past = await shown(HardDatePage, { params: { orderId: "o-1" }, query: { on: "2020-01-01" } });
    expect(past.forms[0]?.fields.on?.error).toBeTruthy();
    expect(past.all("[role=status]")).toEqual([]);
    tell("previewHardDate", refusal("no-slot"));
    const lost = await shown(HardDatePage, { params: { orderId: "o-1" }, query: { on: "2026-12-24" } });
    expect(lost.forms[0]?.fields.on?.error).toBeNull();
    expect(lost.one("[role=status]").text).not.toBe("");
    const first = await shown(HardDatePage, { params: { orderId: "o-1" } });
    expect(first.forms[0]?.fields.on).toMatchObject({ value: "", error: null });
    expect(first.buttons).toEqual(["Look"]);
  });
});

describe("somebody guessing at a sign-in", () => {
  it("is told by name, how often and when last, with the way to People from elsewhere", () => {
    const guessing = [{ staffId: "s-2", name: "Mo", times: 7, lastAt: denver("09:30") }];
    const notice = drawn(<Guessing guessing={guessing} href="/shop/people" />);
    expect(notice.text).toContain("Somebody is guessing how to sign in as Mo");
    expect(notice.text).toContain("refused 7 times this week, last on 10 Nov 2026, 09:30.");
    expect(notice.links).toEqual({ "Look at People": "/shop/people" });
    expect(drawn(<Guessing guessing={guessing} />).links).toEqual({});
    expect(drawn(<Guessing guessing={[]} />).text).toBe("");
  });
});

describe("the order of the queue", () => {
  const place = (index: number, fixedBecause: string | null = null) => ({
    pairId: `p-${index}`,
    serial: `TY-040${index}`,
    skierFirstName: "Robin",
    ski: "Midlow 95, 178 cm",
    mould: "M",
    promisedOn: null,
    expected: null,
    standing: "open",
    isByHand: false,
    fixedBecause,
  });
  beforeEach(() => {
    tell(
      "readQueueOrder",
      partly<QueueOrder>({
        revision: 9,
        places: [place(1, "frozen"), place(2), place(3)] as never,
        moves: [
          {
            decisionId: "d-1",
            at: denver("10:00"),
            by: "Ola",
            reason: "asked",
            serials: ["TY-0402", "TY-0403"],
            undone: null,
          },
          {
            decisionId: "d-2",
            at: denver("09:00"),
            by: "Ola",
            reason: "tried",
            serials: ["TY-0401"],
            undone: { at: denver("09:30"), by: "Mo" },
          },
        ],
      }),
    );
  });
  it("shows a move's effect before it counts, with the queue's revision", async () => {
    const asked: unknown[] = [];
    tell("previewMove", (input: unknown) => {
      asked.push(input);
      return {
        pairId: "p-3",
        serial: "TY-0403",
        before: { pairId: "p-2", serial: "TY-0402" },
        fromPosition: 3,
        toPosition: 2,
        revision: 9,
        effect,
      };
    });
    const page = await shown(QueueOrderPage, { query: { move: "p-3", before: "p-2" } });
    expect(asked).toEqual([{ pairId: "p-3", before: "p-2" }]);
    expect(page.hasPart("TY-0403 from place 3 to place 2")).toBe(true);
    expect(page.form("Move it").sent).toEqual({ pairId: "p-3", before: "p-2", revision: "9", reason: "" });
    const choose = page.form("Show the effect");
    expect(Object.keys(choose.fields.move?.choices ?? {})).toEqual(["p-2", "p-3"]);
    expect(choose.fields.before?.choices).toEqual({
      "": "behind all others",
      "p-1": "TY-0401, Midlow 95, 178 cm",
      "p-2": "TY-0402, Midlow 95, 178 cm",
      "p-3": "TY-0403, Midlow 95, 178 cm",
    });
    const moves = page.part("Moved lately");
    expect(moves.items[0]).toContain("TY-0402, TY-0403: asked (Ola, 10 Nov 2026, 10:00)");
    expect(moves.items[1]).toContain("taken back by Mo, 10 Nov 2026, 09:30");
    expect(moves.forms.map(({ sent }) => sent)).toEqual([{ decisionId: "d-1" }]);
    await shown(QueueOrderPage, { query: { move: "p-3", before: "" } });
    expect(asked.at(-1)).toEqual({ pairId: "p-3", before: null });
    tell("previewMove", refusal("not-found", { what: "pair" }));
    const refused = await shown(QueueOrderPage, { query: { move: "p-9" } });
    expect(refused.one("[role=alert]").text).not.toBe("");
    expect(refused.buttons).not.toContain("Move it");
  });
  it("is paged by fifty, each place with its number in the whole of it, and leads to its neighbours", async () => {
    const places = Array.from({ length: 120 }, (_, index) => ({ ...place(index), pairId: `p-${index}` }));
    tell("readQueueOrder", partly<QueueOrder>({ revision: 9, places: places as never, moves: [] }));
    const numbers = async (page: string) => {
      const shownPage = await shown(QueueOrderPage, { query: { page } });
      const rows = shownPage.table("Open pairs in the order in which they are served").map((row) => Number(row["No."]));
      return [rows[0], rows.at(-1), shownPage.links["Earlier in the list"], shownPage.links["Further down the list"]];
    };
    const at = (page: number) => `/shop/queue/order?page=${page}`;
    expect(await numbers("1")).toEqual([1, 50, undefined, at(2)]);
    expect(await numbers("2")).toEqual([51, 100, at(1), at(3)]);
    expect(await numbers("9")).toEqual([101, 120, at(2), undefined]);
    // The places to move to: this page's, and the first of every other.
    const choose = (await shown(QueueOrderPage, { query: { page: "2" } })).form("Show the effect");
    expect(Object.keys(choose.fields.before?.choices ?? {})).toEqual([
      "",
      "p-0",
      ...places.slice(50, 100).map(({ pairId }) => pairId),
      "p-100",
    ]);
    expect(Object.keys(choose.fields.move?.choices ?? {})).toEqual(places.slice(50, 100).map(({ pairId }) => pairId));
  });
  it("says so where nobody has moved anything, and offers no move where every place is fixed", async () => {
    const none = "Nobody has moved a pair by hand.";
    expect((await shown(QueueOrderPage)).text).not.toContain(none);
    tell("readQueueOrder", partly<QueueOrder>({ revision: 9, places: [place(1, "frozen")] as never, moves: [] }));
    const page = await shown(QueueOrderPage);
    expect(page.part("Moved lately").text).toContain(none);
    expect(page.buttons).not.toContain("Show the effect");
  });
  it("lets nobody move who may not, and an owner alone give a whole order", async () => {
    const order = { lateMinutes: 900, changeoverMinutes: 120 };
    tell("suggestOrder", {
      revision: 9,
      places: [
        { pairId: "p-3", serial: "TY-0403", placeMinute: 5 },
        { pairId: "p-2", serial: "TY-0402", placeMinute: 8 },
      ],
      before: order,
      after: { lateMinutes: 0, changeoverMinutes: 90 },
      effect,
    });
    const owner = await shown(QueueOrderPage, { query: { suggest: "yes" } });
    expect(owner.text).toContain("2 pairs get another place: TY-0403, TY-0402.");
    expect(owner.text).toContain(
      "Planned late minutes 900 → 0 (a hard date counts three times); changing moulds 120 → 90 min.",
    );
    expect(owner.form("Give these places").sent).toEqual({ revision: "9", places: "p-3:5,p-2:8", reason: "" });
    expect(owner.text).not.toContain("Only an owner gives a whole new order.");
    seeAs("desk");
    const desk = await shown(QueueOrderPage, { query: { suggest: "yes" } });
    expect(desk.text).toContain("Only an owner gives a whole new order.");
    expect(desk.buttons).not.toContain("Give these places");
    expect(desk.buttons).toContain("Show the effect");
    seeAs("owner");
    expect((await shown(QueueOrderPage)).text).not.toContain("get another place");
    expect((await shown(QueueOrderPage)).form("Look for a better order").sent).toEqual({ suggest: "yes" });
    tell("suggestOrder", { revision: 9, places: [], before: order, after: order, effect: null });
    expect((await shown(QueueOrderPage, { query: { suggest: "yes" } })).text).toContain("No better order was found");
    seeAs("maker");
    const maker = await shown(QueueOrderPage, { query: { move: "p-3", suggest: "yes" } });
    expect(maker.buttons).toEqual([]);
    expect(maker.text).toContain("TY-0402, TY-0403: asked");
    expect(maker.hasPart("A better order")).toBe(false);
    expect(maker.text).not.toContain("Or drag a row");
  });
});

describe("the desk", () => {
  const counts = {
    drafts: 11,
    callBacksDue: 12,
    quotesOpen: 13,
    quotesExpiringSoon: 14,
    quotesOnOldBook: 15,
    ordersToConfirm: 22,
    depositsWaiting: 16,
    proofsWaiting: 17,
    rightsWaiting: 18,
    reviewsAsked: 19,
    pairsInBuild: 20,
    promisesAtRisk: 21,
  };
  const overview = partly<DeskOverview>({
    unreadable: [],
    today: "2026-11-10",
    counts,
    callBacks: [{ sheetId: "s-1", name: null, phone: "303 555 0101", at: denver("15:00"), reason: "after work" }],
    reviews: [{ sheetId: "s-2", name: "Kim", note: "very light", askedAt: denver("08:00") }],
    quotesExpiring: [{ quoteId: "q-1", number: "Q-101", name: "Robin", validUntilDay: "2026-11-12" }],
    waiting: [
      { pairId: "p-1", serial: "TY-0401", skierFirstName: "Robin", waitingFor: ["proof"], since: denver("09:00") },
    ],
    atRisk: [
      {
        pairId: "p-2",
        serial: "TY-0402",
        now: null,
        promisedOn: "2026-11-20",
        expected: range("2026-11-18", "2026-11-24"),
        slackDays: -2,
      },
    ],
  });
  const draft = (index: number) => ({
    sheetId: `s-${index}`,
    name: null,
    phone: `303 555 01${index}`,
    answered: 3,
    lease: index === 1 ? { holder: "Desk 2" } : null,
    changedAt: denver("10:00"),
    updatedAt: denver("10:00"),
  });
  const drafts = (count: number) => ({
    rows: Array.from({ length: count }, (_, index) => draft(index + 1)),
    total: count,
    page: 1,
    pageSize: 50,
    unreadable: [],
  });
  it("counts what waits, each figure leading to its list", async () => {
    tell("deskOverview", overview);
    tell("listDrafts", drafts(9));
    const page = await shown(DeskPage);
    const figures = page
      .one("ul")
      .all("a")
      .map((link) => [link.text, link.attribute("href")]);
    expect(figures).toEqual([
      ["11open drafts", "/shop/call"],
      ["12calls back today", "#call-backs"],
      ["13quotes open", "/shop/quotes?state=open"],
      ["14quotes that end soon", "#expiring"],
      ["15quotes on an old price book", "/shop/quotes?onOldBook=true"],
      ["22orders to confirm", "/shop/confirmations"],
      ["16deposits waiting", "/shop/orders?waitingFor=deposit"],
      ["17proofs waiting", "/shop/orders?waitingFor=proof"],
      ["18rights waiting", "/shop/orders?waitingFor=rights"],
      ["19sheets for the owner", "#reviews"],
      ["20pairs in build", "/shop/queue?view=promises"],
      ["21promises at risk", "#at-risk"],
    ]);
    expect(page.all("ul .text-iron").map(({ text }) => text)).toEqual(["21"]);
    expect(page.table("Call back today")).toEqual([
      { When: "10 Nov 2026, 15:00", Who: "no name yet", Telephone: "303 555 0101", Why: "after work" },
    ]);
    expect(page.links["303 555 0101"]).toBe("tel:303 555 0101");
    expect(page.table("For the owner to look at").map((row) => Object.values(row))).toEqual([
      ["Kim", "very light", "10 Nov 2026, 08:00"],
    ]);
    expect(page.table("Quotes that end soon").map((row) => Object.values(row))).toEqual([
      ["Q-101", "Robin", "12 November 2026"],
    ]);
    expect(page.table("Promises at risk").map((row) => Object.values(row))).toEqual([
      ["TY-0402", "", "20 November 2026", "24 November 2026", "✕−2"],
    ]);
    expect(page.table("Waiting on the customer").map((row) => Object.values(row))).toEqual([
      ["TY-0401", "Robin", "!proof", "10 Nov 2026, 09:00"],
    ]);
    expect(page.table("Drafts")).toHaveLength(8);
    expect(page.table("Drafts")[0]).toMatchObject({
      Who: "303 555 011",
      Telephone: "303 555 011",
      Answered: "3",
      "Open with": "Desk 2",
    });
    expect(page.table("Drafts")[1]?.["Open with"]).toBe("nobody");
    expect(page.numbersOf("Drafts")).toEqual(["Answered"]);
    expect(page.links["All drafts"]).toBe("/shop/call#drafts");
    tell("listDrafts", drafts(8));
    tell("deskOverview", { ...overview, reviews: [], counts: { ...counts, promisesAtRisk: 0 } });
    const calm = await shown(DeskPage);
    expect(calm.links["All drafts"]).toBeUndefined();
    expect(calm.hasPart("For the owner to look at")).toBe(false);
    expect(calm.all("ul .text-iron")).toEqual([]);
    const row = { table: "pairs", row: "TY-0402", column: "spec", why: "no model" };
    const waiting = (count: number) =>
      Array.from({ length: count }, (_, index) => ({ ...overview.waiting[0], pairId: `p-${index}` }));
    tell("deskOverview", { ...overview, unreadable: [row], waiting: waiting(13) });
    const full = await shown(DeskPage);
    expect(full.part("Cannot be read").text).toContain("TY-0402, column spec: no model");
    expect(page.hasPart("Cannot be read")).toBe(false);
    // Twelve of a kind; the way to the others where there are more.
    expect(full.table("Waiting on the customer")).toHaveLength(12);
    expect(Object.entries(full.links).filter(([, to]) => to === "/shop/queue?view=waiting")).toHaveLength(1);
    tell("deskOverview", { ...overview, waiting: waiting(12) });
    expect(Object.values((await shown(DeskPage)).links)).not.toContain("/shop/queue?view=waiting");
    seeAs("maker");
    expect(await sentTo(DeskPage)).toBe("/shop/queue");
  });
});

describe("search", () => {
  it("leads every hit to its page, and a single pair at once", async () => {
    const kinds = ["sheet", "customer", "quote", "order", "pair"] as const;
    tell(
      "search",
      kinds.map((kind) => ({ kind, id: `${kind}-1`, title: `The ${kind}`, detail: "a detail" })),
    );
    const page = await shown(SearchPage, { query: { text: " alder " } });
    expect(page.text).toContain("Results for “alder”");
    expect(page.all("li a").map((link) => [link.text, link.attribute("href")])).toEqual([
      ["sheetThe sheeta detail", "/shop/call/sheet-1"],
      ["customerThe customera detail", "/shop/customers/customer-1"],
      ["quoteThe quotea detail", "/shop/quotes/quote-1"],
      ["orderThe ordera detail", "/shop/orders/order-1"],
      ["pairThe paira detail", "/shop/pair/The pair"],
    ]);
    tell("search", []);
    const none = await shown(SearchPage, { query: { text: "x" } });
    expect(none.text).toContain("Type at least two letters or digits.");
    expect(none.text).toContain("Nothing found");
    const [pair] = [{ kind: "pair", id: "p-1", title: "TY-0401", detail: "" }];
    tell("search", [pair]);
    expect(await sentTo(SearchPage, { query: { text: "401" } })).toBe("/shop/pair/TY-0401");
    tell("search", [pair, { ...pair, id: "p-2", title: "TY-0402" }]);
    expect(await sentTo(SearchPage, { query: { text: "40" } })).toBeNull();
  });
});

describe("clubs", () => {
  const quote = (known: object = {}) => ({
    quoteId: "q-1",
    number: "Q-101",
    state: "open",
    totalCents: 163_240,
    ski: "Midlow 95, 178 cm",
    flexClassLabel: "Firm",
    mould: "M95-178",
    lettering: "ADA",
    leavesPalette: false,
    validUntilDay: "2026-12-01",
    customerSpecified: ["stiffness"],
    soldFor: {},
    ...known,
  });
  const price = {
    priceBook: "PB-3",
    currency: "USD",
    lines: [],
    exTaxCents: 300_000,
    shippingCents: 0,
    taxCents: 18_000,
    totalCents: 318_000,
    depositCents: 150_000,
  };
  const club = (known: object = {}) =>
    partly<ClubView>({
      clubId: "c-1",
      number: "C-21",
      name: "Moor club",
      customer: { name: "Ada Moor", phone: "303 555 0177" },
      palette: {
        base: { left: "black", right: "lake" },
        house: "plain",
        isNamed: true,
        destination: "collect",
      } as never,
      wantedOn: "2027-02-01",
      members: [
        { sheetId: "s-1", skierName: "Ada", quote: quote(), pair: null },
        {
          sheetId: "s-2",
          skierName: "Bo",
          quote: quote({ quoteId: "q-2", number: "Q-102", lettering: null, leavesPalette: true, totalCents: 154_760 }),
          pair: null,
        },
        { sheetId: "s-3", skierName: "Cleo", quote: null, pair: null },
        {
          sheetId: "s-4",
          skierName: "Dee",
          quote: quote({ quoteId: "q-4", number: "Q-104", state: "accepted" }),
          pair: { pairId: "p-4", serial: "TY-0404", proofNeeded: true, proofState: "issued" },
        },
        {
          sheetId: "s-5",
          skierName: "Eve",
          quote: quote({ quoteId: "q-5", number: "Q-105", state: "accepted" }),
          pair: { pairId: "p-5", serial: "TY-0405", proofNeeded: false, proofState: "none" },
        },
      ] as never,
      open: {
        quoteIds: ["q-1", "q-2"],
        validUntilDay: "2026-12-01",
        price,
        dateRange: range("2026-12-10", "2026-12-17"),
        keepsWish: true,
      } as never,
      leftOut: [],
      press: [{ mould: "M95-178", press: "press-1", from: denver("08:00"), serials: ["TY-0404", "TY-0405"] }],
      orders: [{ orderId: "o-4", number: "O-304" }],
      ...known,
    });
  const page = () => shown(ClubPage, { params: { clubId: "c-1" } });
  it("have a line for each skier, one offer and one day", async () => {
    tell("readClub", club());
    const seen = await page();
    expect(seen.headings[0]).toBe("C-21: Moor club");
    const rows = seen.table("Skiers");
    expect(rows[0]).toEqual({
      Skier: "Ada",
      Ski: "Midlow 95, 178 cm",
      "Flex class": "Firm",
      Mould: "M95-178",
      "Name on it": "ADA",
      "Price in all": "$1,632.40",
      Quote: "Q-101 open",
      Pair: "–",
      Proof: "–",
    });
    expect(rows[1]).toMatchObject({
      Ski: "Midlow 95, 178 cm !other palette",
      "Name on it": "–",
      "Price in all": "$1,547.60",
    });
    expect(rows[2]).toEqual({
      Skier: "Cleo",
      Ski: "Go on with the answers",
      "Flex class": "–",
      Mould: "–",
      "Name on it": "–",
      "Price in all": "–",
      Quote: "–",
      Pair: "–",
      Proof: "–",
    });
    expect(rows[3]).toMatchObject({ Quote: "Q-104 accepted", Pair: "TY-0404", Proof: "waits for the skier" });
    expect(rows[4]?.Proof).toBe("none needed");
    expect(seen.links["Go on with the answers"]).toBe("/shop/call/s-3");
    const offer = seen.part("One offer");
    expect(offer.text).toContain("2 quotes are open.");
    expect(offer.text).toContain("All ready 10–17 December 2026");
    expect(offer.text).toContain("✓Nine times out of ten or more, all are ready by 1 February 2027.");
    expect(offer.text).not.toContain("Price and day here are those of");
    const form = seen.form("Order the ticked pairs");
    expect(form.sent).toMatchObject({ clubId: "c-1", priced: "q-1,q-2", quoteIds: "q-1,q-2", name: "Ada Moor" });
    expect(form.fields.quoteIds?.choices).toEqual({
      "q-1": "Ada: Midlow 95, 178 cm, $1,632.40 in all",
      "q-2": "Bo: Midlow 95, 178 cm, $1,547.60 in all",
    });
    expect(form.fields.how?.choices).toEqual({ phone: "On the telephone", counter: "At the counter" });
    expect(form.reading.text).toContain("Ada and Bo: $3,180.00 in all.");
    expect(form.buttons).toContain("Price and day of the ticked");
    expect(seen.facts).toMatchObject({
      Bases: "Graphite black, Lake blue",
      Graphic: catalog.build.houseGraphics.find(({ id }) => id === "plain")?.label,
      Names: "each skier's, proofed one by one",
      "Wanted on": "1 February 2027",
      Telephone: "303 555 0177",
    });
    expect(seen.links["O-304"]).toBe("/shop/orders/o-4");
    expect(seen.table("In the press").map((row) => Object.values(row))).toEqual([
      ["M95-178", "Press 1", "10 Nov 2026, 08:00", "TY-0404, TY-0405"],
    ]);
    expect(seen.form("Open a sheet").sent).toEqual({ clubId: "c-1", skierName: "" });
  });
  it("say who is priced, who was left out, and what has no price in common", async () => {
    const one = club();
    tell("readClub", {
      ...one,
      wantedOn: null,
      leftOut: ["Cleo"],
      press: [],
      orders: [],
      palette: { ...one.palette, base: { ...one.palette.base, right: "black" }, isNamed: false },
      open: { ...one.open, quoteIds: ["q-2"], keepsWish: null },
    });
    const some = await page();
    expect(some.text).toContain("Price and day here are those of Bo.");
    expect(some.text).toContain("!Left out, not open here: Cleo.");
    expect(some.text).toContain("Ready 10–17 December 2026");
    expect(some.text).not.toContain("All ready");
    expect(some.text).not.toContain("Nine times out of ten");
    expect(some.facts).toMatchObject({ Bases: "Graphite black", Names: "none", "Wanted on": "–" });
    expect(some.hasPart("Orders")).toBe(false);
    expect(some.hasPart("In the press")).toBe(false);
    expect(some.form("Order the ticked pairs").sent).toMatchObject({ priced: "q-2", quoteIds: "q-2" });
    tell("readClub", { ...one, open: { ...one.open, keepsWish: false } });
    expect((await page()).text).toContain("!Kept less than nine times out of ten: all are wanted on 1 February 2027.");
    tell("readClub", { ...one, open: null });
    expect((await page()).text).toContain("they have no price in common");
    tell("readClub", { ...one, members: one.members.slice(2) });
    expect((await page()).part("One offer").text).toContain("No quote is open.");
    tell("readClub", { ...one, members: one.members.slice(0, 1) });
    expect((await page()).part("One offer").text).toContain("One quote is open.");
  });
  it("are listed with how many have a quote and how many have ordered", async () => {
    tell("listClubs", [
      {
        clubId: "c-1",
        number: "C-21",
        name: "Moor club",
        customerName: "Ada Moor",
        skiers: 5,
        quoted: 4,
        ordered: 2,
        wantedOn: null,
        createdAt: denver("10:00"),
      },
    ]);
    const seen = await shown(ClubsPage);
    expect(tabTitle(clubsModule)).toBe("Club orders");
    expect(seen.table("Clubs so far")).toEqual([
      {
        Number: "C-21",
        Club: "Moor club",
        Customer: "Ada Moor",
        Skiers: "5",
        Quoted: "4",
        Ordered: "2",
        "Wanted on": "–",
        Begun: "10 Nov 2026, 10:00",
      },
    ]);
    expect(seen.links["C-21"]).toBe("/shop/clubs/c-1");
    expect(Object.keys(seen.form("Begin").fields)).toEqual([
      "name",
      "customer.name",
      "customer.phone",
      "email",
      "palette.base.left",
      "palette.base.right",
      "palette.house",
      "isNamed",
      "palette.destination",
      "wantedOn",
    ]);
    const begin = seen.form("Begin");
    expect(begin.sent.isNamed).toBeUndefined();
    expect(begin.optional).toEqual(["email", "wantedOn"]);
    expect(begin.fields["palette.base.left"]?.choices).toMatchObject({ black: "Graphite black", lake: "Lake blue" });
    expect(begin.fields["palette.house"]?.choices.plain).toBeTruthy();
    expect(begin.fields["palette.destination"]?.choices).toMatchObject({ collect: expect.any(String) });
    tell("listClubs", []);
    expect((await shown(ClubsPage)).all("table")).toEqual([]);
  });
});
