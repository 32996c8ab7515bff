import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import { markDemoShop } from "#data/counters";
import {
  acceptQuote,
  approveProof,
  assess,
  buildSheetDocument,
  createQuote,
  issueProof,
  lockSpecification,
  openSheet,
  readOrder,
  readPair,
  readProgress,
  recordDeposit,
  saveSheet,
  stateRights,
  uploadArtwork,
} from "#services";
import { plainAnswers } from "../support/builders/sale";
import { must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("from a skier's answers to the build sheet", () => {
  it("goes all the way: sheet, quote, order, deposit, rights, proof, lock, promise, floor, build sheet", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const opened = must(await openSheet(shop.visitor, { channel: "online" }));
    const { sheetId } = opened.sheet;
    const skier = shop.as((await guestByToken(opened.token ?? "", shopNow))?.actor ?? shop.visitor.actor);
    const picture = await sharp({ create: { width: 3000, height: 400, channels: 3, background: "#884411" } })
      .jpeg()
      .toBuffer();
    const art = must(await uploadArtwork(skier, { sheetId, fileName: "crest.jpg", bytes: picture }));
    must(await stateRights(skier, { artworkId: art.artworkId, basis: "own", name: "Robin Alder" }));
    const patch = {
      ...plainAnswers,
      "contact.name": "Robin Alder",
      "contact.email": "robin@alder.example",
      "choices.destination": "home",
      "choices.graphic": {
        kind: "own",
        artwork: { id: art.artworkId, widthPx: art.widthPx, heightPx: art.heightPx, sha256: art.sha256 },
        placement: { centreXMm: 900, centreYMm: 0, mmPerPixel: 0.15, angleDeg: 0 },
        layout: "same",
        windows: [],
      },
    };
    must(await saveSheet(skier, { sheetId, patch, baseVersion: opened.sheet.version }));
    const { assessment, dateRange, stoppedBy } = must(await assess(skier, { sheetId }));
    expect(stoppedBy).toEqual([]);
    expect(dateRange?.p90 && dateRange.p50 <= dateRange.p90).toBe(true);

    const made = must(await createQuote(skier, { sheetId }));
    expect(made.quote.price).toEqual(assessment.price);
    const holder = shop.as((await guestByToken(made.token, shopNow))?.actor ?? shop.visitor.actor);
    const accepted = must(
      await acceptQuote(holder, { quoteId: made.quote.quoteId, how: "online", name: "Robin Alder" }),
    );
    const pairId = accepted.pairs[0]?.pairId;
    if (pairId === undefined) throw new Error("the order has no pair");

    const desk = shop.as(shop.desk);
    const buyer = shop.as((await guestByToken(accepted.token, shopNow))?.actor ?? shop.visitor.actor);
    expect(must(await readProgress(buyer, { pairId })).gates.waitingFor).toEqual([
      "deposit",
      "specification-lock",
      "proof",
    ]);
    expect(accepted.isConfirmed).toBe(false);
    await markDemoShop(db());
    must(await recordDeposit(buyer, { orderId: accepted.orderId, method: "demo-card" }));
    const proof = must(await issueProof(desk, { pairId }));
    must(await approveProof(buyer, { pairId, revision: proof.revision, name: "Robin Alder" }));
    expect(must(await readOrder(desk, { orderId: accepted.orderId })).promisedOn).toBeNull();
    must(await lockSpecification(desk, { pairId }));

    const order = must(await readOrder(desk, { orderId: accepted.orderId }));
    expect(order).toMatchObject({ state: "released", promiseClass: "promise" });
    expect(order.promisedOn).not.toBeNull();

    const pair = must(await readPair(shop.as(shop.maker), { pairId }));
    expect(
      pair.operations.filter((operation) => operation.state === "ready").map((operation) => operation.station),
    ).toEqual(["release"]);
    expect(pair.strips).toHaveLength(14);
    expect(pair.skis.map((ski) => ski.side)).toEqual(["L", "R"]);

    const sheet = must(await buildSheetDocument(shop.as(shop.maker), { pairId, paper: "A4" }));
    expect(new TextDecoder().decode(sheet.bytes.slice(0, 5))).toBe("%PDF-");
  });
});
