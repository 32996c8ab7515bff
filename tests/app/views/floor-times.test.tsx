/** What the floor took, drawn from views made by hand. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import FloorTimesPage from "#app/shop/(staff)/floor-times/page.tsx";
import type { FloorLearningView } from "#services";
import { partly } from "../../support/builders/views";
import { shown } from "../../support/page-render";
import { seeAs, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));

const assumed = { low: 40, typ: 60, high: 90 };
const learnt = { low: 49.5, typ: 74.5, high: 112 };
const rate = (trials: number, failures: number, setting: number, value: number) => ({
  trials,
  failures,
  assumed: setting,
  learnt: value,
  interval: { low: value / 2, high: value * 2 },
});

interface Told {
  readonly pairs?: number;
  readonly enoughPairs?: boolean;
  readonly books?: unknown;
  readonly leftOut?: readonly object[];
}

const leftOutUsually = [
  {
    visit: { pair: "p", station: "edges", startMinute: 29_934_000, by: "Mo", endMinute: null },
    why: "forgotten",
    workMinutes: 1012,
  },
  {
    visit: { pair: "q", station: "edges", startMinute: 29_934_000 + 1440, by: null, endMinute: 1 },
    why: "too-short",
    workMinutes: 0,
  },
];

function told({ pairs = 31, enoughPairs = true, books = [], leftOut = leftOutUsually }: Told = {}) {
  tell(
    "readFloorLearning",
    partly<FloorLearningView>({
      learning: {
        fromDate: "2026-06-01",
        toDate: "2026-11-10",
        workingDays: 113,
        pairs,
        enoughPairs,
        stations: [
          {
            station: "edges",
            visits: 42,
            tooShort: 1,
            forgotten: 2,
            assumed,
            assumedMeanMinutes: 61.667,
            takenMeanMinutes: 80.25,
            learnt,
            learntMeanMinutes: 76.5,
            interval: { low: 73.1, high: 80 },
          },
          {
            station: "print",
            visits: 0,
            tooShort: 0,
            forgotten: 0,
            assumed,
            assumedMeanMinutes: 61.667,
            takenMeanMinutes: null,
            learnt: assumed,
            learntMeanMinutes: 61.667,
            interval: { low: 56, high: 68 },
          },
        ],
        rework: [{ loop: "qc", afterStation: "check", ...rate(40, 4, 0.05, 0.078) }],
        pressDays: rate(113, 5, 0.04, 0.043),
        personDays: rate(791, 12, 0, 0.014),
        shocks: {
          ...rate(3.8, 1, 0.25, 0.254),
          windowWorkingDays: 30,
          standstills: [{ from: "2026-09-01", workingDays: 4 }],
          assumedDelay: { low: 2, high: 12 },
          learntDelay: { low: 1.5, high: 10 },
        },
        weeks: { weeks: 22, visits: 400, assumed: 0, learnt: 0.041, interval: { low: 0.01, high: 0.08 } },
        leftOut,
        proposal: { version: "FB-2" },
      } as never,
      stationNames: { edges: { number: 7, name: "Edge bend and set" }, print: { number: 8, name: "Print" } },
      fingerprint: "f-1",
      leastPairs: 8,
      now: {
        stations: [{ station: "edges", minutes: { low: 45, typ: 66, high: 99.5 } }],
        rework: [{ loop: "qc", probability: 0.061 }],
        pressDayLostProbability: 0.04,
        personDayLostProbability: 0,
        sharedShock: { probability: 0.25, delayWorkingDays: { low: 2, high: 12 } },
        weekPaceLogSd: 0,
      },
      books: books as never,
    }),
  );
}

describe("what the floor took", () => {
  beforeEach(() => seeAs("owner"));

  it("stands station by station beside the setting, with what was counted and left out", async () => {
    told();
    const page = await shown(FloorTimesPage);
    expect(page.text).toContain(
      "113 working days from 1 June 2026 to 10 November 2026, 31 pairs through the whole floor.",
    );
    expect(page.text).toContain("No book yet");
    expect(page.table("Minutes, station by station")).toEqual([
      {
        Station: "7 Edge bend and set",
        "Visits counted": "42",
        "Left out": "1 too short, 2 forgotten",
        "Setting: least, usual, most": "40, 60, 90",
        "Mean of the setting": "61.7",
        "Taken, mean": "80.3",
        "Learnt mean, range": "76.5 (73.1–80)",
        "Learnt: least, usual, most": "49.5, 74.5, 112",
        "Dates use now": "45, 66, 99.5",
      },
      {
        Station: "8 Print",
        "Visits counted": "0",
        "Left out": "none",
        "Setting: least, usual, most": "40, 60, 90",
        "Mean of the setting": "61.7",
        "Taken, mean": "–",
        "Learnt mean, range": "61.7 (56–68)",
        "Learnt: least, usual, most": "40, 60, 90",
        "Dates use now": "40, 60, 90",
      },
    ]);
    expect(page.table("Left out").map((row) => [row.Began, row.Why, row.By, row["Working minutes open"]])).toEqual([
      ["1 December 2026, 12:00", "too short for work", "–", "0"],
      ["30 November 2026, 12:00", "finish forgotten", "Mo", "1012"],
    ]);
  });

  it("lists the latest thirty visits that were left out, and how many more there are", async () => {
    const visit = (index: number) => ({
      visit: { pair: `p-${index}`, station: "edges", startMinute: 29_934_000 + index, by: null, endMinute: 1 },
      why: "too-short",
      workMinutes: 0,
    });
    const all = (count: number) => Array.from({ length: count }, (_, index) => visit(index));
    told({ leftOut: all(32) });
    const page = await shown(FloorTimesPage);
    expect(page.table("Left out")).toHaveLength(30);
    expect(page.table("Left out")[0]?.Began).toBe("30 November 2026, 12:31");
    expect(page.part("Left out").text).toMatch(/\b2\b[^0-9]*$/);
    told({ leftOut: all(30) });
    const whole = await shown(FloorTimesPage);
    expect(whole.table("Left out")).toHaveLength(30);
    expect(
      whole
        .part("Left out")
        .all("p")
        .map(({ text }) => text),
    ).toEqual(
      page
        .part("Left out")
        .all("p")
        .map(({ text }) => text)
        .slice(0, -1),
    );
    told({ leftOut: [] });
    expect((await shown(FloorTimesPage)).all("caption").map(({ text }) => text)).not.toContain("Left out");
  });

  it("says what goes wrong, counted, assumed, learnt and in use", async () => {
    told();
    const page = await shown(FloorTimesPage);
    expect(page.table("What goes wrong").map((row) => Object.values(row))).toEqual([
      ["Done again after check", "4 of 40 passes", "5.0 %", "10.0 %", "7.8 % (3.9–15.6 %)", "6.1 %"],
      ["A press is lost for a day", "5 of 113 press days", "4.0 %", "4.4 %", "4.3 % (2.2–8.6 %)", "4.0 %"],
      ["A person is away for a day", "12 of 791 person days", "0.0 %", "1.5 %", "1.4 % (0.7–2.8 %)", "0.0 %"],
      [
        "The whole shop stands still, in 30 working days",
        "1 in 3.8 such spans",
        "25.0 %",
        "26.3 %",
        "25.4 % (12.7–50.8 %)",
        "25.0 %",
      ],
      ["… and for so many working days", "seen: 4 from 1 September 2026", "2 to 12", "–", "1.5 to 10", "2 to 12"],
      [
        "Whole weeks are slow or quick together by",
        "400 visits in 22 weeks",
        "scatter 0.0 %",
        "–",
        "scatter 4.1 % (1.0–8.0 %)",
        "scatter 0.0 %",
      ],
    ]);
  });

  it("is approved by an owner alone, with a reason, once enough pairs came through", async () => {
    told();
    const owner = await shown(FloorTimesPage);
    expect(owner.part("Approve FB-2").text).toContain("Reason");
    expect(owner.part("Approve FB-2").text).not.toContain("Not yet");
    told({ pairs: 3, enoughPairs: false });
    expect((await shown(FloorTimesPage)).part("Approve FB-2").text).toContain("Not yet: 3 of 8 pairs");
    seeAs("desk");
    const desk = await shown(FloorTimesPage);
    expect(desk.part("Approve FB-2").text).toContain("Only an owner approves a book.");
    expect(desk.part("Approve FB-2").text).not.toContain("Reason");
  });

  it("lists the books with what they rest on", async () => {
    told({
      books: [
        {
          version: "FB-1",
          reason: "first season",
          effectiveAt: "2026-11-10T17:00:00.000Z",
          approvedBy: "Ola",
          summary: { pairs: 20, workingDays: 90, toDate: "2026-11-09", stations: [{ visits: 12 }, { visits: 30 }] },
        },
      ],
    });
    const page = await shown(FloorTimesPage);
    expect(page.text).toContain("In force: FB-1, since 10 Nov 2026, 10:00, approved by Ola: first season");
    expect(page.table("Books")).toEqual([
      {
        Version: "FB-1",
        "In force since": "10 Nov 2026, 10:00",
        "Rests on": "20 pairs, 42 visits, 90 working days to 9 November 2026",
        "Approved by": "Ola",
        Reason: "first season",
      },
    ]);
  });
});
