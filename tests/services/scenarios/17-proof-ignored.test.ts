import { describe, expect, it } from "vitest";
import { systemActor } from "#auth";
import {
  acceptQuote,
  approveProof,
  createQuote,
  issueProof,
  lockSpecification,
  queueBoard,
  readOrder,
  recordDeposit,
  sweepSlots,
} from "#services";
import { filledSheet } from "../../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { ownPicture } from "./own-picture";
import { fewRuns } from "./released-pairs";

const db = databaseForTests();

// A proof that nobody answers: the slot slides after five working days. Common practice, no source.
describe("scenario 17: a proof ignored for nine days", () => {
  it("lets the slot slide by itself, tells the customer, leaves the backlog alone, and begins anew with the answer", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop, { choices: { "choices.model": "midlow-95" } });
    await ownPicture(desk, sheetId, "Robin Alder");
    const { quote } = must(await createQuote(desk, { sheetId }));
    const { orderId, pairs } = must(
      await acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" }),
    );
    const pairId = pairs[0]?.pairId as never;
    must(await lockSpecification(desk, { pairId }));
    must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 7" }));
    const { revision } = must(await issueProof(desk, { pairId }));

    const sweep = (days: number) => sweepSlots(shop.as(systemActor("slots"), daysAfter(shopNow, days)));
    expect(must(await sweep(4)).lost).toBe(0);
    expect(must(await sweep(9)).lost).toBe(1);

    const later = shop.as(shop.desk, daysAfter(shopNow, 9));
    const board = must(await queueBoard(later));
    expect(board.waitingOn.find((row) => row.pairId === pairId)?.waitingFor).toEqual(["proof"]);
    expect(board.pressPlan.flatMap(({ slots }) => slots)).toEqual([]);
    const messages = await db().outboxMessage.findMany({ where: { kind: "slot-lost", subjectId: orderId } });
    expect(messages).toHaveLength(1);
    expect(must(await readOrder(later, { orderId })).slotLost).toMatchObject({ reason: "proof-late" });

    must(await approveProof(later, { pairId, revision, name: "Robin Alder" }));
    const after = must(await readOrder(later, { orderId }));
    expect(after).toMatchObject({ state: "released", slotLost: null, promiseClass: "promise" });
    expect(after.history.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["slot-lost", "slot-given"]));
  });
});
