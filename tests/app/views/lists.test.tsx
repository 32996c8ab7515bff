/** Lists, their CSV, files, the frame of the shop and the remaining pages, drawn from views made by hand. */
import { readFileSync } from "node:fs";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { UploadedFile } from "#app/_server/uploaded-file.ts";
import { CompareView } from "#app/_ui/compare/compare-view.tsx";
import { linesOf, nameForPeople, percent, plainNumber } from "#app/(site)/method/check-numbers.ts";
import MethodPage from "#app/(site)/method/page.tsx";
import SkierComparePage from "#app/(skier)/sheet/[token]/compare/page.tsx";
import SheetPage from "#app/(skier)/sheet/[token]/page.tsx";
import { GET as showPicture } from "#app/files/artwork/[key]/[id]/route.ts";
import { POST as takePicture } from "#app/files/artwork/[key]/route.ts";
import { GET as printClub } from "#app/files/clubs/[clubId]/route.ts";
import { GET as printOrder } from "#app/files/orders/[key]/route.ts";
import { GET as printPair } from "#app/files/pairs/[pairId]/[document]/route.ts";
import { GET as printProof } from "#app/files/proofs/[key]/[pairId]/route.ts";
import { GET as printQuote } from "#app/files/quotes/[key]/route.ts";
import CallPage from "#app/shop/(staff)/call/[sheetId]/page.tsx";
import CallsPage from "#app/shop/(staff)/call/page.tsx";
import CustomersPage from "#app/shop/(staff)/customers/page.tsx";
import ShopLayout from "#app/shop/(staff)/layout.tsx";
import { GET as measuredCsv } from "#app/shop/(staff)/measured/csv/route.ts";
import EditPage from "#app/shop/(staff)/orders/[orderId]/edit/page.tsx";
import OrderPage from "#app/shop/(staff)/orders/[orderId]/page.tsx";
import { GET as ordersCsv } from "#app/shop/(staff)/orders/csv/route.ts";
import OrdersPage from "#app/shop/(staff)/orders/page.tsx";
import PricesPage from "#app/shop/(staff)/prices/page.tsx";
import { GET as promisesCsv } from "#app/shop/(staff)/queue/csv/route.ts";
import { GET as quotesCsv } from "#app/shop/(staff)/quotes/csv/route.ts";
import QuotesPage from "#app/shop/(staff)/quotes/page.tsx";
import compareWords from "#content/copy/compare.json";
import { shapeAtLength } from "#engine/geometry";
import type { OrderView } from "#services";
import { catalog } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";
import { framed, sentTo, shown } from "../../support/page-render";
import { cookies, freshBrowser } from "../../support/page-requests";
import { hold, refusal, seeAs, tell } from "../../support/page-views";
import { answers, assessed, viewOf } from "../../support/sheet";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));

/** Winter in Denver is seven hours behind UTC. */
const denver = (time: string) => new Date(Date.parse(`2026-11-10T${time}:00.000Z`) + 7 * 3_600_000).toISOString();
const orderRow = {
  orderId: "o-1",
  number: "O-301",
  state: "building",
  customerName: "Robin",
  summary: "Midlow 95, 178 cm",
  totalCents: 163_240,
  acceptedAt: denver("10:00"),
  promisedOn: null,
  waitingFor: ["proof"],
  serials: ["TY-0401", "TY-0402"],
};
const quoteRow = {
  quoteId: "q-1",
  number: "Q-101",
  state: "open",
  customerName: "=Robin",
  summary: "Midlow 95, 178 cm",
  totalCents: 163_240,
  priceBook: "PB-3",
  onOldBook: true,
  createdAt: denver("10:00"),
  validUntilDay: "2026-12-01",
  changeRequested: true,
};
const release = { engine: catalog, hash: "h" };
beforeEach(() => {
  seeAs("desk");
  tell("activeCatalog", release);
  tell("catalogOfRelease", release);
});

