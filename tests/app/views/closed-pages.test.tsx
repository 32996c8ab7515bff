/** What a page says of itself, and what it is to those for whom it is not: gone, or a row that cannot be read. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import MethodPage, * as method from "#app/(site)/method/page.tsx";
import SkierClubPage, * as skierClub from "#app/(skier)/club/[token]/page.tsx";
import SkierPairPage, * as skierPair from "#app/(skier)/pair/[token]/page.tsx";
import SkierQuotePage, * as skierQuote from "#app/(skier)/quote/[token]/page.tsx";
import SkierComparePage, * as compare from "#app/(skier)/sheet/[token]/compare/page.tsx";
import SheetPage, * as sheet from "#app/(skier)/sheet/[token]/page.tsx";
import StartPage, * as start from "#app/(skier)/sheet/page.tsx";
import NotFoundPage from "#app/not-found.tsx";
import CallComparePage from "#app/shop/(staff)/call/[sheetId]/compare/page.tsx";
import CallPage from "#app/shop/(staff)/call/[sheetId]/page.tsx";
import CallsPage, * as calls from "#app/shop/(staff)/call/page.tsx";
import CautionsPage from "#app/shop/(staff)/cautions/page.tsx";
import ClubPage from "#app/shop/(staff)/clubs/[clubId]/page.tsx";
import ClubsPage from "#app/shop/(staff)/clubs/page.tsx";
import FloorTimesPage from "#app/shop/(staff)/floor-times/page.tsx";
import MeasuredPage from "#app/shop/(staff)/measured/page.tsx";
import NoticesPage from "#app/shop/(staff)/notices/page.tsx";
import EditPage from "#app/shop/(staff)/orders/[orderId]/edit/page.tsx";
import HardDatePage from "#app/shop/(staff)/orders/[orderId]/hard-date/page.tsx";
import OrderPage from "#app/shop/(staff)/orders/[orderId]/page.tsx";
import OrdersPage from "#app/shop/(staff)/orders/page.tsx";
import DeskPage from "#app/shop/(staff)/page.tsx";
import PairPage from "#app/shop/(staff)/pair/[code]/page.tsx";
import PricesPage from "#app/shop/(staff)/prices/page.tsx";
import KeptPromisesPage from "#app/shop/(staff)/promises/page.tsx";
import IncidentPage from "#app/shop/(staff)/queue/breakdown/[incidentId]/page.tsx";
import QueueOrderPage from "#app/shop/(staff)/queue/order/page.tsx";
import QueuePage from "#app/shop/(staff)/queue/page.tsx";
import WhatIfPage from "#app/shop/(staff)/queue/what-if/page.tsx";
import QuotePage from "#app/shop/(staff)/quotes/[quoteId]/page.tsx";
import QuotesPage from "#app/shop/(staff)/quotes/page.tsx";
import SearchPage from "#app/shop/(staff)/search/page.tsx";
import StripsShortPage from "#app/shop/(staff)/strips/[code]/page.tsx";
import StripsPage from "#app/shop/(staff)/strips/page.tsx";
import SignInPage, * as signIn from "#app/shop/sign-in/page.tsx";
import { sentTo, shown, type Visit } from "../../support/page-render";
import { hold, refusal, seeAs, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
// A shop with people, seen from a device that nobody enrolled.
vi.mock("#auth", async (load) => ({ ...(await load()), floorDoor: async () => null, isShopEmpty: async () => false }));
vi.mock("next/headers", () => import("../../support/page-requests"));

// biome-ignore lint/suspicious/noExplicitAny: every page names its own params
type Page = (props: any) => any;
const no = refusal("not-allowed");
const unreadable = refusal("unreadable-row", { table: "orders", row: "O-7", column: "state", why: "is none" });
const params = {
  token: "tok",
  sheetId: "s-1",
  clubId: "c-1",
  orderId: "o-1",
  quoteId: "q-1",
  incidentId: "i-1",
  code: "TY-0401",
};

beforeEach(() => {
  seeAs("owner");
  hold("sheet", "s-1");
  tell("activeCatalog", no);
  tell("skierBand", no);
});

/** Each page by what it reads: refused, it is not there. */
const pages: readonly (readonly [name: string, page: Page, reads: string])[] = [
  ["the sheet", SheetPage, "readSheet"],
  ["the skier's comparison", SkierComparePage, "readSheet"],
  ["the skier's club", SkierClubPage, "readClub"],
  ["the skier's quote", SkierQuotePage, "readQuote"],
  ["a call", CallPage, "readSheet"],
  ["a call's comparison", CallComparePage, "readSheet"],
  ["calls", CallsPage, "listDrafts"],
  ["cautions", CautionsPage, "readMyCautions"],
  ["a club", ClubPage, "readClub"],
  ["clubs", ClubsPage, "listClubs"],
  ["what the floor took", FloorTimesPage, "readFloorLearning"],
  ["measured pairs", MeasuredPage, "readLearning"],
  ["letters", NoticesPage, "listNotices"],
  ["a change of a pair", EditPage, "readOrder"],
  ["a hard date", HardDatePage, "readOrder"],
  ["an order", OrderPage, "readOrder"],
  ["orders", OrdersPage, "listOrders"],
  ["the desk", DeskPage, "deskOverview"],
  ["prices", PricesPage, "activeCatalog"],
  ["kept promises", KeptPromisesPage, "readKeptPromises"],
  ["an incident", IncidentPage, "readIncident"],
  ["the order of the queue", QueueOrderPage, "readQueueOrder"],
  ["the queue", QueuePage, "queueBoard"],
  ["what if", WhatIfPage, "listFloorChanges"],
  ["a quote", QuotePage, "readQuote"],
  ["quotes", QuotesPage, "listQuotes"],
  ["a pair without strips", StripsShortPage, "findPairByCode"],
  ["the strip rack", StripsPage, "readStripStock"],
];

