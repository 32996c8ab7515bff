/** The gates of an order and its first ticks: each refusal with what it says and where, and what the record tells afterwards. */
import { describe, expect, it } from "vitest";
import {
  approveProof,
  askProofChanges,
  confirmRights,
  finishOperation,
  issueProof,
  lockSpecification,
  readOrder,
  readPair,
  recordDeposit,
  startOperation,
  undoOperation,
} from "#services";
import { stationNumber } from "#shop/floor/stations";
import { acceptedQuote } from "../support/builders/sale";
import { must, openShop, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const refused = (refusal: object) => ({ ok: false, refusal });

function there<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("it is not there");
  return value;
}

const lettered = {
  "choices.graphic": {
    kind: "house",
    house: "contour-lines",
    layout: "same",
    windows: [],
    text: { text: "ADA", xMm: 520, capHeightMm: 24 },
  },
};

describe("the gates of an order", () => {
  it("ask for no proof and no rights where nothing is the skier's own", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const { pairs } = await acceptedQuote(shop, { phone: "303 555 0160" });
    const { pairId } = there(pairs[0]);
    expect(await issueProof(desk, { pairId })).toEqual(refused({ code: "not-needed", what: "proof" }));
    const rights = { pairId, basis: "own", name: "Ada" } as const;
    expect(await confirmRights(desk, rights)).toEqual(refused({ code: "not-needed", what: "rights" }));
    expect(await confirmRights(desk, { ...rights, name: " " })).toEqual(
      refused({ code: "name-missing", path: "name" }),
    );
    expect(await confirmRights(desk, { ...rights, basis: "found" as never })).toMatchObject(
      refused({ code: "invalid-field", path: "basis", value: "found" }),
    );
    expect(await approveProof(desk, { pairId, revision: 1, name: "Ada" })).toEqual(
      refused({ code: "no-proof", pairId }),
    );
    expect(await lockSpecification(desk, { pairId: "none" as never })).toMatchObject(refused({ code: "not-found" }));
  });

  it("pass once each, the proof by the revision that was seen, and are told in the record", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const desk = shop.as(shop.desk);
    const { orderId, pairs } = await acceptedQuote(shop, { phone: "303 555 0161", choices: lettered });
    const { pairId } = there(pairs[0]);
    must(await lockSpecification(desk, { pairId }));
    expect(await lockSpecification(desk, { pairId })).toEqual(refused({ code: "already-locked", pairId }));

    const answer = { pairId, revision: 1 };
    expect(await approveProof(desk, { ...answer, name: " " })).toEqual(refused({ code: "name-missing", path: "name" }));
    for (const [note, length] of [
      ["  ", 0],
      ["x".repeat(2001), 2001],
    ] as const) {
      const range = { code: "reason-length", path: "note", length, min: 1, max: 2000 };
      expect(await askProofChanges(desk, { ...answer, note })).toEqual(refused(range));
    }
    expect(must(await issueProof(desk, { pairId, note: "  " }))).toMatchObject({
      revision: 1,
      state: "issued",
      note: null,
    });
    const again = { code: "transition-not-allowed" };
    expect(await issueProof(desk, { pairId })).toMatchObject(refused(again));
    const seen = { code: "proof-changed", path: "revision", value: 2, current: 1 };
    expect(await approveProof(desk, { pairId, revision: 2, name: "Ada" })).toEqual(refused(seen));
    expect(must(await askProofChanges(desk, { ...answer, note: "x".repeat(2000) }))).toMatchObject({
      state: "changes-asked",
      answeredBy: "Desk 1",
    });
    expect(must(await issueProof(desk, { pairId, note: " taller " }))).toMatchObject({ revision: 2, note: "taller" });
    expect(must(await approveProof(desk, { pairId, revision: 2, name: " Ada " }))).toMatchObject({
      state: "approved",
      answeredBy: "Ada",
    });
    expect(await approveProof(desk, { pairId, revision: 2, name: "Ada" })).toMatchObject(refused(again));

    expect(must(await readOrder(desk, { orderId })).waitingFor).toEqual(["deposit"]);
    must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 1" }));
    const { history, state, waitingFor } = must(await readOrder(desk, { orderId }));
    expect([state, waitingFor]).toEqual(["released", []]);
    const told = history.filter(({ kind }) => /^(proof|specification|deposit|clock)/.test(kind));
    expect(told.map(({ kind, by }) => `${kind} ${by}`)).toEqual([
      "specification-locked Desk 1",
      "proof-issued Desk 1",
      "proof-changes-asked Desk 1",
      "proof-issued Desk 1",
      "proof-approved Desk 1",
      "deposit-received Desk 1",
      expect.stringMatching(/^clock-started /),
    ]);
    expect(told[1]?.data).toMatchObject({ revision: 1 });
    expect(told[3]?.data).toMatchObject({ revision: 2 });
    expect(told[4]?.data).toMatchObject({ revision: 2, name: "Ada", note: null });
    expect(told[5]?.data).toMatchObject({ method: "counter", reference: "receipt 1" });

    // The first ticks of the pair that is now released.
    const maker = shop.as(shop.maker);
    const operations = async () => must(await readPair(maker, { pairId })).operations;
    const first = there((await operations()).find((each) => each.state === "ready"));
    const later = there((await operations()).find((each) => each.state === "blocked"));
    const tick = ({ operationId, version }: { operationId: typeof first.operationId; version: number }) => ({
      operationId,
      version,
    });
    expect(await startOperation(maker, tick(later))).toMatchObject(
      refused({
        code: "operation-blocked",
        waitingFor: expect.arrayContaining([stationNumber(first.station)]),
        orderState: "released",
      }),
    );
    expect(await finishOperation(maker, tick(first))).toEqual(refused({ code: "not-started", state: "ready" }));
    expect(await undoOperation(maker, { ...tick(first), reason: " " })).toEqual(
      refused({ code: "reason-missing", path: "reason" }),
    );
    expect(await undoOperation(maker, { ...tick(first), reason: "slip" })).toEqual(
      refused({ code: "not-started", state: "ready" }),
    );
    expect(await startOperation(maker, { operationId: "none" as never, version: 1 })).toEqual(
      refused({ code: "not-found", what: "operation", path: "operationId" }),
    );
    const running = must(await startOperation(maker, tick(first)));
    expect(running).toMatchObject({ state: "running", startedBy: "Mo Maker" });
    expect(await startOperation(maker, tick(first))).toEqual(
      refused({ code: "already-started", by: "Mo Maker", state: "running", version: running.version }),
    );
    expect(must(await readPair(maker, { pairId })).state).toBe("building");
    const done = must(await finishOperation(maker, tick(running)));
    expect(await finishOperation(maker, tick(done))).toMatchObject(
      refused({ code: "already-finished", by: "Mo Maker", state: "done" }),
    );
    const back = must(await undoOperation(maker, { ...tick(done), reason: "slip" }));
    expect(back.state).toBe("running");
    const again2 = must(await undoOperation(maker, { ...tick(back), reason: "slip" }));
    expect(again2).toMatchObject({ state: "ready", startedBy: null });
    const floor = must(await readOrder(desk, { orderId })).history.filter(({ kind }) => kind.startsWith("operation-"));
    expect(floor.map(({ kind, data }) => [kind, data.station, data.reason])).toEqual([
      ["operation-started", stationNumber(first.station), undefined],
      ["operation-finished", stationNumber(first.station), undefined],
      ["operation-undone", stationNumber(first.station), "slip"],
      ["operation-undone", stationNumber(first.station), "slip"],
    ]);
  });
});