describe("lists", () => {
  it("of orders are filtered by the address, paged, and taken away as CSV with the same filters", async () => {
    const asked: unknown[] = [];
    tell("listOrders", (input: { page?: number }) => {
      asked.push(input);
      return { rows: [orderRow], total: 5, page: input.page ?? 2, pageSize: 2, unreadable: [] };
    });
    const query = { state: "building", text: "rob", page: "2" };
    const page = await shown(OrdersPage, { query });
    expect(asked[0]).toEqual({ state: "building", text: "rob", page: 2 });
    expect(page.table("Orders")).toEqual([
      {
        Order: "O-301",
        Customer: "Robin",
        Pairs: "TY-0401TY-0402Midlow 95, 178 cm",
        State: expect.stringMatching(/building$/),
        "Waits for": "!proof",
        Promised: "–",
        Total: "$1,632.40",
        Ordered: "10 Nov 2026, 10:00",
      },
    ]);
    expect(page.links).toMatchObject({
      "O-301": "/shop/orders/o-1",
      "TY-0402": "/shop/pair/TY-0402",
      "Download as CSV": "/shop/orders/csv?state=building&text=rob",
      Newer: "/shop/orders?state=building&text=rob&page=1",
      Older: "/shop/orders?state=building&text=rob&page=3",
    });
    expect(page.forms[0]?.sent).toEqual({ state: "building", waitingFor: "", text: "rob" });
    expect(page.numbersOf("Orders")).toEqual(["Total"]);
    expect(page.text).toContain("page 2 of 3");
    expect(page.forms[0]?.fields.state?.choices).toMatchObject({ "": "any", building: "building", shipped: "shipped" });
    expect(page.forms[0]?.fields.waitingFor?.choices).toMatchObject({ "": "any", proof: "proof" });
    expect(page.all("[role=alert]")).toEqual([]);
    const wrong = await shown(OrdersPage, { query: { state: "none" } });
    expect(wrong.one("[role=alert]").text).not.toBe("");
    expect(asked.at(-1)).toEqual({});
    asked.length = 0;
    const file = await ordersCsv(new Request("http://shop/shop/orders/csv?state=building"));
    expect(file.headers.get("content-disposition")).toBe('attachment; filename="orders.csv"');
    const row = `O-301,Robin,"Midlow 95, 178 cm",TY-0401 TY-0402,building,proof,,163240,${denver("10:00")}\r\n`;
    expect(await file.text()).toBe(
      `order,customer,pairs,serials,state,waiting_for,promised_on,total_cents,ordered\r\n${row}${row}${row}`,
    );
    expect(asked).toEqual([1, 2, 3].map((number) => ({ state: "building", page: number })));
    tell("listOrders", { rows: [], total: 0, page: 1, pageSize: 2, unreadable: [] });
    expect((await shown(OrdersPage)).text).toContain("No order matches");
    tell("listOrders", refusal("not-allowed"));
    expect(await sentTo(OrdersPage)).toBe("not-found");
  });

  it("of anything say which rows are left out because they cannot be read, and lead to the desk's list", async () => {
    const odd = (row: string) => ({ table: "orders", row, column: "state", why: "is none" });
    const empty = { rows: [], total: 2, page: 1, pageSize: 25 };
    tell("listOrders", { ...empty, unreadable: [odd("O-7")] });
    tell("listQuotes", { ...empty, unreadable: [odd("Q-7"), odd("Q-8")] });
    tell("listDrafts", { ...empty, unreadable: [odd("s-7")] });
    const orders = await shown(OrdersPage);
    expect(orders.text).toContain("One row cannot be read and is left out");
    expect(orders.text).toContain("O-7, column state: is none");
    expect(orders.links["The desk's list of what cannot be read"]).toBe("/shop#unreadable");
    const quotes = await shown(QuotesPage);
    expect(quotes.text).toContain("2 rows cannot be read and are left out");
    expect(quotes.text).toContain("Q-8, column state: is none");
    expect((await shown(CallsPage)).text).toContain("s-7, column state: is none");
    tell("listOrders", { ...empty, unreadable: [] });
    expect((await shown(OrdersPage)).text).not.toContain("cannot be read");
  });

  it("of quotes mark old books and asked changes", async () => {
    tell("listQuotes", {
      rows: [
        quoteRow,
        { ...quoteRow, quoteId: "q-2", number: "Q-102", onOldBook: false, changeRequested: false, state: "expired" },
      ],
      total: 2,
      page: 1,
      pageSize: 50,
      unreadable: [],
    });
    const page = await shown(QuotesPage, { query: { onOldBook: "true" } });
    expect(page.table("Quotes").map((row) => Object.values(row))).toEqual([
      [
        "Q-101",
        "=Robin",
        "Midlow 95, 178 cm",
        "$1,632.40",
        "iopen!change asked",
        "1 December 2026",
        "PB-3 !old book",
        "10 Nov 2026, 10:00",
      ],
      [
        "Q-102",
        "=Robin",
        "Midlow 95, 178 cm",
        "$1,632.40",
        "!expired",
        "1 December 2026",
        "PB-3",
        "10 Nov 2026, 10:00",
      ],
    ]);
    expect(page.numbersOf("Quotes")).toEqual(["Total"]);
    expect((await shown(QuotesPage, { query: { state: "open", page: "2" } })).links["Download as CSV"]).toBe(
      "/shop/quotes/csv?state=open",
    );
    expect(page.forms[0]?.sent).toEqual({ state: "", text: "", onOldBook: "true" });
    expect(page.all("[role=alert]")).toEqual([]);
    expect(page.text).not.toContain("page 1");
    const wrong = await shown(QuotesPage, { query: { state: "none" } });
    expect(wrong.one("[role=alert]").text).not.toBe("");
    expect((await shown(QuotesPage)).forms[0]?.sent).toEqual({ state: "", text: "" });
    expect(await (await quotesCsv(new Request("http://shop/x"))).text()).toContain(
      `Q-101,'=Robin,"Midlow 95, 178 cm",163240,open,2026-12-01,PB-3,${denver("10:00")}\r\n`,
    );
  });

  it("of customers and of quotes lead to their other pages with what was asked for", async () => {
    seeAs("owner");
    const pages = { total: 60, page: 2, pageSize: 25, unreadable: [] };
    const customer = (known: object) => ({
      customerId: "c-1",
      name: "Robin Alder",
      phone: "303 555 0101",
      email: null,
      isGuestsWord: false,
      sameNumber: [],
      quotes: 2,
      orders: 1,
      ...known,
    });
    tell("listCustomers", {
      ...pages,
      rows: [
        customer({}),
        customer({
          customerId: "c-2",
          name: "Kim",
          phone: null,
          email: "kim@beck.example",
          isGuestsWord: true,
          sameNumber: [{ customerId: "c-1", name: "Robin Alder" }],
        }),
      ],
    });
    const page = await shown(CustomersPage, { query: { text: "al", page: "2" } });
    expect(page.table("Customers").map((row) => Object.values(row))).toEqual([
      ["Robin Alder", "303 555 0101", "–", "", "2", "1"],
      ["Kim a guest's word", "–", "kim@beck.example", "!Robin Alder", "2", "1"],
    ]);
    expect(page.links).toMatchObject({
      Kim: "/shop/customers/c-2",
      "Earlier in the list": "/shop/customers?text=al&page=1",
      "Further down the list": "/shop/customers?text=al&page=3",
      "How long what is kept": "/shop/retention",
    });
    expect(page.form("Show").sent).toMatchObject({ text: "al" });
    tell("listQuotes", { ...pages, rows: [quoteRow] });
    expect((await shown(QuotesPage, { query: { state: "open", page: "2" } })).links).toMatchObject({
      Newer: "/shop/quotes?state=open&page=1",
      Older: "/shop/quotes?state=open&page=3",
    });
    seeAs("desk");
    expect((await shown(CustomersPage)).links["How long what is kept"]).toBeUndefined();
    tell("listCustomers", refusal("not-allowed"));
    expect(await sentTo(CustomersPage)).toBe("not-found");
  });

  it("of calls are for whom they are meant", async () => {
    const asked: unknown[] = [];
    tell("listDrafts", (input: unknown) => {
      asked.push(input);
      return {
        rows: [{ sheetId: "s-1", name: "Kim", phone: null, answered: 4, lease: null, updatedAt: denver("10:00") }],
        total: 3,
        page: 1,
        pageSize: 1,
        unreadable: [],
      };
    });
    const page = await shown(CallsPage, { query: { text: "kim" } });
    expect(asked).toEqual([{ state: "open", text: "kim" }]);
    expect(page.table("Open drafts")).toEqual([
      { Who: "Kim", Telephone: "", Answered: "4", "Open with": "nobody", "Last change": "10 Nov 2026, 10:00" },
    ]);
    expect(page.form("Open the sheet").sent).toEqual({ phone: "", name: "" });
    expect(page.form("Open the sheet").optional).toEqual(["name"]);
    expect(page.text).toContain("page 1 of 3");
    expect(page.links.Older).toBe("/shop/call?text=kim&page=2");
    expect(page.form("Find").sent).toEqual({ text: "kim" });
    seeAs("maker");
    expect(await sentTo(CallsPage)).toBe("not-found");
  });

  it("of readings go away in the bench's units", async () => {
    const reading = {
      skiId: "TY-0401-L",
      pair: "TY-0401",
      measured: 1.7614,
      predictedBefore: 1.7,
      predictedAfter: 1.75,
      studentised: 1.23456,
      leftOut: false,
    };
    tell("readLearning", {
      calibration: {
        residuals: [
          { ...reading, measure: "massKg" },
          { ...reading, measure: "springCentreNPerMm", measured: 3.81, leftOut: true },
        ],
      },
    });
    expect((await (await measuredCsv()).text()).split("\r\n").slice(1, 3)).toEqual([
      "TY-0401-L,TY-0401,massKg,g,1761.4,1700,1750,1.235,no",
      "TY-0401-L,TY-0401,springCentreNPerMm,N/cm,38.1,17,17.5,1.235,yes",
    ]);
    tell("readLearning", refusal("not-allowed"));
    await expect(measuredCsv()).rejects.toMatchObject({ digest: expect.stringContaining("404") });
  });

  it("of promises go away whole, the tightest first", async () => {
    const pair = (serial: string, slackDays: number | null) => ({
      serial,
      modelName: "Midlow 95",
      lengthCm: 178,
      now: null,
      doneOperations: 3,
      allOperations: 14,
      plannedReady: "2026-11-17",
      expected: null,
      promisedOn: "2026-11-23",
      promiseClass: "promise",
      slackDays,
      standing: "safe",
      chanceKept: 0.895,
    });
    const pairs = [pair("TY-0403", null), ...Array.from({ length: 60 }, (_, i) => pair(`TY-${5000 + i}`, 60 - i))];
    tell("queueBoard", { pairs });
    const lines = (await (await promisesCsv()).text()).trim().split("\r\n");
    expect(lines).toHaveLength(62);
    expect(lines[0]).toMatch(/^pair,model,length_cm,station,done,of,/);
    expect(lines[1]).toBe("TY-5059,Midlow 95,178,,3,14,2026-11-17,,,2026-11-23,promise,1,safe,89.5");
    expect(lines.at(-1)).toMatch(/^TY-0403,/);
    tell("queueBoard", refusal("not-allowed"));
    await expect(promisesCsv()).rejects.toThrow();
  });

  it("of prices are what the book says, and not for everybody", async () => {
    const page = await shown(PricesPage);
    const [first] = catalog.build.models.filter(({ id }) => catalog.priceBook.modelCents[id] !== undefined);
    expect(page.text).toContain("Price book PB-3");
    expect(page.table("Models")[0]).toEqual({
      Item: first?.name,
      Price: `$${((catalog.priceBook.modelCents[first?.id ?? ""] ?? 0) / 100).toLocaleString("en-US")}`,
    });
    expect(page.table("Everything else")).toHaveLength(Object.keys(catalog.priceBook.optionCents).length);
    seeAs("maker");
    const isOpen = (await sentTo(PricesPage)) === null;
    expect((await framed(ShopLayout, "/shop")).links.Prices !== undefined).toBe(isOpen);
  });
});

