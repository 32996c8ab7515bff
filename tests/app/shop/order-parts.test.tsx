/** An order's parts, drawn from orders made by hand: who is shown which button at which state, with which amounts and versions. */
import { describe, expect, it } from "vitest";
import { Close } from "#app/shop/(staff)/orders/[orderId]/close.tsx";
import { Gates } from "#app/shop/(staff)/orders/[orderId]/gates.tsx";
import { Payments } from "#app/shop/(staff)/orders/[orderId]/payments.tsx";
import { PromiseTools } from "#app/shop/(staff)/orders/[orderId]/promise-tools.tsx";
import { History } from "#app/shop/history.tsx";
import type { EventView, OrderPairView, OrderView } from "#services";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";

/** Seven in the morning and a quarter past five in the afternoon in Denver, in winter. */
const morning = "2026-11-10T14:00:00.000Z";
const evening = "2026-11-11T00:15:00.000Z";
const gates = { deposit: morning, specificationLock: morning, proof: "not-needed", rights: "not-needed" } as const;
const pair = {
  pairId: "p-1",
  serial: "TY-0401",
  version: 6,
  skierName: "Robin Alder",
  gates,
  proofState: "none",
  proofs: [],
  pressSlot: null,
} as const;
const money = { totalCents: 163_240, paidCents: 77_000, openCents: 86_240, rush: null } as const;
const order = {
  orderId: "o-1",
  number: "O-301",
  version: 3,
  state: "released",
  customer: { name: "Robin Alder" },
  price: { currency: "USD", totalCents: 163_240, depositCents: 77_000 },
  money,
  payments: [],
  pairs: [pair],
  waitingFor: [],
  promisedOn: "2026-11-19",
  promiseClass: "promise",
  slotLost: null,
  hardDate: null,
  cancelled: null,
  ifCancelled: null,
} as const;
const orderWith = (changes: Parameters<typeof partly<OrderView>>[0]) => partly<OrderView>({ ...order, ...changes });

describe("how an order ends", () => {
  const close = (changes: Parameters<typeof orderWith>[0], isOwner = false) =>
    drawn(<Close order={orderWith(changes)} isOwner={isOwner} />);

  it("goes out only when it is ready and paid, or on an owner's word with a reason", () => {
    expect(close({ state: "released" }).forms).toEqual([]);
    const paid = close({ state: "ready", money: { ...money, openCents: 0 } });
    expect(paid.form("It has left the house").sent).toEqual({ orderId: "o-1", tracking: "" });
    expect(paid.form("It has left the house").fields.tracking?.label).toBe("Trackingoptional");
    expect(paid.text).not.toContain("still open");

    const desk = close({ state: "ready" });
    expect(desk.text).toContain("$862.40 is still open. The balance is due before shipping.");
    expect(desk.text).toContain("Only an owner may send it out unpaid.");
    expect(desk.forms).toEqual([]);
    const owner = close({ state: "ready" }, true);
    expect(owner.text).not.toContain("Only an owner");
    expect(owner.form("It has left the house").sent).toEqual({ orderId: "o-1", tracking: "", unpaidReason: "" });
    expect(close({ state: "ready", money: { ...money, openCents: 1 } }).text).toContain("$0.01 is still open");
  });

  it("arrives once it is shipped, and is cancelled by what its stage keeps", () => {
    const shipped = close({ state: "shipped" });
    expect(shipped.forms.map(({ buttons, sent }) => [buttons, sent])).toEqual([
      [["It has arrived"], { orderId: "o-1" }],
    ]);
    const ifCancelled = { stage: "locked", keepCents: 5000, refundCents: 72_000 } as const;
    const cancel = close({ ifCancelled });
    expect(cancel.text).toContain("At this stage (specification locked) the shop keeps $50.00 and gives back $720.00.");
    expect(cancel.form("Cancel the order").sent).toEqual({ orderId: "o-1", reason: "" });
    const cancelled = { at: morning, reason: "moved", feeCents: 0, refundCents: 0 };
    expect(close({ ifCancelled, cancelled }).forms).toEqual([]);
  });
});

/** As the demo offers them. */
const methods = ["pay-later", "bank-transfer", "counter", "demo-card"] as const;

