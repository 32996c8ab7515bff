/** A change after the clock start that makes the proof void: the print waits for the new one (common practice, no source). */
import { describe, expect, it } from "vitest";
import {
  acceptQuote,
  approveProof,
  createQuote,
  editPair,
  finishOperation,
  issueProof,
  lockSpecification,
  type PairId,
  queueBoard,
  readPair,
  recordDeposit,
  startOperation,
} from "#services";
import { filledSheet } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { ownPicture } from "./scenarios/own-picture";

const db = databaseForTests();
const printStation = "print";

async function onTheFloor(shop: TestShop): Promise<PairId> {
  await stockWood(db());
  const desk = shop.as(shop.desk);
  const sheetId = await filledSheet(shop, { choices: { "choices.model": "midlow-95" } });
  await ownPicture(desk, sheetId, "Robin Alder");
  const { quote } = must(await createQuote(desk, { sheetId }));
  const order = must(await acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" }));
  const pairId = order.pairs[0]?.pairId as PairId;
  must(await lockSpecification(desk, { pairId }));
  await approve(shop, pairId);
  must(await recordDeposit(desk, { orderId: order.orderId, method: "counter", reference: "receipt 5" }));
  return pairId;
}

async function approve(shop: TestShop, pairId: PairId): Promise<void> {
  const { revision } = must(await issueProof(shop.as(shop.desk), { pairId }));
  must(await approveProof(shop.as(shop.desk), { pairId, revision, name: "Robin Alder" }));
}

describe("the print of a pair on the floor", () => {
  it("waits for the new proof after a change of what is printed; the rest goes on", async () => {
    const shop = await openShop(db());
    const pairId = await onTheFloor(shop);
    const day = daysAfter(shopNow, 1);
    const maker = { ...shop.as(shop.maker, day), promiseRuns: 60 };
    const at = async (station: string) => {
      const { operations } = must(await readPair(maker, { pairId }));
      return operations.find((each) => each.station === station) ?? expect.fail(`no station ${station}`);
    };
    const begun = async (station: string) => {
      const { operationId, version } = await at(station);
      return startOperation(maker, { operationId, version });
    };
    const first = must(await begun("release"));
    must(await finishOperation(maker, { operationId: first.operationId, version: first.version }));
    const board = async () => {
      const { pairs, blocked } = must(await queueBoard(maker, { days: 1 }));
      return {
        p90: pairs.find((pair) => pair.pairId === pairId)?.expected?.p90 ?? "",
        reasons: blocked.find((pair) => pair.pairId === pairId)?.reasons ?? [],
      };
    };
    const before = await board();
    expect(before.reasons).toEqual([]);

    // Longer: the picture lies elsewhere on the ski, so the approved proof shows what will not be printed.
    const longer = { pairId, choices: { lengthCm: 186 }, reason: "longer, they say", revision: 1 };
    must(await editPair({ ...shop.as(shop.desk, day), promiseRuns: 60 }, longer));
    expect(await begun(printStation)).toMatchObject({
      refusal: { code: "print-not-agreed", by: [{ code: "print-proof" }] },
    });
    const meanwhile = await board();
    expect(meanwhile.reasons).toMatchObject([{ kind: "customer", condition: "proof", isAsked: false }]);
    expect(meanwhile.p90 > before.p90).toBe(true);
    must(await begun("strips"));

    await approve(shop, pairId);
    expect((await board()).reasons).toEqual([]);
    must(await begun(printStation));
  });
});