describe("the shop's frame", () => {
  it("has the doors of a role, and says behind which one stands", async () => {
    const doors = async (path: string) => (await framed(ShopLayout, path)).one("nav").all("a");
    const here = async (path: string) =>
      (await doors(path)).filter((door) => door.attribute("aria-current") === "page").map(({ text }) => text);
    expect(await here("/shop")).toEqual(["Desk"]);
    expect(await here("/shop/orders/o-1")).toEqual(["Orders"]);
    const desk = (await doors("/shop")).map(({ text }) => text);
    expect(desk).toEqual(expect.arrayContaining(["Desk", "Calls", "Quotes", "Clubs", "Orders", "Queue"]));
    const frame = await framed(ShopLayout, "/shop");
    expect(frame.text).toContain("Sam Staff, desk");
    expect(frame.text).toContain("what is inside");
    expect(frame.one("form[action='/shop/search'] input").attribute("name")).toBe("text");
    seeAs("maker");
    const maker = (await doors("/shop/queue")).map(({ text }) => text);
    for (const door of ["Desk", "Calls", "Quotes", "Clubs", "Orders"]) expect(maker).not.toContain(door);
    expect(maker).toContain("Queue");
    seeAs(null);
    expect((await framed(ShopLayout, "/shop")).text).toBe("what is inside");
  });
});

