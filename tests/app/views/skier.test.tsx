/** The skier's pages and the desk's quote, drawn from what the engine says of one skier and from states made by hand. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import HomePage from "#app/(site)/page.tsx";
import SkierClubPage, { metadata as clubMetadata } from "#app/(skier)/club/[token]/page.tsx";
import SkierPairPage, { metadata as pairMetadata } from "#app/(skier)/pair/[token]/page.tsx";
import SkierQuotePage, { metadata as quoteMetadata } from "#app/(skier)/quote/[token]/page.tsx";
import { Terms } from "#app/(skier)/terms.tsx";
import DeskQuotePage from "#app/shop/(staff)/quotes/[quoteId]/page.tsx";
import type { Price, PriceComparison } from "#engine/pricing";
import { pairLook } from "#engine/scene";
import type { ClubView, ProgressView, QuoteView } from "#services";
import { catalog, specOf } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";
import { sentTo, shown } from "../../support/page-render";
import { hold, refusal, seeAs, tell } from "../../support/page-views";
import { answers, assessed, typed } from "../../support/sheet";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));

/** Winter in Denver is seven hours behind UTC. */
const denver = (time: string, day = "2026-11-10") =>
  new Date(Date.parse(`${day}T${time}:00.000Z`) + 7 * 3_600_000).toISOString();
const spec = assessed.spec;
if (!spec) throw new Error("no recommendation");
const range = { p50: "2026-12-10", p90: "2026-12-17", drivers: [{ code: "work", workingDays: 3 }] };
const price = partly<Price>({
  priceBook: "PB-3",
  currency: "USD",
  destination: "collect",
  lines: [{ code: "model", label: "Midlow 84, 182 cm", quantity: 1, lineCents: 154_000 }],
  exTaxCents: 154_000,
  shippingCents: 0,
  taxCents: 9240,
  totalCents: 163_240,
  depositCents: 77_000,
});
const quoteWith = (known: object = {}) =>
  partly<QuoteView>({
    quoteId: "q-1",
    number: "Q-101",
    state: "open",
    version: 2,
    sheetId: "s-1",
    customer: { name: "Robin Alder", phone: "303 555 0101", email: null },
    club: null,
    answers,
    typed,
    spec,
    price,
    releaseHash: "0123456789abcdef",
    engineVersion: "e-7",
    fit: {
      modelName: "Midlow 84",
      flexClassLabel: "Middle",
      massKg: 1.7332,
      springCentreNPerMm: 2.6712,
      sidecutRadiusM: 17.14,
      flags: [],
      spread: { springCentre: 0.02, massG: 60 },
    },
    flagAcks: [],
    dateRange: range,
    customerSpecified: ["stiffness made for your measures"],
    validUntilDay: "2026-12-01",
    replaces: null,
    replacedBy: null,
    changeRequest: null,
    withdrawn: null,
    honoured: null,
    order: null,
    onOldBook: false,
    history: [{ seq: "1", at: denver("10:00"), kind: "quote-made", by: "Desk 1", data: {} }],
    ...known,
  } as never);
const after = { ...price, totalCents: 169_600 } as Price;
const comparison = {
  lines: [
    {
      code: "model",
      label: "Midlow 84, 182 cm",
      change: "changed",
      beforeCents: 154_000,
      afterCents: 160_000,
      differenceCents: 6000,
    },
  ],
  exTaxBeforeCents: 154_000,
  exTaxAfterCents: 160_000,
  exTaxDifferenceCents: 6000,
  totalDifferenceCents: 6360,
} as unknown as PriceComparison;
const offer = { before: price, after, comparison, dateRange: { p50: "2027-01-12", p90: "2027-01-20" }, blockedBy: [] };

beforeEach(() => {
  seeAs("desk");
  const release = { engine: catalog, hash: "h" };
  tell("catalogOfRelease", release);
  tell("buildOfRelease", catalog.build);
  tell("previewReprice", offer);
});

