import sharp from "sharp";
import { describe, expect, it } from "vitest";
import {
  acceptQuote,
  approveProof,
  confirmRights,
  createQuote,
  issueProof,
  lockSpecification,
  readOrder,
  readProgress,
  recordDeposit,
  saveSheet,
  uploadArtwork,
} from "#services";
import { filledSheet } from "../../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 16: rights not ticked", () => {
  it("sells, but starts no clock and releases no print until the rights are confirmed", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop, { choices: { "choices.model": "midlow-95" } });
    const bytes = await sharp({ create: { width: 2400, height: 400, channels: 3, background: "#224466" } })
      .png()
      .toBuffer();
    const { artworkId, widthPx, heightPx, sha256 } = must(
      await uploadArtwork(desk, { sheetId, fileName: "club crest.png", bytes }),
    );
    const graphic = {
      kind: "own",
      artwork: { id: artworkId, widthPx, heightPx, sha256 },
      placement: { centreXMm: 900, centreYMm: 0, mmPerPixel: 0.15, angleDeg: 0 },
      layout: "same",
      windows: [],
    };
    must(await saveSheet(desk, { sheetId, patch: { "choices.graphic": graphic }, baseVersion: 99 }));
    const { quote } = must(await createQuote(desk, { sheetId }));
    const order = must(await acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" }));
    const { orderId } = order;
    const pairId = order.pairs[0]?.pairId ?? raise();
    must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 7" }));
    must(await lockSpecification(desk, { pairId }));
    const proof = must(await issueProof(desk, { pairId }));
    must(await approveProof(desk, { pairId, revision: proof.revision, name: "Robin Alder" }));

    expect(must(await readProgress(desk, { pairId })).gates.waitingFor).toEqual(["rights"]);
    expect(must(await readOrder(desk, { orderId }))).toMatchObject({
      state: "waiting",
      promisedOn: null,
      clockStartedAt: null,
    });

    must(
      await confirmRights(shop.as(shop.desk, daysAfter(shopNow, 1)), {
        pairId,
        basis: "commissioned",
        name: "Robin Alder",
      }),
    );
    const started = must(await readOrder(desk, { orderId }));
    expect(started).toMatchObject({ state: "released", promiseClass: "promise" });
    expect(started.history.find((event) => event.kind === "clock-started")?.data.last).toBe("rights");
  });
});

function raise(): never {
  throw new Error("the order has no pair");
}