describe("files", () => {
  const token = "t".repeat(43);
  const asked: unknown[] = [];
  const bytes = { bytes: new Uint8Array([1, 2, 3]), contentType: "application/pdf", fileName: "Q-101 ü.pdf" };
  const remember = (name: string) =>
    tell(name, (input: unknown) => {
      asked.push([name, input]);
      return bytes;
    });
  const params = <T,>(value: T) => ({ params: Promise.resolve(value) });
  const at = (query = "") => new Request(`http://shop/file${query}`);
  beforeEach(() => {
    asked.length = 0;
    for (const name of [
      "quoteDocument",
      "orderDocument",
      "clubDocument",
      "proofDocument",
      "buildSheetDocument",
      "kitListDocument",
      "labelsDocument",
      "artworkBytes",
    ])
      remember(name);
  });

  it("are printed for a private link or for staff, on the paper asked for", async () => {
    const file = await printQuote(at(), params({ key: "q-1" }));
    expect(
      Object.fromEntries(
        ["content-type", "content-length", "content-disposition", "cache-control", "x-content-type-options"].map(
          (name) => [name, file.headers.get(name)],
        ),
      ),
    ).toEqual({
      "content-type": "application/pdf",
      "content-length": "3",
      "content-disposition": "inline; filename*=UTF-8''Q-101%20%C3%BC.pdf",
      "cache-control": "no-store",
      "x-content-type-options": "nosniff",
    });
    hold("quote", "q-7");
    await printQuote(at("?paper=letter"), params({ key: token }));
    hold("order", "o-7");
    await printOrder(at("?prices=no"), params({ key: token }));
    await printOrder(at("?paper=letter&prices=yes"), params({ key: "o-1" }));
    await printClub(at("?paper=letter"), params({ clubId: "c-1" }));
    await printProof(at(), params({ key: token, pairId: "p-1" }));
    await printProof(at("?paper=letter"), params({ key: "shop", pairId: "p-1" }));
    for (const document of ["build-sheet", "kit-list", "labels"])
      await printPair(at(), params({ pairId: "p-1", document }));
    expect(asked).toEqual([
      ["quoteDocument", { quoteId: "q-1", paper: "A4" }],
      ["quoteDocument", { quoteId: "q-7", paper: "LETTER", token }],
      ["orderDocument", { orderId: "o-7", paper: "A4", isWithoutPrices: true, token }],
      ["orderDocument", { orderId: "o-1", paper: "LETTER", isWithoutPrices: false }],
      ["clubDocument", { clubId: "c-1", paper: "LETTER" }],
      ["proofDocument", { pairId: "p-1", paper: "A4", token }],
      ["proofDocument", { pairId: "p-1", paper: "LETTER" }],
      ["buildSheetDocument", { pairId: "p-1", paper: "A4" }],
      ["kitListDocument", { pairId: "p-1", paper: "A4" }],
      ["labelsDocument", { pairId: "p-1", paper: "A4" }],
    ]);
    await expect(printPair(at(), params({ pairId: "p-1", document: "secrets" }))).rejects.toMatchObject({
      digest: expect.stringContaining("404"),
    });
    for (const [code, status] of [
      ["not-allowed", 403],
      ["not-found", 404],
      ["too-many-attempts", 429],
      ["too-large", 413],
      ["anything-else", 422],
    ] as const) {
      tell("quoteDocument", refusal(code));
      const refused = await printQuote(at(), params({ key: "q-1" }));
      expect(refused.status).toBe(status);
      expect(await refused.json()).toMatchObject({ refusal: { code }, message: expect.any(String) });
    }
  });

  it("are pictures: shown small unless asked, taken up to 60 MB, under their name", async () => {
    hold("sheet", "s-7");
    const small = await showPicture(at(), params({ key: token, id: "a-1" }));
    expect(small.headers.get("cache-control")).toBe("private, max-age=86400, immutable");
    await showPicture(at("?size=full"), params({ key: "staff", id: "a-1" }));
    expect(asked).toEqual([
      ["artworkBytes", { artworkId: "a-1", size: "preview" }],
      ["artworkBytes", { artworkId: "a-1", size: "full" }],
    ]);
    // It lies in a file while it is taken: what is looked at is what was sent.
    const uploads: { sheetId: string; fileName: string; bytes: Uint8Array }[] = [];
    tell("uploadArtwork", ({ bytes, ...input }: { sheetId: string; fileName: string; bytes: UploadedFile }) => {
      uploads.push({ ...input, bytes: readFileSync(bytes.file) });
      return { artworkId: "a-2" };
    });
    const send = (key: string, query: string, body: Uint8Array<ArrayBuffer>, headers: Record<string, string> = {}) =>
      takePicture(new Request(`http://shop/files${query}`, { method: "POST", body, headers }), params({ key }));
    const taken = await send(token, "?name=fox.png", new Uint8Array([9, 8, 7]));
    expect(await taken.json()).toEqual({ artwork: { artworkId: "a-2" } });
    await send("s-1", "", new Uint8Array([1]));
    expect(uploads.map(({ sheetId, fileName, bytes: sent }) => [sheetId, fileName, [...sent]])).toEqual([
      ["s-7", "fox.png", [9, 8, 7]],
      ["s-1", "picture", [1]],
    ]);
    const most = 60 * 1024 * 1024;
    const declared = await send("s-1", "", new Uint8Array([1]), { "content-length": String(most + 1) });
    expect([declared.status, ((await declared.json()) as { refusal: { code: string } }).refusal.code]).toEqual([
      422,
      "artwork-too-big",
    ]);
    const parts = [new Uint8Array(most), new Uint8Array(1)];
    const body = new ReadableStream<Uint8Array>({
      pull: (controller) => {
        const next = parts.shift();
        if (next) controller.enqueue(next);
        else controller.close();
      },
    });
    const long = await takePicture(
      new Request("http://shop/files", { method: "POST", body, duplex: "half" } as RequestInit),
      params({ key: "s-1" }),
    );
    expect(long.status).toBe(422);
    expect(uploads).toHaveLength(2);
    tell("uploadArtwork", refusal("not-a-picture"));
    expect((await send("s-1", "", new Uint8Array([1]))).status).toBe(422);
  });
});