describe("a page that is not for whoever asks", () => {
  it.each(pages)("is not there: %s", async (_, page, reads) => {
    tell("listDrafts", no);
    tell("readPromiseRisk", no);
    tell("listCautionAnswers", no);
    tell(reads, no);
    expect(await sentTo(page, { params })).toBe("not-found");
  });

  it.each([
    ["an order", OrderPage, "readOrder"],
    ["a quote", QuotePage, "readQuote"],
    ["an incident", IncidentPage, "readIncident"],
    ["a call", CallPage, "readSheet"],
  ] as const)("tells staff which row of %s cannot be read", async (_, page, reads) => {
    tell(reads, unreadable);
    const seen = await shown(page as Page, { params });
    expect(seen.headings).toContain("Cannot be read");
    expect(seen.text).toContain("This cannot be read: O-7, column state: is none.");
  });

  it("tells staff which row of a pair cannot be read, and of a code that none is", async () => {
    tell("findPairByCode", { pairId: "p-1", serial: "TY-0401" });
    tell("readPair", unreadable);
    expect((await shown(PairPage, { params })).text).toContain("O-7, column state: is none");
    tell("readPair", no);
    expect(await sentTo(PairPage, { params })).toBe("not-found");
    tell("findPairByCode", refusal("serial-unreadable", { value: "TY-0401" }));
    const none = await shown(PairPage, { params });
    expect(none.headings[0]).toBe("TY-0401");
    expect(none.text).toContain('"TY-0401" is not a serial of this shop.');
  });

  it.each([
    ["the sheet", SheetPage, "readSheet"],
    ["the quote", SkierQuotePage, "readQuote"],
  ] as const)(
    "is a fault, and no missing page, where a row of %s cannot be read for the skier",
    async (_, page, reads) => {
      tell(reads, unreadable);
      await expect(shown(page as Page, { params })).rejects.toThrow("orders O-7, column state: is none");
    },
  );

  it("holds a skier's pair back that is not there or cannot be read", async () => {
    hold("order", "o-1");
    tell("pairsOfOrder", no);
    expect(await sentTo(SkierPairPage, { params })).toBe("not-found");
    tell("pairsOfOrder", [{ pairId: "p-1", serial: "TY-0401" }]);
    tell("readProgress", no);
    expect(await sentTo(SkierPairPage, { params })).toBe("not-found");
    tell("readProgress", unreadable);
    await expect(shown(SkierPairPage, { params })).rejects.toThrow("orders O-7");
  });

  it("finds nothing where a search is refused", async () => {
    tell("search", no);
    expect((await shown(SearchPage, { query: { text: "alder" } })).text).toContain("Nothing found");
  });
});