describe("the skier's quote", () => {
  const page = (known: object = {}) => {
    hold("quote", "q-1");
    tell("readQuote", quoteWith(known));
    return shown(SkierQuotePage, { params: { token: "tok" } });
  };
  it("says pair, price, day and what it was made from", async () => {
    const seen = await page();
    expect(quoteMetadata).toMatchObject({ title: "Quote", robots: { index: false } });
    expect(seen.headings[0]).toBe("Quote Q-101");
    expect(seen.text).toContain("Midlow 84, 174 cm, flex class middle");
    expect(seen.text).toContain("iopen until the end of 1 December 2026");
    expect(seen.links).toMatchObject({
      "Print it: A4": "/files/quotes/tok",
      "or Letter": "/files/quotes/tok?paper=letter",
    });
    expect(seen.table("Price").at(-2)).toEqual({ Line: "Total", USD: "$1,632.40" });
    expect(seen.text).toContain("Price book PB-3, open until the end of 1 December 2026.");
    expect(seen.part("When").text).toContain("10–17 December 2026, nine times out of ten by the later date.");
    expect(seen.part("What you told us").facts).toEqual({
      Height: "182 cm",
      "Weight without gear": "82 kg",
      "You ski": "Confident",
      "How do you like to ski?": "Steady",
      "Share of your days off the groomed runs": "40 %",
      // One deviation of 60 g is 0.06 kg; nine in ten lie within 1.645 of them.
      "One ski weighs": "1.73 ± 0.10 kg",
      "Sidecut radius": "17.1 m",
      "Centre spring constant": "26.7 ± 0.9 N/cm",
    });
    expect(seen.text).toContain("± holds for nine pairs of ten");
    expect(seen.hasPart("To bear in mind")).toBe(false);
    expect(seen.items).toContain("stiffness made for your measures");
    const bare = await page({
      typed: {},
      answers: {},
      fit: { ...quoteWith().fit, spread: undefined, flags: [{ code: "f", message: "Very light" }] },
    });
    expect(bare.part("What you told us").facts).toEqual({
      "One ski weighs": "1.73 kg",
      "Sidecut radius": "17.1 m",
      "Centre spring constant": "26.7 N/cm",
    });
    expect(bare.part("To bear in mind").text).toContain("Very light");
    expect(bare.text).not.toContain("± holds for nine pairs of ten");
  });

  it("is accepted with name and both ticks, changed on request, and leads to its order", async () => {
    const open = await page();
    const accept = open.form("Accept and order");
    expect(accept.sent).toEqual({ token: "tok", name: "Robin Alder" });
    expect(accept.fields.acceptsTerms?.label).toBe("I accept the terms and the price of $1,632.40");
    expect(accept.fields.sawWithdrawalNotice?.label).toBe("I have read what is said about my right to withdraw");
    expect(open.form("Send").sent).toEqual({ token: "tok", note: "" });
    expect(open.hasPart("The quote's days are over. On today's price book and queue it would be:")).toBe(false);
    const asked = await page({ changeRequest: "in blue" });
    expect(asked.text).toContain("You asked for a change: “in blue”.");
    expect(asked.buttons).toEqual(["Accept and order"]);
    const accepted = await page({ state: "accepted" });
    expect(accepted.forms.map(({ buttons, sent }) => [buttons, sent])).toEqual([
      [["Go to your order"], { token: "tok" }],
    ]);
    expect((await page({ state: "withdrawn" })).buttons).toEqual([]);
    const replaced = await page({ state: "replaced", replacedBy: { quoteId: "q-2", number: "Q-101 r2" } });
    expect(replaced.text).toContain("replaced by Q-101 r2");
    expect(replaced.buttons).toEqual([]);
  });

  it("is priced anew once its days are over, where it can be built again", async () => {
    const expired = await page({ state: "expired" });
    const title = "The quote's days are over. On today's price book and queue it would be:";
    expect(expired.buttons).toEqual(["Send", "Make the new quote"]);
    expect(expired.table(title)[0]).toEqual({
      Line: "Midlow 84, 182 cm",
      Before: "$1,540.00",
      Today: "$1,600.00",
      Difference: "+$60",
    });
    expect(expired.table(title).at(-1)).toEqual({
      Line: "Total",
      Before: "$1,632.40",
      Today: "$1,696.00",
      Difference: "+$63.60",
    });
    expect(expired.part(title).text).toContain("12–20 January 2027");
    expect(expired.form("Make the new quote").sent).toEqual({ token: "tok" });
    tell("previewReprice", { ...offer, blockedBy: [{ code: "not-found", what: "option" }] });
    expect((await page({ state: "expired" })).buttons).toEqual(["Send"]);
    tell("previewReprice", refusal("not-found", { what: "quote" }));
    expect((await page({ state: "expired" })).hasPart(title)).toBe(false);
    tell("readQuote", refusal("not-found"));
    expect(await sentTo(SkierQuotePage, { params: { token: "tok" } })).toBe("not-found");
  });

  it("tells of the right to withdraw that fits, and what cancelling costs at each stage", () => {
    const own = drawn(<Terms specified={["stiffness", "a picture"]} soldFor={[]} />);
    const chosen = drawn(<Terms specified={[]} soldFor={[]} />);
    expect(own.text).toContain("Made for you alone");
    expect(own.items.slice(0, 2)).toEqual(["stiffness", "a picture"]);
    expect(chosen.text).not.toContain("Made for you alone");
    expect(own.part("Terms").text).not.toBe(chosen.part("Terms").text);
    // The ladder of content/catalog/shop.json.
    expect(Object.values(own.facts)).toEqual([
      "we keep $50",
      "we keep $50",
      "we keep $50 and the fee for the art",
      "we keep 30 %",
      "we keep 50 %",
      "we keep 80 %",
      "we keep 100 %",
    ]);
  });
});