describe("one order", () => {
  const price = {
    priceBook: "PB-3",
    currency: "USD",
    lines: [],
    exTaxCents: 154_000,
    shippingCents: 0,
    taxCents: 9240,
    totalCents: 163_240,
    depositCents: 77_000,
  };
  const pair = {
    pairId: "p-1",
    serial: "TY-0401",
    modelName: "Midlow 84",
    skierName: "Bo",
    spec: assessed.spec,
    doneOperations: 3,
    allOperations: 14,
    revision: 2,
    version: 1,
    gates: { deposit: null, specificationLock: null, proof: "not-needed", rights: "not-needed" },
    proofs: [],
    proofState: "none",
    pressSlot: null,
  };
  const order = (known: object = {}) =>
    partly<OrderView>({
      orderId: "o-1",
      number: "O-301",
      state: "building",
      version: 3,
      quote: { quoteId: "q-1", number: "Q-101" },
      club: null,
      customer: {
        customerId: "cu-1",
        name: "Robin Alder",
        phone: "303 555 0101",
        email: "robin@alder.example",
        address: { lines: ["1 Larch Lane"], town: "Salida", region: "CO", postcode: "81201", country: "US" },
      },
      price,
      releaseHash: "h",
      customerSpecified: ["stiffness", "a picture"],
      promiseClass: "promise",
      estimate: { p50: "2026-12-10", p90: "2026-12-17" },
      promisedOn: "2026-12-23",
      slotLost: null,
      confirmed: { at: "2026-11-10T16:00:00.000Z", how: "desk", by: "Desk 1" },
      hardDate: null,
      clockStartedAt: denver("10:00"),
      waitingFor: [],
      payments: [],
      money: { totalCents: 163_240, paidCents: 0, openCents: 163_240, rush: null },
      pairs: [pair],
      allowed: [],
      ifCancelled: null,
      cancelled: null,
      history: [],
      ...known,
    } as never);
  const page = (known: object = {}) => {
    tell("readOrder", order(known));
    return shown(OrderPage, { params: { orderId: "o-1" } });
  };
  it("says who, what, when and how far it is", async () => {
    const seen = await page();
    expect(seen.headings[0]).toBe("Order O-301");
    expect(seen.part("Promise").text).toContain("Promised for 23 December 2026✓promise");
    expect(seen.part("Promise").text).toContain("The clock started 10 Nov 2026, 10:00");
    expect(seen.part("Customer").facts).toEqual({
      Name: "Robin Alder",
      Telephone: "303 555 0101",
      "E-mail": "robin@alder.example",
      Address: "1 Larch Lane, Salida, CO, 81201, US",
      "Made for this customer alone": "stiffness, a picture",
    });
    expect(seen.links).toMatchObject({
      "Q-101": "/shop/quotes/q-1",
      "Change the pair": "/shop/orders/o-1/edit?pair=p-1",
      "TY-0401": "/shop/pair/TY-0401",
      "Order confirmation, A4": "/files/orders/o-1",
      "Order confirmation, Letter": "/files/orders/o-1?paper=letter",
      "Copy without prices": "/files/orders/o-1?prices=no",
    });
    expect(seen.part("Pairs").text).toContain(`Midlow 84, ${assessed.spec?.lengthCm} cm3 of 14 operations done`);
    expect(seen.form("Make a new private link").sent).toEqual({ kind: "order", id: "o-1" });
    expect(seen.text).not.toContain("let the sale go on");
    const lifted = await page({
      allowed: [
        { code: "flex-out-of-range", message: "A stout flex.", by: "Odile", reason: "liked it before" },
        { code: "flex-out-of-range", message: null, by: "Odile", reason: "asked twice" },
      ],
    });
    expect(lifted.text).toContain("A stout flex.Odile let the sale go on: liked it before");
    expect(lifted.text).toContain(
      "A flex outside the shop's range was chosen by hand.Odile let the sale go on: asked twice",
    );
    const waiting = await page({
      promisedOn: null,
      clockStartedAt: null,
      promiseClass: "estimate",
      club: { clubId: "c-1", number: "C-21", name: "Moor" },
      customerSpecified: [],
      customer: { customerId: "cu-2", name: "Kim", phone: null, email: null, address: null },
    });
    expect(waiting.part("Promise").text).toContain("Told when it was ordered: ready 10–17 December 2026");
    expect(waiting.part("Promise").text).toContain("iestimateAn estimate until the last gate is passed");
    expect(waiting.links["C-21, Moor"]).toBe("/shop/clubs/c-1");
    expect(waiting.part("Pairs").text).toContain("ridden by Bo");
    expect(waiting.part("Customer").facts).toEqual({ Name: "Kim" });
    for (const state of ["shipped", "delivered", "cancelled"])
      expect((await page({ state })).links["Change the pair"]).toBeUndefined();
    const cancelled = await page({
      state: "cancelled",
      cancelled: { at: denver("11:00"), reason: "moved", feeCents: 5000, refundCents: 72_000 },
    });
    expect(cancelled.text).toContain("Cancelled 10 Nov 2026, 11:00: moved. Kept $50.00, given back $720.00.");
    expect(cancelled.links["Copy without prices"]).toBeUndefined();
  });

  it("keeps to the owner what is the owner's: a fixed press start, a fee given up, skis sent out unpaid", async () => {
    const rush = { cents: 15_000, taxCents: 900, totalCents: 15_900, paidAt: null };
    const known = {
      pairs: [{ ...pair, pressSlot: { press: "press-1", at: denver("12:00") } }],
      money: { totalCents: 179_140, paidCents: 0, openCents: 179_140, rush },
    };
    const buttons = async (state: string) => {
      const seen = (await page({ ...known, state })).buttons;
      return ["Take the slot away", "Waive it", "It has left the house"].filter((each) => seen.includes(each));
    };
    expect([await buttons("building"), await buttons("ready")]).toEqual([[], []]);
    seeAs("owner");
    expect(await buttons("building")).toEqual(["Take the slot away", "Waive it"]);
    expect(await buttons("ready")).toEqual(["Take the slot away", "Waive it", "It has left the house"]);
  });

  it("is changed after the change was looked at", async () => {
    tell("readOrder", order());
    const query = {
      pair: "p-1",
      lengthCm: String(assessed.spec?.lengthCm),
      flexRatio: "1,2",
      core: assessed.spec?.core ?? "",
      reinforcements: "",
    };
    const asked: unknown[] = [];
    const line = {
      code: "a",
      label: "Model",
      change: "changed",
      beforeCents: 100,
      afterCents: 300,
      differenceCents: 200,
    };
    const effect = {
      pairId: "p-1",
      parts: ["flex"],
      consequences: ["reprice", "promise"],
      before: { price },
      after: { price: { ...price, totalCents: 163_452 } },
      comparison: {
        lines: [line],
        exTaxBeforeCents: 100,
        exTaxAfterCents: 300,
        exTaxDifferenceCents: 200,
        totalDifferenceCents: 212,
      },
      lostCents: 0,
      promise: { before: "2026-12-23", after: { p50: "2027-01-12", p90: "2027-01-20" } },
    };
    tell("previewEdit", (input: unknown) => {
      asked.push(input);
      return effect;
    });
    const edit = (more: object = {}) => shown(EditPage, { params: { orderId: "o-1" }, query: { ...query, ...more } });
    const seen = await edit();
    expect(asked).toEqual([
      {
        pairId: "p-1",
        choices: { lengthCm: assessed.spec?.lengthCm, flexRatio: 1.2, core: assessed.spec?.core, reinforcements: [] },
        ownerApproves: false,
      },
    ]);
    const what = seen.part("What follows");
    expect(what.items).toEqual(["the price is worked out again", "the promise is worked out again"]);
    expect(what.text).toContain("Promise now: 23 December 2026. Promise after: ready 12–20 January 2027");
    expect(what.text).not.toContain("Work that would be thrown away");
    expect(what.table("What follows").at(-1)).toEqual({
      Line: "Total",
      Before: "$1,632.40",
      Today: "$1,634.52",
      Difference: "+$2.12",
    });
    expect(what.form("Change the pair").sent).toEqual({
      orderId: "o-1",
      pairId: "p-1",
      revision: "2",
      lengthCm: query.lengthCm,
      flexRatio: "1.2",
      core: query.core,
      reinforcements: "",
      reason: "",
    });
    tell("previewEdit", { ...effect, lostCents: 12_300, promise: { ...effect.promise, before: null } });
    const owner = await edit({ approve: "yes" });
    expect(owner.text).toContain("Work that would be thrown away: $123.00.");
    expect(owner.text).toContain("Promise now: no promise yet.");
    expect(Object.keys(owner.form("Change the pair").fields)).toContain("ownerApproves");
    tell("previewEdit", { ...effect, parts: [] });
    expect((await edit()).text).toContain("That is the pair as it stands.");
    tell("previewEdit", refusal("too-late", { lostCents: 12_300 }));
    const desk = await edit();
    expect(desk.text).toContain("Work that would be thrown away: $123.00.");
    expect(Object.keys(desk.links)).not.toContain("With the owner's approval: show what it would do");
    seeAs("owner");
    expect((await edit()).links["With the owner's approval: show what it would do"]).toContain("approve=yes");
    tell("previewEdit", refusal("not-allowed"));
    expect(Object.keys((await edit()).links)).not.toContain("With the owner's approval: show what it would do");
    const wrong = await edit({ flexRatio: "stiff" });
    expect(wrong.form("See what it does").fields.flexRatio?.error).toBeTruthy();
    expect(wrong.form("See what it does").sent.flexRatio).not.toBe("");
    const lengths = catalog.build.models.find(({ id }) => id === assessed.spec?.model)?.lengths ?? [];
    expect(wrong.form("See what it does").fields.lengthCm?.choices).toEqual(
      Object.fromEntries(lengths.map(({ lengthCm }) => [String(lengthCm), `${lengthCm} cm`])),
    );
    expect(wrong.hasPart("What follows")).toBe(false);
    const first = await shown(EditPage, { params: { orderId: "o-1" } });
    expect(first.form("See what it does").fields.flexRatio?.error).toBeNull();
    expect(first.form("See what it does").sent).toMatchObject({
      pair: "p-1",
      lengthCm: query.lengthCm,
      core: query.core,
    });
  });
});

