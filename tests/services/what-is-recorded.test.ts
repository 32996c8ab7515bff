/**
 * What a shop does stands in its record, each act under its own name, about what it was done to and by whom; and whatever
 * changes the queue raises its revision, by which every page and every look ahead knows that it is no longer as it was.
 * Shop rules, no source.
 */
import { describe, expect, it } from "vitest";
import { currentQueueRevision } from "#data/counters";
import { isoDate } from "#engine/units";
import {
  acceptQuote,
  applyMove,
  applyWhatIf,
  buildSheetDocument,
  cancelOrder,
  changePromise,
  chooseOption,
  closeIncident,
  createQuote,
  editPair,
  finishOperation,
  listFloorChanges,
  lockSpecification,
  openSheet,
  type PairId,
  previewMove,
  readOrder,
  readPair,
  recordDeposit,
  recordReceipt,
  reportBreakdown,
  saveSheet,
  startOperation,
  undoMove,
  undoOperation,
  withdrawChange,
  withdrawQuote,
} from "#services";
import { plainAnswers, quotedSheet } from "../support/builders/sale";
import { must, openShop, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();

/** Acts one after the other, each with what it left behind: the events it recorded, and whether the queue was raised. */
async function journal() {
  const told: Record<string, readonly string[]> = {};
  let seen = (await db().event.findMany()).length;
  let revision = await currentQueueRevision(db());
  const act = async <T>(name: string, done: Promise<T>): Promise<T> => {
    const value = await done;
    const events = await db().event.findMany({ orderBy: { seq: "asc" }, skip: seen });
    const now = await currentQueueRevision(db());
    told[name] = [
      ...events.map(({ kind, subjectKind, actorName }) => `${kind} of ${subjectKind} by ${actorName}`),
      ...(now > revision ? ["raised"] : []),
    ];
    seen += events.length;
    revision = now;
    return value;
  };
  return { told, act };
}

describe("the record", () => {
  it("tells an order's way, and the queue is raised by what changes it alone", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const [desk, maker] = [shop.as(shop.desk), shop.as(shop.maker)];
    const { told, act } = await journal();

    const { sheet } = must(
      await act("a call is taken", openSheet(desk, { channel: "phone", phone: "303 555 0101", name: "Robin Alder" })),
    );
    const patch = { ...plainAnswers, "choices.destination": "collect" };
    must(
      await act("answers are saved", saveSheet(desk, { sheetId: sheet.sheetId, patch, baseVersion: sheet.version })),
    );
    const { quote } = must(await act("a quote is made", createQuote(desk, { sheetId: sheet.sheetId })));
    const { orderId, pairs } = must(
      await act("it is accepted", acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" })),
    );
    const pairId = pairs[0]?.pairId as PairId;
    must(await act("the specification is locked", lockSpecification(desk, { pairId })));
    const deposit = { orderId, method: "counter", reference: "receipt 1" } as const;
    must(await act("the deposit is taken", recordDeposit(desk, deposit)));
    const edit = { pairId, choices: { tipTailProtectors: true }, reason: "rocky home", revision: 1 };
    must(await act("the pair is edited", editPair(desk, edit)));
    const { version } = must(await readOrder(desk, { orderId }));
    const later = { orderId, version, on: isoDate("2027-02-01"), reason: "agreed on the phone" };
    must(await act("the promise is changed", changePromise(desk, later)));
    must(await act("the sheet is printed", buildSheetDocument(maker, { pairId, paper: "A4" })));
    const [first] = must(await readPair(maker, { pairId })).operations;
    if (first === undefined) throw new Error("nothing to do");
    const { operationId } = first;
    const running = must(await act("work is begun", startOperation(maker, { operationId, version: first.version })));
    const done = must(await act("and ended", finishOperation(maker, { operationId, version: running.version })));
    const back = { operationId, version: done.version, reason: "wrong pair" };
    must(await act("and taken back", undoOperation(maker, back)));
    const rest = { orderId, what: "balance", method: "counter", reference: "receipt 2" } as const;
    must(await act("the balance is paid", recordReceipt(desk, rest)));
    must(await act("the order is cancelled", cancelOrder(desk, { orderId, reason: "broke a leg" })));
    const other = quotedSheet(shop, { phone: "303 555 0102", name: "Kim Beck" });
    const gone = { quoteId: (await act("another quote is made", other)).quote.quoteId, reason: "bought elsewhere" };
    must(await act("a quote is withdrawn", withdrawQuote(desk, gone)));
    expect(told).toEqual({
      "a call is taken": ["sheet-opened of sheet by Desk 1"],
      "answers are saved": [],
      "a quote is made": ["quote-made of quote by Desk 1", "quote-made of sheet by Desk 1"],
      "it is accepted": [
        "pair-made of pair by Desk 1",
        "quote-accepted of quote by Desk 1",
        "order-made of order by Desk 1",
        "raised",
      ],
      "the specification is locked": ["specification-locked of pair by Desk 1", "raised"],
      "the deposit is taken": [
        "deposit-received of order by Desk 1",
        "promise-fixed of order by Desk 1",
        "clock-started of order by Desk 1",
        "pair-released of pair by Desk 1",
        "raised",
      ],
      "the pair is edited": ["order-repriced of order by Desk 1", "pair-edited of pair by Desk 1", "raised"],
      "the promise is changed": ["promise-changed of order by Desk 1", "raised"],
      "the sheet is printed": ["build-sheet-printed of pair by Mo Maker"],
      "work is begun": ["order-building of order by Mo Maker", "operation-started of pair by Mo Maker", "raised"],
      "and ended": ["operation-finished of pair by Mo Maker", "raised"],
      "and taken back": ["operation-undone of pair by Mo Maker", "raised"],
      "the balance is paid": ["balance-received of order by Desk 1"],
      "the order is cancelled": ["pair-cancelled of pair by Desk 1", "order-cancelled of order by Desk 1", "raised"],
      "another quote is made": [
        "sheet-opened of sheet by Desk 1",
        "quote-made of quote by Desk 1",
        "quote-made of sheet by Desk 1",
      ],
      "a quote is withdrawn": ["quote-withdrawn of quote by Desk 1"],
    });
  });

  it("tells what was changed about the floor and the order of the queue", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const [desk, maker, owner] = [shop.as(shop.desk), shop.as(shop.maker), shop.as(shop.owner)];
    const [one, two] = (await releasedPairs(shop, 2)).map(({ pairs }) => pairs[0]?.pairId as PairId);
    const { told, act } = await journal();
    const place = { pairId: two as PairId, before: one as PairId };
    const { revision } = must(await act("a move is looked at", previewMove(desk, place)));
    const { decisionId } = must(
      await act("a pair is moved", applyMove(desk, { ...place, revision, reason: "a birthday" })),
    );
    must(await act("and moved back", undoMove(desk, { decisionId })));
    const down = {
      kind: "press-down",
      press: "press-1",
      from: "2026-11-16T14:30:00.000Z",
      until: "2026-11-18T23:30:00.000Z",
    } as const;
    const report = { reportId: "report-1", breakdown: down, note: "heating plate burnt" };
    const { incidentId } = must(await act("a press is down", reportBreakdown(maker, report)));
    const choice = { incidentId, version: 1, option: "wait", reason: "parts come on Thursday" };
    must(await act("a way on is chosen", chooseOption(owner, choice)));
    must(await act("it is mended", closeIncident(maker, { incidentId, version: 2 })));
    const whatIf = { kind: "hire", stations: ["lay-up"], from: isoDate("2026-12-10") } as const;
    const hire = { changeId: "hire-1", whatIf, reason: "the season is sold out" };
    must(await act("somebody is hired", applyWhatIf(owner, hire)));
    const [change] = must(await listFloorChanges(owner));
    const withdrawn = { floorChangeId: change?.floorChangeId ?? ("" as never), reason: "nobody was found" };
    must(await act("and does not come", withdrawChange(owner, withdrawn)));
    expect(told).toEqual({
      "a move is looked at": [],
      "a pair is moved": ["place-given of pair by Desk 1", "raised"],
      "and moved back": ["place-undone of pair by Desk 1", "raised"],
      "a press is down": ["incident-reported of incident by Mo Maker", "raised"],
      "a way on is chosen": ["incident-decided of incident by Ola Owner", "raised"],
      "it is mended": ["incident-closed of incident by Mo Maker", "raised"],
      "somebody is hired": ["floor-changed of floor by Ola Owner", "raised"],
      "and does not come": ["floor-change-withdrawn of floor by Ola Owner", "raised"],
    });
  });
});