describe("the desk's quote", () => {
  const page = (known: object = {}, query = {}) => {
    tell("readQuote", quoteWith(known));
    return shown(DeskQuotePage, { params: { quoteId: "q-1" }, query });
  };
  it("becomes an order with the name, the way and what was told", async () => {
    const seen = await page();
    expect(seen.text).toContain("Midlow 84, 174 cm, flex class middle, for Robin Alder");
    expect(seen.form("Make it an order").sent).toEqual({ quoteId: "q-1", name: "Robin Alder", how: "phone" });
    expect(seen.form("Make it an order").fields.how?.choices).toEqual({
      phone: "on the telephone",
      counter: "at the counter",
    });
    expect(seen.form("Withdraw the quote").sent).toEqual({ quoteId: "q-1", reason: "" });
    expect(seen.form("Start a changed copy").sent).toEqual({ sheetId: "s-1" });
    expect(seen.part("Customer").facts).toEqual({
      Name: "Robin Alder",
      Telephone: "303 555 0101",
      Height: "182 cm",
      "Weight without gear": "82 kg",
      "You ski": "Confident",
    });
    expect(seen.part("Customer").links).toMatchObject({
      "PDF, A4": "/files/quotes/q-1",
      "PDF, Letter": "/files/quotes/q-1?paper=letter",
      "The sheet it was made from": "/shop/call/s-1",
    });
    expect(seen.text).toContain("Price book PB-3, release 0123456789, engine e-7");
    expect(seen.part("When").text).toContain("Ready 10–17 December 2026");
    expect(seen.text).toContain("No flag was raised.");
    expect(seen.text).not.toContain("old book");
    expect(seen.hasPart("Price it anew")).toBe(false);
    expect(seen.one("summary").element.closest("details")?.hasAttribute("open")).toBe(false);
    const asked = await page({
      changeRequest: "in blue",
      onOldBook: true,
      club: { clubId: "c-1", skierName: "Bo" },
      replaces: { quoteId: "q-0", number: "Q-100" },
    });
    expect(asked.text).toContain("The skier asks for a change: in blue");
    expect(asked.text).toContain("old book");
    expect(asked.text).toContain("flex class middle, for Bo");
    expect(asked.links).toMatchObject({ "Part of the club order": "/shop/clubs/c-1", "Q-100": "/shop/quotes/q-0" });
  });

  it("says what became of it", async () => {
    const order = { orderId: "o-1", number: "O-301", pairIds: [] };
    const became = await page({ state: "accepted", order });
    expect(became.text).toContain("This quote became order");
    expect(became.links["O-301"]).toBe("/shop/orders/o-1");
    expect(became.buttons).toEqual(["Make a new private link", "Close its private links"]);
    const late = await page({ state: "accepted", order }, { late: "yes" });
    expect(late.one("[role=alert]").text).toContain("Somebody was first");
    expect((await page({}, { late: "yes" })).all("[role=alert]")).toEqual([]);
    const withdrawn = await page({
      state: "withdrawn",
      withdrawn: "no wood",
      replacedBy: { quoteId: "q-2", number: "Q-102" },
      honoured: { by: "Ola", until: denver("16:30"), reason: "regular" },
    });
    expect(withdrawn.text).toContain("Withdrawn: no wood");
    expect(withdrawn.text).toContain("Old price honoured by Ola until 10 Nov 2026, 16:30: regular");
    expect(withdrawn.links["Q-102"]).toBe("/shop/quotes/q-2");
  });

  it("is priced anew by the desk, and honoured by an owner alone", async () => {
    const desk = await page({ state: "expired" });
    expect(desk.part("Price it anew").text).toContain("Ready 12–20 January 2027");
    expect(desk.form("Make the new revision").sent).toEqual({ quoteId: "q-1" });
    expect(desk.part("Stand by the old price").text).toContain("Only an owner may let the old price stand.");
    expect(desk.buttons).not.toContain("Honour the old price");
    seeAs("owner");
    const owner = await page({ state: "expired" });
    expect(owner.form("Honour the old price").sent).toEqual({ quoteId: "q-1", reason: "" });
    tell("previewReprice", { ...offer, blockedBy: [{ code: "not-allowed" }] });
    const blocked = await page({ state: "expired" });
    expect(blocked.text).toContain("It cannot be made again as it stands:");
    expect(blocked.buttons).not.toContain("Make the new revision");
    tell("previewReprice", refusal("not-allowed"));
    expect((await page({ state: "expired" })).part("Price it anew").text).toContain("You may not do this.");
  });

  it("keeps who answered for a flag", async () => {
    const flags = [
      { code: "very-light", message: "Very light" },
      { code: "growing", message: "Still growing" },
    ];
    const seen = await page({
      fit: { ...quoteWith().fit, flags },
      flagAcks: [{ code: "growing", by: "Ola", reason: "spoke to them" }],
    });
    expect(seen.part("Flags and who answered for them").text).toBe(
      "Flags and who answered for them!Very light!Still growingAcknowledged by Ola: spoke to them",
    );
  });
});