describe("an order's money", () => {
  const payments = (changes: Parameters<typeof orderWith>[0], isOwner = false) =>
    drawn(<Payments order={orderWith(changes)} methods={methods} isOwner={isOwner} />);
  const deposit = {
    kind: "deposit",
    state: "received",
    method: "counter",
    reference: "receipt 1",
    at: evening,
    cents: 77_000,
  } as const;
  const rush = { cents: 15_000, taxCents: 900, totalCents: 15_900, paidAt: null } as const;

  it("names what was asked and what came, with the shop's clock", () => {
    const asked = { ...deposit, kind: "balance", state: "requested", method: null, reference: null, cents: 1 } as const;
    const seen = payments({ payments: [deposit, asked] });
    expect(seen.table("Money")).toEqual([
      {
        Money: "deposit, received",
        "How it came": "at the counter, receipt 1",
        When: "10 Nov 2026, 17:15",
        USD: "$770.00",
      },
      { Money: "balance, asked", "How it came": "", When: "10 Nov 2026, 17:15", USD: "$0.01" },
    ]);
    expect(seen.facts).toEqual({
      Total: "$1,632.40",
      "Received so far": "$770.00",
      "Still open, due before shipping": "$862.40",
    });
  });

  it("sets price and fee apart while there is a rush fee", () => {
    const withRush = { totalCents: 179_140, paidCents: 77_000, openCents: 102_140, rush };
    expect(payments({ money: withRush }).facts).toEqual({
      "Price, tax and shipping in": "$1,632.40",
      "Rush fee, tax $9.00 in, not paid yet": "$159.00",
      Total: "$1,791.40",
      "Received so far": "$770.00",
      "Still open, due before shipping": "$1,021.40",
    });
    const paid = { ...withRush, rush: { ...rush, paidAt: morning } };
    expect(Object.keys(payments({ money: paid }).facts)).toContain("Rush fee, tax $9.00 in, received");
  });

  it("records a receipt for what is open: the fee first, the rest after the deposit", () => {
    expect(payments({}).forms).toEqual([]);
    const rest = payments({ payments: [deposit] }).form("Received");
    expect(rest.sent).toEqual({ orderId: "o-1", what: "balance", method: "bank-transfer", reference: "" });
    expect(rest.fields.reference?.label).toBe("Reference of the transfer or receiptoptional");
    expect(rest.fields.what?.choices).toEqual({ balance: "all that is open, $862.40" });
    expect(rest.fields.method?.choices).toEqual({
      "bank-transfer": "bank transfer",
      counter: "at the counter",
      "demo-card": "demonstration card",
    });
    const both = payments({ payments: [deposit], money: { ...money, rush } }).form("Received");
    expect(both.fields.what?.choices).toEqual({ rush: "rush fee, $159.00", balance: "all that is open, $862.40" });
    expect(both.sent.what).toBe("rush");
    const unpaid = payments({ payments: [{ ...deposit, state: "requested" }], money: { ...money, rush } });
    expect(unpaid.form("Received").fields.what?.choices).toEqual({ rush: "rush fee, $159.00" });
    expect(payments({ payments: [deposit], money: { ...money, openCents: 0 } }).forms).toEqual([]);
    const refunded = { ...deposit, kind: "refund" } as const;
    expect(payments({ payments: [refunded] }).forms).toEqual([]);
    expect(payments({ payments: [deposit], state: "cancelled" }).forms).toEqual([]);
  });

  it("lets the owner alone give up an unpaid fee", () => {
    const withRush = { money: { ...money, rush } };
    expect(payments(withRush, true).form("Waive it").sent).toEqual({ orderId: "o-1", reason: "" });
    expect(payments(withRush).buttons).toEqual(["Received"]);
    expect(payments({}, true).buttons).toEqual([]);
    expect(payments({ money: { ...money, rush: { ...rush, paidAt: morning } } }, true).buttons).toEqual([]);
    expect(payments({ ...withRush, state: "cancelled" }, true).buttons).toEqual([]);
  });
});

