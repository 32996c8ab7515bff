/** Saying what broke: each kind's own questions, what follows before anything is stored, and what was reported so far. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import BreakdownPage from "#app/shop/(staff)/queue/breakdown/page.tsx";
import type { BaseShortage, IncidentSummary, QueueBoard, QueueEffect } from "#services";
import { partly } from "../../support/builders/views";
import { sentTo, shown } from "../../support/page-render";
import { refusal, seeAs, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));

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
const preview = {
  effect,
  base: null,
  options: [{ way: "wait", costCents: 0, places: [], crossing: [], saved: 0, expectedLate: 1.5 }],
};
const base = partly<BaseShortage>({
  label: "Lake",
  neededM: 11.7,
  leftM: 4,
  shortM: 7.7,
  expectedOn: "2026-12-01",
  pairs: [],
});
const board = partly<QueueBoard>({
  pairs: [
    { pairId: "p-1", serial: "TY-0401", skierFirstName: "Robin", modelName: "Midlow 95", lengthCm: 178 },
    { pairId: "p-2", serial: "TY-0402", skierFirstName: "Kim", modelName: "Midlow 84", lengthCm: 174 },
  ] as never,
});
const asked: unknown[] = [];

beforeEach(() => {
  seeAs("maker");
  asked.length = 0;
  tell("listIncidents", []);
  tell("queueBoard", board);
  tell("previewBreakdown", (input: unknown) => {
    asked.push(input);
    return preview;
  });
});

const form = async (query: Readonly<Record<string, string>>) =>
  (await shown(BreakdownPage, { query })).form("See who moves");

describe("what happened", () => {
  it("is one of six kinds, each by its own link", async () => {
    const page = await shown(BreakdownPage);
    const kinds = page.one("nav").all("a");
    expect(kinds.map((kind) => [kind.text, kind.attribute("href")])).toEqual([
      ["A press is down", "/shop/queue/breakdown?kind=press-down"],
      ["A person is away", "/shop/queue/breakdown?kind=person-away"],
      ["A supplier is late", "/shop/queue/breakdown?kind=supplier-late"],
      ["A base colour is short", "/shop/queue/breakdown?kind=base-short"],
      ["One ski must be rebuilt", "/shop/queue/breakdown?kind=ski-rebuild"],
      ["A proof is late", "/shop/queue/breakdown?kind=proof-late"],
    ]);
    expect(page.all("[aria-current]")).toEqual([]);
    expect(page.forms).toEqual([]);
    expect((await shown(BreakdownPage, { query: { kind: "flood" } })).forms).toEqual([]);
    const chosen = await shown(BreakdownPage, { query: { kind: "person-away" } });
    expect(chosen.all("[aria-current]").map(({ text }) => text)).toEqual(["A person is away"]);
    expect(chosen.hasPart("A person is away")).toBe(true);
  });

  /** Ten in the morning of 10 November 2026 is now; what is chosen from a list begins with nothing chosen, but for the only press. */
  it.each([
    [
      "press-down",
      { press: "select", from: "datetime-local", until: "datetime-local" },
      { press: "press-1", from: "2026-11-10T10:00", until: "" },
    ],
    [
      "person-away",
      { person: "select", from: "datetime-local", until: "datetime-local" },
      { person: "", from: "2026-11-10T10:00", until: "" },
    ],
    [
      "supplier-late",
      { material: "text", station: "select", expectedOn: "date" },
      { material: "", station: "", expectedOn: "" },
    ],
    ["base-short", { colour: "select", leftM: "text", expectedOn: "date" }, { colour: "", leftM: "", expectedOn: "" }],
    [
      "ski-rebuild",
      { pairId: "select", side: "select", fromStation: "select", fault: "select" },
      { pairId: "", side: "L", fromStation: "", fault: "" },
    ],
    ["proof-late", { pairId: "select", expectedOn: "date" }, { pairId: "", expectedOn: "" }],
  ] as const)("asks about %s", async (kind, kinds, sent) => {
    const asks = await form({ kind });
    expect(asks.sent).toEqual({ kind, ...sent });
    expect(Object.fromEntries(Object.values(asks.fields).map((field) => [field.name, field.kind]))).toEqual({
      kind: "hidden",
      ...kinds,
    });
    expect(asks.optional).toEqual([]);
    expect(Object.values(asks.fields).map(({ error }) => error)).toEqual(Object.keys(asks.fields).map(() => null));
    expect(asked).toEqual([]);
  });

  it("offers what there is to choose from, by the names of the shop", async () => {
    const rebuild = (await form({ kind: "ski-rebuild" })).fields;
    expect(rebuild.pairId?.choices).toEqual({
      "": "choose",
      "p-1": "TY-0401 Robin, Midlow 95 178",
      "p-2": "TY-0402 Kim, Midlow 84 174",
    });
    expect(rebuild.side?.choices).toEqual({ L: "Left", R: "Right" });
    expect(rebuild.fromStation?.choices).toMatchObject({
      "": "choose",
      release: "1 Release, build sheet, kit list",
      check: "14 QC, match, serial, photo, pack",
    });
    expect(rebuild.fault?.choices).toMatchObject({ "": "choose", "core-wrong": "the core is wrong" });
    expect(Object.keys((await form({ kind: "proof-late" })).fields.pairId?.choices ?? {})).toEqual(["", "p-1", "p-2"]);
    expect((await form({ kind: "supplier-late" })).fields.station?.label).toBe("First station that cannot begin");
    expect((await form({ kind: "base-short" })).fields.colour?.choices).toMatchObject({
      "": "choose",
      lake: "Lake blue",
    });
    expect((await form({ kind: "person-away" })).fields.person?.choices).toMatchObject({
      "": "choose",
      c1: "Core maker",
    });
    tell("queueBoard", refusal("not-allowed"));
    expect((await form({ kind: "proof-late" })).fields.pairId?.choices).toEqual({ "": "choose" });
  });

  it("keeps what was typed, names what is wrong at its field and leads to the first of them", async () => {
    const query = { kind: "base-short", colour: "", leftM: "a lot", expectedOn: "soon" };
    const page = await shown(BreakdownPage, { query });
    const { fields, sent } = page.form("See who moves");
    expect(sent).toEqual(query);
    expect([fields.colour, fields.leftM, fields.expectedOn].map((field) => field?.error)).toEqual([
      "✕Error: Base colour: choose one",
      "✕Error: Left on the roll: a number of metres is needed, such as 12.5, not “a lot”",
      "✕Error: Expected on: a day is needed",
    ]);
    expect(page.all("[autofocus]").map((field) => field.attribute("name"))).toEqual(["colour"]);
    expect(page.all("[role=alert]")).toEqual([]);
    expect(page.buttons).not.toContain("Report it");
    tell("previewBreakdown", refusal("not-found", { what: "press" }));
    const refused = await shown(BreakdownPage, {
      query: { kind: "press-down", press: "press-1", from: "2026-11-16T07:30", until: "2026-11-17T07:30" },
    });
    expect(refused.all("[role=alert]")).toHaveLength(1);
    expect(refused.buttons).not.toContain("Report it");
  });
});