describe("the skier's pair", () => {
  const gates = {
    deposit: null,
    specificationLock: denver("10:00"),
    proof: "not-needed",
    rights: "not-needed",
    waitingFor: ["deposit"],
  };
  const money = { totalCents: 163_240, rush: null, paidCents: 0, openCents: 163_240 };
  const progress = (known: object = {}) =>
    partly<ProgressView>({
      pairId: "p-1",
      serial: "TY-0401",
      orderId: "o-1",
      orderNumber: "O-301",
      state: "waiting",
      modelName: "Midlow 84",
      lengthCm: 182,
      flexClassLabel: "Middle",
      spec,
      steps: [
        { key: "a", label: "Ordered", state: "done", at: denver("18:00") },
        { key: "b", label: "Building", state: "now", at: null },
        { key: "c", label: "Ready", state: "to-come", at: null },
      ],
      gates,
      deposit: { cents: 77_000, paidAt: null, method: null },
      money,
      promiseClass: "estimate",
      dateRange: range,
      promisedOn: null,
      slotLost: null,
      unconfirmed: null,
      dateHistory: [],
      proof: null,
      rights: null,
      soldFor: {},
      ...known,
    } as never);
  const page = (known: object = {}, kind = "order", query = {}) => {
    hold(kind, kind === "order" ? "o-1" : "p-1");
    tell("pairsOfOrder", [{ pairId: "p-1", serial: "TY-0401" }]);
    tell("readProgress", progress(known));
    return shown(SkierPairPage, { params: { token: "tok" }, query });
  };
  it("says where it is, when it is ready and how that day has moved", async () => {
    const seen = await page();
    expect(pairMetadata).toMatchObject({ title: "Your pair", robots: { index: false } });
    expect(seen.headings[0]).toBe("Your pair TY-0401");
    expect(seen.text).toContain("Midlow 84, 182 cm, flex class middle. Order O-301.");
    expect(seen.part("Where it is").items).toEqual([
      "✓Ordered, done10 November 2026",
      "▸Building, now",
      "Ready, to come",
    ]);
    expect(seen.part("When").text).toContain("As things stand, your pair is ready 10–17 December 2026");
    expect(seen.part("When").text).toContain("The date has not moved since you ordered.");
    expect(seen.links).toMatchObject({
      "Order confirmation, A4": "/files/orders/tok",
      "Order confirmation, Letter": "/files/orders/tok?paper=letter",
      "Copy without prices": "/files/orders/tok?prices=no",
    });
    expect(seen.all("nav[aria-label='Which pair?']")).toEqual([]);
    const moved = await page({
      promisedOn: "2026-12-23",
      slotLost: { at: denver("10:00"), reason: "proof-late" },
      dateHistory: [
        { at: denver("18:00"), on: "2026-11-10", from: "2026-12-10", to: "2026-12-17", why: "estimate-renewed" },
      ],
    });
    expect(moved.part("When").text).toContain("Promised for 23 December 2026");
    expect(moved.part("When").text).toContain("the proof has not been answered");
    expect(moved.table("How the date has moved")).toEqual([
      { On: "10 November 2026", Ready: "10–17 December 2026", Why: "Worked out anew from the queue" },
    ]);
    tell("pairsOfOrder", [
      { pairId: "p-1", serial: "TY-0401" },
      { pairId: "p-2", serial: "TY-0402" },
    ]);
    const asked: unknown[] = [];
    tell("readProgress", (input: unknown) => {
      asked.push(input);
      return progress();
    });
    const two = await shown(SkierPairPage, { params: { token: "tok" }, query: { pair: "p-2" } });
    expect(asked).toEqual([{ pairId: "p-2" }]);
    expect(
      two
        .one("nav")
        .all("a")
        .map((link) => [link.text, link.attribute("href"), link.attribute("aria-current")]),
    ).toEqual([
      ["TY-0401", "/pair/tok?pair=p-1", null],
      ["TY-0402", "/pair/tok?pair=p-2", "page"],
    ]);
    hold("quote", "q-1");
    expect(await sentTo(SkierPairPage, { params: { token: "tok" } })).toBe("not-found");
    const cancelled = await page({ state: "cancelled" });
    expect(cancelled.text).toContain("This order was cancelled.");
    expect(cancelled.buttons).toEqual([]);
    expect(cancelled.links["Order confirmation, A4"]).toBeUndefined();
  });

  it("asks the order's own link for the deposit, and shows what it costs in all", async () => {
    const seen = await page();
    expect(seen.part("Waiting for you").text).toContain("!The deposit");
    expect(seen.text).toContain("$770.00, half of skis and services.");
    expect(seen.form("Choose").sent).toEqual({ token: "tok", method: "bank-transfer" });
    expect(seen.facts).toMatchObject({
      "Total, tax and shipping in": "$1,632.40",
      Received: "$0.00",
      "Still to pay before shipping": "$1,632.40",
    });
    expect((await page({}, "pair")).buttons).toEqual([]);
    const announced = await page({ deposit: { cents: 77_000, paidAt: null, method: "counter" } });
    expect(announced.text).toContain("You chose: At the counter. We say here when it has arrived.");
    expect(announced.form("Choose").sent.method).toBe("counter");
    // A quarter to eleven in the evening in Denver is the next day in Greenwich.
    const paid = await page({
      gates: { ...gates, waitingFor: [] },
      deposit: { cents: 77_000, paidAt: denver("22:45"), method: "counter" },
    });
    expect(paid.text).toContain("Received on 10 November 2026.");
    expect(paid.text).toContain("Nothing is waiting for you.");
    expect(paid.buttons).toEqual([]);
    const rush = { taxCents: 900, totalCents: 15_900, paidAt: null };
    expect((await page({ promiseClass: "hard-date", money: { ...money, rush } })).text).toContain(
      "a rush fee of $159.00 is in the total and not paid yet. The day stands.",
    );
    expect((await page({ promiseClass: "promise", money: { ...money, rush } })).text).toContain("which is given up");
    expect(
      (await page({ promiseClass: "hard-date", money: { ...money, rush: { ...rush, paidAt: denver("10:00") } } })).text,
    ).toContain("the rush fee of $159.00 has been received.");
  });

  it("asks for proof and rights where there is a picture of one's own", async () => {
    const open = { ...gates, proof: null, rights: null, waitingFor: ["proof", "rights"] };
    const none = await page({ gates: open });
    expect(none.text).toContain("Not made yet. We send it when the picture is laid out.");
    expect(none.form("Confirm").sent).toEqual({ token: "tok", pairId: "p-1", name: "" });
    expect(Object.keys(none.form("Confirm").fields.basis?.choices ?? {})).toEqual([
      "own",
      "licensed",
      "public-domain",
      "commissioned",
    ]);
    const proof = { proofId: "x", revision: 2, state: "issued", note: "look at the A", issuedAt: denver("10:00") };
    const issued = await page({ gates: open, proof });
    expect(issued.headings).toContain("Proof, waits for your answer");
    expect(issued.text).toContain("Revision 2 waits for your answer.");
    expect(issued.text).toContain("look at the A");
    expect(issued.links).toMatchObject({
      "See the proof, A4": "/files/proofs/tok/p-1",
      "See the proof, Letter": "/files/proofs/tok/p-1?paper=letter",
    });
    // Both skis whole and large, the day, what happens then, and the words one by one: without a download, before the answer.
    const graphic = { ...specOf().graphic, text: { text: "FERN & FELL", xMm: 500, capHeightMm: 24 } };
    const look = pairLook({ ...specOf(), graphic }, catalog.build);
    const shownHere = await page({
      gates: open,
      proof,
      proofToAnswer: { look, safeMm: 6, answerBy: "2026-12-08", meanwhile: "waiting" },
    });
    const part = shownHere.one("section[aria-labelledby=proof-title]");
    expect(part.text).toContain("Please answer by Tuesday 8 December");
    expect(part.text).toContain("After that day your place in the queue is given up");
    expect(part.text).toContain("Letter by letter: “FERN & FELL”");
    const drawings = part.all("svg");
    expect(drawings.map((svg) => svg.all("text").map((letters) => letters.text))).toEqual([
      ["FERN & FELL", "FERN & FELL"],
      ["FERN & FELL", "FERN & FELL"],
    ]);
    expect(drawings[0]?.attribute("aria-label")).toBe("Both skis of this proof, tips to the left");
    // The larger one slides in a place of its own, by keys too; both have the safe line.
    expect(part.one("section[tabindex='0'] svg").attribute("class")).toContain("w-[90rem]");
    for (const svg of drawings) expect(svg.all("[stroke-dasharray]").length).toBeGreaterThan(0);
    const undated = await page({
      gates: open,
      proof,
      proofToAnswer: { look, safeMm: 6, answerBy: null, meanwhile: "building" },
    });
    expect(undated.text).toContain("please answer before the top is printed");
    expect(undated.text).not.toContain("Please answer by");
    expect(issued.form("Approve the proof").sent).toEqual({ token: "tok", pairId: "p-1", revision: "2", name: "" });
    expect(issued.form("Ask for changes").sent).toEqual({ token: "tok", pairId: "p-1", revision: "2", note: "" });
    expect((await page({ gates: open, proof }, "pair")).buttons).toEqual([]);
    const approved = await page({
      gates: { ...open, proof: denver("10:00") },
      proof: { ...proof, state: "approved" },
      rights: { basis: "licensed", name: "Robin", at: denver("10:00") },
    });
    expect(approved.buttons).toEqual(["Choose"]);
    expect(approved.text).toContain("Stated by Robin.I have a licence to use it");
    const house = await page();
    expect(house.headings).not.toContain("Proof");
    expect(house.headings).not.toContain("Rights in your picture");
  });
});