describe("the gates before the clock starts", () => {
  const draw = (changes: Parameters<typeof orderWith>[0]) =>
    drawn(<Gates order={orderWith(changes)} methods={methods} />);
  const waiting = { deposit: null, specificationLock: null, proof: null, rights: null };
  const gateRows = (changes: Parameters<typeof orderWith>[0]) => draw(changes).table("What it waits for TY-0401");

  it("shows since when each is passed, or who acts next", () => {
    const done = { deposit: morning, specificationLock: evening, proof: "not-needed", rights: "not-needed" } as const;
    const seen = draw({ pairs: [{ ...pair, gates: done }] });
    expect(seen.text).toContain("Everything is in.");
    expect(seen.forms).toEqual([]);
    expect(seen.table("What it waits for TY-0401")).toEqual([
      { Gate: "deposit", State: "✓10 Nov 2026, 07:00", "Who acts next": "" },
      { Gate: "final check by the shop", State: "✓10 Nov 2026, 17:15", "Who acts next": "" },
      { Gate: "proof", State: "not needed", "Who acts next": "" },
      { Gate: "rights in the picture", State: "not needed", "Who acts next": "" },
    ]);
    const open = { waitingFor: ["deposit"], pairs: [{ ...pair, gates: waiting }] } as const;
    expect(gateRows(open).map((row) => [row.State, row["Who acts next"]])).toEqual([
      ["!open", "customer, then desk"],
      ["!open", "desk"],
      ["!open", "desk issues, customer approves"],
      ["!open", "customer"],
    ]);
    expect(draw(open).text).not.toContain("Everything is in.");
    const sent = { ...open, pairs: [{ ...pair, gates: waiting, proofState: "issued", proofs: [] } as const] };
    expect(gateRows(sent).map((row) => row["Who acts next"])).toEqual([
      "customer, then desk",
      "desk",
      "customer approves",
      "customer",
    ]);
    expect(draw({ ...open, state: "cancelled" }).text).toBe("");
  });

  it("asks for the deposit, the final check and the rights where they are missing", () => {
    const seen = draw({
      waitingFor: ["deposit", "rights"],
      pairs: [{ ...pair, gates: { ...waiting, proof: "not-needed" } }],
    });
    expect(seen.text).toContain("$770.00 asked.");
    const deposit = seen.form("Record the deposit");
    expect(deposit.sent).toEqual({ orderId: "o-1", method: "bank-transfer", reference: "" });
    expect(Object.keys(deposit.fields.method?.choices ?? {})).toEqual([
      "bank-transfer",
      "counter",
      "demo-card",
      "pay-later",
    ]);
    expect(deposit.fields.reference?.label).toBe("Reference of the transfer or receiptoptional");
    expect(seen.form("Lock the specification").sent).toEqual({ orderId: "o-1", pairId: "p-1" });
    const rights = seen.form("Confirm the rights");
    expect(rights.sent).toEqual({ orderId: "o-1", pairId: "p-1", name: "Robin Alder" });
    expect(rights.fields.basis?.choices).toMatchObject({ own: "made it themselves", "public-domain": "public domain" });
    expect(seen.hasPart("Proof: none yet")).toBe(false);
    const half = draw({ waitingFor: ["rights"], pairs: [{ ...pair, gates: { ...gates, rights: null } }] });
    expect(half.buttons).toEqual(["Confirm the rights"]);
  });

  it("sends a proof, answers the latest one, and waits when it is approved", () => {
    const proofOf = (known: Parameters<typeof partly<OrderPairView>>[0]) =>
      draw({ waitingFor: ["proof"], pairs: [{ ...pair, gates: { ...gates, proof: null }, ...known }] });
    const none = proofOf({});
    expect(none.links).toEqual({
      "See the proof, A4": "/files/proofs/shop/p-1",
      "See the proof, Letter": "/files/proofs/shop/p-1?paper=letter",
    });
    expect(none.form("Send the proof").fields.note?.label).toBe("A word to the skieroptional");
    expect(none.form("Send the proof").sent).toEqual({ orderId: "o-1", pairId: "p-1", note: "" });
    const proofs = [
      { proofId: "a", revision: 1, issuedAt: morning, state: "changes-asked", note: "less red" },
      { proofId: "b", revision: 2, issuedAt: evening, state: "issued", note: null },
    ] as const;
    const out = proofOf({ proofState: "issued", proofs });
    expect(out.items).toEqual([
      "Revision 1, 10 Nov 2026, 07:00: changes asked (less red)",
      "Revision 2, 10 Nov 2026, 17:15: sent, waits for an answer",
    ]);
    expect(out.buttons).toEqual(["Approved on the telephone", "Changes asked on the telephone"]);
    expect(out.form("Approved on the telephone").sent).toEqual({
      orderId: "o-1",
      pairId: "p-1",
      revision: "2",
      name: "Robin Alder",
    });
    expect(out.form("Changes asked on the telephone").sent).toEqual({
      orderId: "o-1",
      pairId: "p-1",
      revision: "2",
      note: "",
    });
    const again = proofOf({ proofState: "changes-asked", proofs: proofs.slice(0, 1) });
    expect(again.buttons).toEqual(["Send the proof"]);
    expect(proofOf({ proofState: "approved", proofs: [{ ...proofs[1], state: "approved" }] }).buttons).toEqual([]);
  });
});