describe("what follows", () => {
  const down = { kind: "press-down", press: "press-1", from: "2026-11-16T07:30", until: "2026-11-18T16:30" };

  it("is shown before it is stored, and reported with what was asked and a word if there is one", async () => {
    const page = await shown(BreakdownPage, { query: down });
    // Winter in Denver is seven hours behind UTC.
    expect(asked).toEqual([{ ...down, from: "2026-11-16T14:30:00.000Z", until: "2026-11-18T23:30:00.000Z" }]);
    expect(page.headings).toEqual(expect.arrayContaining(["Who moves, who crosses", "Ways on"]));
    expect(page.headings).not.toContain("Who gets what is left");
    expect(page.all("[autofocus]").map(({ text }) => text)).toEqual(["Who moves, who crosses"]);
    expect(page.text).toContain("Nothing is stored yet.");
    const report = page.form("Report it");
    const { reportId, ...kept } = report.sent;
    expect(kept).toEqual({ ...down, note: "" });
    expect(reportId).toMatch(/^new-/);
    expect(report.optional).toEqual(["note"]);
  });

  it("says who gets what is left of a base, and the costs of the ways on to whom they concern", async () => {
    tell("previewBreakdown", { ...preview, base });
    const query = { kind: "base-short", colour: "lake", leftM: "4", expectedOn: "2026-12-01" };
    const maker = await shown(BreakdownPage, { query });
    expect(maker.headings).toEqual(expect.arrayContaining(["Who gets what is left", "Who moves, who crosses"]));
    expect(maker.all("[autofocus]").map(({ text }) => text)).toEqual(["Who gets what is left"]);
    expect(Object.keys(maker.table("Ways on")[0] ?? {})).not.toContain("Cost");
    seeAs("desk");
    expect((await shown(BreakdownPage, { query })).table("Ways on")[0]?.Cost).toBe("$0");
  });
});

describe("what was reported so far", () => {
  it("stands with its kind, its state and how many promises it crossed", async () => {
    const one = partly<IncidentSummary>({
      incidentId: "i-1",
      number: "INC-3",
      state: "open",
      crossing: 2,
      reportedBy: "Mo",
      reportedAt: "2026-11-10T17:00:00.000Z",
      input: { kind: "press-down" } as never,
    });
    tell("listIncidents", [one, { ...one, incidentId: "i-2", number: "INC-2", state: "closed", crossing: 0 }]);
    const page = await shown(BreakdownPage);
    expect(page.table("Reported so far")).toEqual([
      {
        Number: "INC-3",
        What: "A press is down",
        State: "not decided yet",
        "Promises crossed": "2",
        Reported: "Mo, 10 Nov 2026, 10:00",
      },
      {
        Number: "INC-2",
        What: "A press is down",
        State: "over",
        "Promises crossed": "0",
        Reported: "Mo, 10 Nov 2026, 10:00",
      },
    ]);
    expect(page.links["INC-2"]).toBe("/shop/queue/breakdown/i-2");
    tell("listIncidents", []);
    expect((await shown(BreakdownPage)).text).toContain("Nothing has been reported.");
    tell("listIncidents", refusal("not-allowed"));
    expect(await sentTo(BreakdownPage)).toBe("not-found");
  });
});