describe("the club's customer", () => {
  it("orders the ticked pairs at their price and day", async () => {
    hold("club", "c-1");
    const quote = (known: object = {}) => ({
      quoteId: "q-1",
      number: "Q-101",
      state: "open",
      totalCents: 163_240,
      ski: "Midlow 95, 178 cm",
      flexClassLabel: "Firm",
      lettering: "ADA",
      customerSpecified: ["stiffness"],
      soldFor: {},
      ...known,
    });
    const club = partly<ClubView>({
      clubId: "c-1",
      number: "C-21",
      name: "Moor club",
      customer: { name: "Ada Moor", phone: null },
      wantedOn: null,
      leftOut: [],
      members: [
        { sheetId: "s-1", skierName: "Ada", quote: quote(), pair: null },
        { sheetId: "s-2", skierName: "Bo", quote: null, pair: null },
        {
          sheetId: "s-3",
          skierName: "Cleo",
          quote: quote({ quoteId: "q-3", state: "accepted", lettering: null }),
          pair: { serial: "TY-0403" },
        },
      ],
      open: { quoteIds: ["q-1"], validUntilDay: "2026-12-01", price, dateRange: range, keepsWish: null },
    } as never);
    tell("readClub", club);
    const seen = await shown(SkierClubPage, { params: { token: "tok" } });
    expect(clubMetadata).toMatchObject({ title: "Club order", robots: { index: false } });
    expect(seen.table("Skiers").map((row) => Object.values(row))).toEqual([
      ["Ada", "Midlow 95, 178 cm", "Firm", "ADA", "$1,632.40", "open"],
      ["Bo", "answers not finished", "–", "–", "–", "–"],
      ["Cleo", "Midlow 95, 178 cm", "Firm", "–", "$1,632.40", "ordered, TY-0403"],
    ]);
    expect(seen.hasPart("Price of all that is open")).toBe(true);
    expect(seen.text).toContain("Price book PB-3, open until the end of 1 December 2026.");
    expect(seen.text).toContain("Ready 10–17 December 2026");
    expect(seen.items).toContain("Ada: stiffness");
    expect(seen.form("Accept and order").sent).toMatchObject({
      token: "tok",
      name: "Ada Moor",
      quoteIds: "q-1",
      priced: "q-1",
    });
    tell("readClub", { ...club, open: null });
    const apart = await shown(SkierClubPage, { params: { token: "tok" } });
    expect(apart.text).toContain("These pairs go to different places");
    expect(apart.hasPart("Price of all that is open")).toBe(false);
    tell("readClub", { ...club, members: club.members.slice(1) });
    const nothing = await shown(SkierClubPage, { params: { token: "tok" } });
    expect(nothing.text).toContain("Nothing can be ordered here at the moment.");
    expect(nothing.buttons).toEqual([]);
    tell("readClub", { ...club, members: [] });
    expect((await shown(SkierClubPage, { params: { token: "tok" } })).text).toContain("Nobody has answered yet.");
    // What was asked for in the address: ticked again, with what it left out.
    const asked: unknown[] = [];
    tell("readClub", (input: { quoteIds?: readonly string[] }) => {
      asked.push(input.quoteIds);
      return input.quoteIds === undefined ? club : refusal("not-found", { what: "quote" });
    });
    const refused = await shown(SkierClubPage, { params: { token: "tok" }, query: { pairs: ["q-1,", "q-9"] } });
    expect(asked).toEqual([["q-1", "q-9"], undefined]);
    expect(refused.form("Accept and order").fields.quoteIds?.error).toBeTruthy();
    tell("readClub", club);
    const changed = await shown(SkierClubPage, { params: { token: "tok" }, query: { pairs: "q-1", changed: "yes" } });
    expect(changed.one("[role=alert]").text).toContain("One thing to put right");
    const quiet = await shown(SkierClubPage, { params: { token: "tok" }, query: { pairs: "q-1" } });
    expect(quiet.all("[role=alert]")).toEqual([]);
    expect(quiet.one("p[role=status]").attribute("autofocus")).toBe("");
    expect(
      (await shown(SkierClubPage, { params: { token: "tok" } })).one("p[role=status]").attribute("autofocus"),
    ).toBeNull();
  });
});

describe("the home page", () => {
  it("shows every model that is built, its measures, and when a pair ordered today is ready", async () => {
    tell("leadTimeToday", { p50: "2026-12-10", p90: "2026-12-17", workingDays: { p50: 20, p90: 25 }, pairsAhead: 31 });
    const home = await shown(HomePage);
    const active = catalog.build.models.filter(({ state }) => state === "active");
    expect(home.all("#models li h3").map(({ text }) => text)).toEqual(active.map(({ name }) => name));
    expect(home.text).toContain("10–17 December");
    expect(home.text).toContain("31");
    const longest = Math.max(...active.map(({ shape }) => shape.refLengthCm * 10));
    expect(home.one("#models li svg").attribute("viewBox")).toBe(`0 -75 ${longest} 242`);
    const wide = active.find(({ use }) => use === "all-mountain wide");
    expect(home.one("svg[role=img]").attribute("aria-label")).toContain(`${wide?.name}, ${wide?.shape.refLengthCm} cm`);
    tell("leadTimeToday", refusal("not-allowed"));
    expect((await shown(HomePage)).text).not.toContain("December");
  });
});