describe("sheets", () => {
  it("are compared in numbers, each pair in its own column, and taken with the sheet's version", async () => {
    hold("sheet", "s-1");
    tell("readSheet", viewOf({ sheetId: "s-1", version: 6 }));
    const page = await shown(SkierComparePage, { params: { token: "tok" } });
    const rowsOf = (caption: string) =>
      page
        .all("table")
        .find((table) => table.all("caption").some(({ text }) => text === caption))
        ?.all("tbody tr")
        .map((row) => row.all("th, td").map(({ text }) => text)) ?? [];
    const rows = [...rowsOf("The pairs in numbers"), ...rowsOf("All the numbers")];
    const [first, second] = assessed.recommendation?.choices ?? [];
    const names = [first, second].map((choice) => catalog.build.models.find(({ id }) => id === choice?.model)?.name);
    expect(rows[0]?.slice(0, 3)).toEqual(["Model", ...names]);
    expect(rows[2]?.slice(0, 3)).toEqual(["Length, cm", String(first?.lengthCm), String(second?.lengthCm)]);
    // Price among the first of at most eight rows; the rest is one tap away.
    expect(rows[1]?.[0]).toBe("Price with tax and shipping");
    expect(rowsOf("The pairs in numbers")).toHaveLength(8);
    const row = (name: string) => rows.find(([head]) => head?.startsWith(name));
    // In the bench's unit, each beside the length between its own supports: shoulder and heel.
    const spans = [first, second].map((choice) => {
      const model = catalog.build.models.find(({ id }) => id === choice?.model);
      return model ? shapeAtLength(model.shape, choice?.lengthCm ?? 0).sidecutLengthMm.toFixed(0) : "";
    });
    const centre = (10 * (assessed.flex?.springCentreNPerMm ?? 0)).toFixed(1);
    expect(row("Spring, centre, N/cm")?.[1]).toBe(`${centre} over ${spans[0]} mm`);
    expect(row("Spring, centre, N/cm")?.[2]).toMatch(new RegExp(`^[\\d.]+ over ${spans[1]} mm$`));
    expect(row("Mass of one ski")?.[1]).toBe(((assessed.finishedFlex?.massKg ?? 0) * 1000).toFixed(0));
    expect(row("Price with tax")?.[1]).toBe(
      `$${((assessed.price?.totalCents ?? 0) / 100).toLocaleString("en-US", { minimumFractionDigits: 2 })}`,
    );
    expect(rows).toHaveLength(23);
    const takes = page.part("Take one onto the sheet");
    expect(takes.items[0]).toContain("This is what the sheet says now.");
    expect(takes.forms.map(({ sent }) => sent)).toEqual(
      [second, assessed.recommendation?.choices[2]].map((choice) => ({
        token: "tok",
        candidate: choice?.model,
        other: "",
        version: "6",
      })),
    );
    expect(page.links["Back to the sheet"]).toBe("/sheet/tok");
    const ticked = page.forms[0]?.fields.show;
    expect(ticked?.value).toBe(["sheet", second?.model, assessed.recommendation?.choices[2]?.model].join(","));
    const many = await shown(SkierComparePage, {
      params: { token: "tok" },
      query: { show: ["sheet", ...(assessed.recommendation?.choices.map(({ model }) => model) ?? [])] },
    });
    expect(many.one("[role=alert]").text).toContain("4 are chosen; 3 fit on one axis");
    expect(many.one("[role=alert]").text).toContain("take 1 away");
    const bad = await shown(SkierComparePage, { params: { token: "tok" }, query: { other: "hello" } });
    expect(bad.forms[0]?.fields.other?.error).toContain("does not look like the private link");
    tell("readSheet", viewOf({ state: "quoted" }));
    const closed = await shown(SkierComparePage, { params: { token: "tok" } });
    expect(closed.part("Take one onto the sheet").forms).toEqual([]);
    tell("readSheet", viewOf({ answers: {}, typed: {}, choices: {} }));
    const empty = await shown(SkierComparePage, { params: { token: "tok" } });
    expect(empty.text).toContain("The sheet has no ski yet");
    expect(empty.text).toContain("Choose at least one to see it here.");
  });

  it("are compared without what cannot be worked out, which is named, and a clash is told before it is taken", () => {
    const sheet = viewOf();
    const view = (input: object, clash: string | null = null, state: "open" | "quoted" = "open") =>
      drawn(
        <CompareView
          sheet={{ ...sheet, state }}
          other={{ state: "found", input: input as never }}
          query={{ show: [], other: "x" }}
          catalog={catalog}
          words={compareWords}
          backHref="/back"
          take={(id) => <button type="button">Take {id}</button>}
          clashText={() => clash}
        />,
      );
    const lost = view({ answers: {}, choices: {} });
    expect(lost.text).toContain(
      "The other sheet cannot be worked out with the options of this sheet, so it is left out.",
    );
    expect(lost.part("Take one onto the sheet").items).toHaveLength(1);
    const found = view({ answers: { ...answers, massKg: 95 }, choices: {} });
    expect(found.text).not.toContain("cannot be worked out");
    expect(found.part("Take one onto the sheet").items).toHaveLength(2);
    expect(found.buttons).toContain("Take other");
    expect(view({ answers, choices: {} }, "no such wood").part("Take one onto the sheet").items[1]).toContain(
      "no such wood",
    );
    expect(view({ answers, choices: {} }, null, "quoted").buttons).not.toContain("Take other");
  });

  it("are shown behind their link, closed ones with the reason", async () => {
    hold("sheet", "s-1");
    tell("skierBand", refusal("not-found"));
    tell("readSheet", viewOf());
    const open = await shown(SheetPage, { params: { token: "tok" } });
    expect(open.text).not.toContain("A quote was made from this sheet");
    expect(open.links["Compare this pair with others on one axis"]).toBe("/sheet/tok/compare");
    tell("readSheet", viewOf({ state: "quoted" }));
    expect((await shown(SheetPage, { params: { token: "tok" } })).text).toContain("A quote was made from this sheet");
  });

  it("ask in the units that were typed in this browser last", async () => {
    hold("sheet", "s-1");
    tell("skierBand", refusal("not-found"));
    tell("readSheet", viewOf({ answers: {}, typed: {}, choices: {} }));
    const asked = async (units: string | null) => {
      freshBrowser();
      if (units !== null) (await cookies()).set("units", units);
      const page = await shown(SheetPage, { params: { token: "tok" } });
      return page.all("input[name=heightUnit][checked]").map((input) => input.attribute("value"));
    };
    expect(await asked(null)).toEqual(["cm"]);
    expect(await asked("metric")).toEqual(["cm"]);
    expect(await asked("imperial")).toEqual(["ft-in"]);
  });

  it("are worked on the telephone by whoever holds them", async () => {
    tell("skierBand", refusal("not-found"));
    tell("findByPhone", {
      customer: { customerId: "cu-1", name: "Robin Alder" },
      sameNumber: [{ customerId: "cu-2", name: "Wren Sorrel" }],
      quotes: [{ quoteId: "q-1", number: "Q-101", state: "open" }],
      orders: [{ orderId: "o-1", number: "O-301", state: "shipped" }],
    });
    const known = {
      club: null,
      lease: { holder: "Desk 1", isMine: true },
      callBack: { at: denver("15:00"), phone: "303 555 0101", reason: "later" },
      review: { askedAt: denver("09:00"), note: "light" },
      asked: { ability: "not asked" },
      notes: "tall",
      fields: {},
      quotes: [],
      turnedDown: null,
    };
    const page = (more: object = {}) => {
      tell("readSheet", viewOf({ sheetId: "s-1", ...known, ...more }));
      return shown(CallPage, { params: { sheetId: "s-1" } });
    };
    const mine = await page();
    expect(mine.headings[0]).toBe("Call: Robin Alder");
    expect(mine.text).toContain("Known customer: Robin Alder, 303 555 0101");
    expect(mine.links).toMatchObject({ "O-301, shipped": "/shop/orders/o-1", "Q-101, open": "/shop/quotes/q-1" });
    expect(mine.text).toContain("You have this draft.");
    expect(mine.form("Put it down").sent).toEqual({ sheetId: "s-1" });
    expect(mine.buttons).not.toContain("Take over");
    expect(mine.one("fieldset").attribute("disabled")).toBeNull();
    expect(mine.text).toContain("Call back set: 10 Nov 2026, 15:00, 303 555 0101. later");
    expect(mine.text).toContain("Before the owner since 10 Nov 2026, 09:00: light");
    expect(mine.form("Set the call back").sent).toEqual({ sheetId: "s-1", at: "", reason: "", phone: "303 555 0101" });
    expect(mine.form("Turn down").sent).toEqual({ sheetId: "s-1", reason: "" });
    // Five of fourteen are answered; snow comes next of those nobody has asked.
    expect(mine.text).toContain(`${Object.keys(answers).length} of 14 answered`);
    expect(mine.text).toContain("Next question: The snow they ski most");
    expect((await page({ asked: { homeSnow: "refused" } })).text).toContain("Next question: Turns they like");
    const free = await page({ lease: null });
    expect(free.form("Take over").sent).toEqual({ sheetId: "s-1" });
    expect(free.text).not.toContain("You have this draft.");
    const theirs = await page({ lease: { holder: "Desk 2", isMine: false } });
    expect(theirs.text).toContain("Draft open by Desk 2");
    expect(theirs.one("fieldset").attribute("disabled")).toBe("");
    const closed = await page({
      state: "turned-down",
      turnedDown: "too light",
      quotes: [{ quoteId: "q-1", number: "Q-101" }],
    });
    expect(closed.text).toContain("This sheet was turned down: too light");
    expect(closed.form("Start a changed copy").sent).toEqual({ sheetId: "s-1" });
    expect(closed.buttons).not.toContain("Set the call back");
    tell("findByPhone", { customer: null, sameNumber: [], quotes: [], orders: [] });
    expect((await page()).text).toContain("303 555 0101. This number is new to us.");
    const club = await page({ club: { clubId: "c-1", skierName: "Bo" }, contact: {} });
    expect(club.headings[0]).toBe("Call: Bo");
    expect(club.links["Part of the club order"]).toBe("/shop/clubs/c-1");
    expect((await page({ contact: {} })).headings[0]).toBe("Call: new caller");
  });
});