describe("what can be done with a promise", () => {
  const tools = (changes: Parameters<typeof orderWith>[0], isOwner = false) =>
    drawn(<PromiseTools order={orderWith(changes)} isOwner={isOwner} />);

  it("moves a promised day with its version, and leads to a hard date, until the order is ready", () => {
    const seen = tools({});
    expect(seen.form("Move the promise").sent).toEqual({
      orderId: "o-1",
      version: "3",
      on: "2026-11-19",
      reason: "",
    });
    expect(seen.links).toEqual({ "Ask for a hard date": "/shop/orders/o-1/hard-date" });
    const unpromised = tools({ promisedOn: null });
    expect(unpromised.forms).toEqual([]);
    expect(Object.keys(unpromised.links)).toEqual(["Ask for a hard date"]);
    for (const state of ["ready", "shipped", "delivered", "cancelled"] as const) {
      expect(tools({ state }).forms).toEqual([]);
      expect(tools({ state }).links).toEqual({});
    }
    const lost = tools({ slotLost: { at: morning, reason: "proof-late" } });
    expect(lost.text).toContain("No place in the queue since 10 Nov 2026, 07:00: the proof was not answered");
    expect(lost.links).toEqual({});
  });

  it("says the plan B with the state of the fee", () => {
    const rush = { cents: 15_000, taxCents: 900, totalCents: 15_900, paidAt: null } as const;
    const hardDate = { planB: "a loan pair", rushCents: 15_000 };
    const hard = (changes: Parameters<typeof orderWith>[0]) =>
      tools({ hardDate, promiseClass: "hard-date", ...changes }).one("p").text;
    expect(hard({})).toBe("Plan B: a loan pair");
    expect(hard({ money: { ...money, rush } })).toBe(
      "Plan B: a loan pair, rush fee $159.00, not paid yet; the day stands all the same",
    );
    expect(hard({ money: { ...money, rush }, promiseClass: "promise" })).toBe(
      "Plan B: a loan pair, rush fee $159.00, not paid yet; the hard date is given up",
    );
    expect(hard({ money: { ...money, rush: { ...rush, paidAt: morning } } })).toBe(
      "Plan B: a loan pair, rush fee $159.00, received",
    );
  });

  it("shows a fixed press start, which only an owner takes away", () => {
    const pressSlot = { press: "press-1", at: evening } as const;
    const told = "TY-0401 goes to Press 1 on 10 Nov 2026, 17:15. This stands fast.";
    const pairs = [{ ...pair, pressSlot }];
    const desk = tools({ pairs, promisedOn: null });
    expect(desk.text).toContain(told);
    expect(desk.forms).toEqual([]);
    expect(tools({ pairs, promisedOn: null }, true).form("Take the slot away").sent).toEqual({
      orderId: "o-1",
      pairId: "p-1",
      version: "6",
      reason: "",
    });
    expect(tools({ pairs: [{ ...pair, pressSlot: { press: "press-9", at: evening } }] }).text).toContain("to press-9");
  });
});

describe("the history", () => {
  const event = (known: Partial<EventView>): EventView =>
    ({ seq: "1", at: morning, kind: "order-made", by: "Desk 1", data: {}, ...known }) as EventView;
  it("tells what happened with its particulars as money, days and words", () => {
    const events = [
      event({ seq: "1", data: { orderNumber: "O-301", method: "bank-transfer", openCents: 86_240 } }),
      event({ seq: "2", kind: "promise-moved", data: { from: "2026-11-19", promisedOn: "2026-12-24", reason: "" } }),
      event({ seq: "3", kind: "build-sheet-printed", data: { print: 3, note: null }, at: evening, by: "Mo" }),
      event({ seq: "4", kind: "clock-started", data: { secret: "not shown" } }),
    ];
    const rows = drawn(<History events={events} title="History" />).table("History");
    expect(rows).toEqual([
      {
        When: "10 Nov 2026, 07:00",
        What: "Order placed: by bank transfer, order O-301, sent unpaid, still open $862.40",
        Who: "Desk 1",
      },
      { When: "10 Nov 2026, 07:00", What: "Promise moved: from 19 November 2026, to 24 December 2026", Who: "Desk 1" },
      { When: "10 Nov 2026, 17:15", What: "Build sheet printed: print 3", Who: "Mo" },
      { When: "10 Nov 2026, 07:00", What: "Clock started", Who: "Desk 1" },
    ]);
    expect(drawn(<History events={[]} title="History" />).text).toContain("Nothing yet.");
  });
});