describe("what a page says of itself", () => {
  it("keeps what is behind a private link, or a password, out of search engines", () => {
    for (const page of [skierClub, skierPair, skierQuote, compare, sheet, signIn])
      expect((page as { metadata: unknown }).metadata).toMatchObject({
        title: expect.stringMatching(/./),
        robots: { index: false },
      });
    for (const page of [start, method]) expect((page as { metadata: object }).metadata).not.toHaveProperty("robots");
  });

  it("has a title in the browser's tab", () => {
    expect([start.metadata.title, method.metadata.title, calls.metadata.title, signIn.metadata.title]).toEqual([
      "Start a sheet",
      "How we compute",
      "Calls",
      "Staff sign-in",
    ]);
  });
});

describe("the public pages", () => {
  const start = (query: Visit = {}) => shown(StartPage, query);

  it("start a sheet, or go on with the one this browser has", async () => {
    const { browser, cookies } = await import("../../support/page-requests");
    const first = await start();
    expect(first.buttons).toEqual(["Start a new sheet"]);
    expect(first.links).toEqual({});
    expect(first.one("button").attribute("class")).toContain("bg-larch");
    (await cookies()).set("pairwright-sheet", "tok");
    const again = await start();
    expect(again.links).toEqual({ "Go on with my sheet": "/sheet/tok" });
    // One primary action a view.
    expect(again.one("button").attribute("class")).not.toContain("bg-larch");
    expect(again.one("a").attribute("class")).toContain("bg-larch");
    (await cookies()).delete("pairwright-sheet");
    expect(browser.cookies.has("pairwright-sheet")).toBe(false);
  });

  it("let staff in, back to where they came from, and say that somebody has left", async () => {
    seeAs(null);
    const door = await shown(SignInPage, { query: { back: "/shop/queue" } });
    expect(door.form("Sign in").sent).toEqual({ back: "/shop/queue", email: "", password: "" });
    expect(door.all("[role=status]")).toEqual([]);
    expect((await shown(SignInPage, { query: { left: "yes" } })).one("[role=status]").text).toContain(
      "You are signed out.",
    );
    expect(
      (await shown(SignInPage, { query: { back: "https://elsewhere.example/shop" } })).form("Sign in").sent.back,
    ).toBe("/shop");
    seeAs("desk");
    expect(await sentTo(SignInPage, { query: { back: "/shop/queue" } })).toBe("/shop/queue");
    expect(await sentTo(SignInPage)).toBe("/shop");
  });

  it("show computed against measured once, where the factors are told", async () => {
    tell("readPredictedVersusMeasured", {
      pairs: 0,
      skis: 0,
      leastPairs: 20,
      bookInForce: null,
      quality: [],
      points: [],
    });
    const page = await shown(MethodPage);
    const none = "No pair has been measured yet.";
    const parts = page.all("section").filter(({ text }) => text.includes(none));
    expect(parts.map((part) => part.attribute("aria-labelledby") ?? "")).toEqual(["learning-title"]);
    tell("readPredictedVersusMeasured", no);
    expect((await shown(MethodPage)).text).not.toContain(none);
  });

  it("lead home from a page that is not there", async () => {
    expect((await shown(NotFoundPage)).links).toMatchObject({ "Start a sheet": "/sheet", "Staff sign-in": "/shop" });
  });
});