describe("the method page", () => {
  it("writes numbers with six digits, powers of ten at both ends, and units by their names", () => {
    expect([0, 12.3456789, -0.5, 1_234_567, 0.000_123_4].map((value) => plainNumber(value))).toEqual([
      "0",
      "12.3457",
      "−0.5",
      "1.23457 · 10⁶",
      "1.234 · 10⁻⁴",
    ]);
    expect([plainNumber(1e6), plainNumber(999_999), plainNumber(1e-3), plainNumber(9.9e-4)]).toEqual([
      "1 · 10⁶",
      "999999",
      "0.001",
      "9.9 · 10⁻⁴",
    ]);
    expect(linesOf(2)).toEqual(["2"]);
    expect(linesOf([1, 2])).toEqual(["1  2"]);
    expect(
      linesOf([
        [1, 1e-12],
        [0, -3],
      ]),
    ).toEqual(["1  0", "0  −3"]);
    expect([
      nameForPeople("Ex_GPa"),
      nameForPeople("EI_Nm2 UD"),
      nameForPeople("zbar_mm_from_bottom"),
      nameForPeople("a_b"),
      nameForPeople("rho_kg_m3"),
    ]).toEqual(["Ex, GPa", "EI UD, N·m²", "zbar from bottom, mm", "a b", "rho, kg/m³"]);
    expect([percent(0.01234), percent(1e-9), percent(1e-8)]).toEqual(["1.2 %", "0 %", "1 · 10⁻⁶ %"]);
  });
  it("shows each formula with its source and checks, and computed against measured", async () => {
    const point = (known: object) => ({
      skiId: "TY-0401-L",
      pair: "TY-0401",
      measure: "springCentreNPerMm",
      measured: 3.81,
      predictedBefore: 3.6,
      predictedAfter: 3.7,
      leftOut: false,
      ...known,
    });
    tell("readPredictedVersusMeasured", {
      pairs: 21,
      skis: 42,
      leastPairs: 20,
      bookInForce: "CB-1",
      quality: [],
      points: [point({}), point({ skiId: "out", leftOut: true })],
    });
    const page = await shown(MethodPage);
    expect(page.all("nav a").every((link) => page.all(link.attribute("href") ?? "x").length === 1)).toBe(true);
    expect(page.text).toContain("These are the 42 skis of 21 pairs read so far");
    expect(page.text).toContain("Book in force: CB-1.");
    const row = page.all("tr").find(({ text }) => text.startsWith("TY-0401-L"));
    expect(row?.all("th, td").map(({ text }) => text)).toEqual(["TY-0401-L", "38.1", "36.0", "37.0"]);
    expect(page.all("details").filter(({ text }) => / checks? |of \d+/.test(text)).length).toBeGreaterThan(0);
  });
});
