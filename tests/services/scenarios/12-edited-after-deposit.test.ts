import { describe, expect, it } from "vitest";
import {
  buildSheetDocument,
  editPair,
  findPairByCode,
  finishOperation,
  type PairId,
  previewEdit,
  readOrder,
  readPair,
  startOperation,
} from "#services";
import { releasedOrder, type SaleOptions } from "../../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

const plain178: SaleOptions = { choices: { "choices.model": "midlow-95", "choices.lengthCm": 178 } };

async function work(shop: TestShop, pairId: PairId, station: string, now: Date): Promise<void> {
  const maker = shop.as(shop.maker, now);
  const find = async () => {
    const { operations } = must(await readPair(maker, { pairId }));
    return operations.find((operation) => operation.station === station) ?? raise();
  };
  const ready = await find();
  const running = must(await startOperation(maker, { operationId: ready.operationId, version: ready.version }));
  must(await finishOperation(maker, { operationId: running.operationId, version: running.version }));
}

describe("scenario 12: order edited after deposit", () => {
  it("makes 178 a 186 before the core is cut: new price, strips, mould and promise; old papers void; both kept", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const order = await releasedOrder(shop, plain178);
    const pairId = order.pairs[0]?.pairId ?? raise();
    const desk = shop.as(shop.desk, daysAfter(shopNow, 6));
    must(await buildSheetDocument(desk, { pairId, paper: "A4" }));
    const before = must(await readPair(desk, { pairId }));
    const promised = must(await readOrder(desk, { orderId: order.orderId })).promisedOn;

    const edit = { pairId, choices: { lengthCm: 186 }, reason: "caller wants it longer", revision: 1 };
    const preview = must(await previewEdit(desk, edit));
    expect(preview.consequences).toEqual(expect.arrayContaining(["reprice", "new-strips", "new-mould", "promise"]));
    must(await editPair(desk, edit));

    const after = must(await readPair(desk, { pairId }));
    expect(after).toMatchObject({ revision: 2, spec: { lengthCm: 186 } });
    expect(after.mould).not.toBe(before.mould);
    expect(after.strips).toHaveLength(14);
    expect(after.revisions.map((revision) => revision.revision)).toEqual([1, 2]);
    expect(after.prints).toMatchObject([{ print: 1, voided: { reason: "revision 2: caller wants it longer" } }]);
    const scanned = must(await findPairByCode(shop.as(shop.maker), { code: `/shop/pair/${after.serial}?print=1` }));
    expect(scanned).toMatchObject({ pairId, isVoid: true });
    const changes = must(await readOrder(desk, { orderId: order.orderId })).history.filter(
      (event) => event.kind === "promise-changed",
    );
    expect(changes).toHaveLength(1);
    expect(changes[0]?.data.from).toBe(promised);
  });

  it("cannot change the length once the core is milled, names the cost, and only the owner may go on", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const order = await releasedOrder(shop, plain178);
    const pairId = order.pairs[0]?.pairId ?? raise();
    for (const [index, station] of ["release", "strips", "core-glue", "sidewalls"].entries())
      await work(shop, pairId, station, daysAfter(shopNow, index + 1));
    const later = daysAfter(shopNow, 6);
    const edit = { pairId, choices: { lengthCm: 186 }, reason: "caller wants it longer", revision: 1 };
    const refused = await editPair(shop.as(shop.desk, later), edit);
    expect(refused).toMatchObject({
      ok: false,
      refusal: { code: "edit-too-late", part: "shape", station: "sidewalls", ownerMayApprove: true },
    });
    // Core milled: the ladder keeps 30 % of 1,590.
    expect(refused).toMatchObject({ refusal: { lostCents: 47_700 } });
    const approved = { ...edit, ownerApproves: true };
    expect(await editPair(shop.as(shop.desk, later), approved)).toMatchObject({
      ok: false,
      refusal: { code: "owner-needed" },
    });
    must(await editPair(shop.as(shop.owner, later), approved));
    const after = must(await readPair(shop.as(shop.maker, later), { pairId }));
    expect(after.strips).toHaveLength(14);
    expect(
      after.operations.filter((operation) => operation.state === "ready").map((operation) => operation.station),
    ).toEqual(["strips", "base-cut", "print", "kit"]);
  });
});

function raise(): never {
  throw new Error("there is no such pair or operation");
}
