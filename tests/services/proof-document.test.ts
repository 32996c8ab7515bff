import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import {
  type AcceptedQuote,
  acceptQuote,
  approveProof,
  askProofChanges,
  type Context,
  cancelOrder,
  createQuote,
  editPair,
  issueProof,
  type PairId,
  proofDocument,
  readProgress,
} from "#services";
import { pdfPages } from "../papers/pdf-text";
import { acceptedQuote, filledSheet } from "../support/builders/sale";
import { must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { ownPicture } from "./scenarios/own-picture";

const db = databaseForTests();
const denied = { ok: false, refusal: { code: "not-allowed" } };

interface Sold {
  readonly shop: TestShop;
  readonly order: AcceptedQuote;
  readonly pairId: PairId;
  readonly guest: Context;
}

async function sold(make: (shop: TestShop) => Promise<AcceptedQuote>): Promise<Sold> {
  const shop = await openShop(db());
  await stockWood(db());
  const order = await make(shop);
  return { shop, order, pairId: order.pairs[0]?.pairId as PairId, guest: await guestOf(shop, order) };
}

async function guestOf(shop: TestShop, { token }: AcceptedQuote): Promise<Context> {
  return shop.as((await guestByToken(token, shopNow))?.actor ?? expect.fail("the link is closed"));
}

async function withPicture(shop: TestShop): Promise<AcceptedQuote> {
  const desk = shop.as(shop.desk);
  const sheetId = await filledSheet(shop, { choices: { "choices.model": "midlow-95" } });
  await ownPicture(desk, sheetId, "Robin Alder");
  const { quote } = must(await createQuote(desk, { sheetId }));
  return must(await acceptQuote(desk, { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" }));
}

async function readPaper(ctx: Context, input: { readonly pairId: PairId; readonly token?: string }): Promise<string> {
  return pdfPages(must(await proofDocument(ctx, { ...input, paper: "A4" })).bytes).join(" ");
}

// Contents of a proof: the workshop's own list; common practice, no source.
describe("proof", () => {
  it("is the desk's to look at before it is sent, and the skier's from then on, with the day to answer by", async () => {
    const { shop, order, pairId, guest } = await sold(withPicture);
    const desk = shop.as(shop.desk);
    expect(await readPaper(desk, { pairId })).toContain("not sent yet, revision 1");
    expect(await proofDocument(guest, { pairId, paper: "A4" })).toMatchObject({ refusal: { code: "no-proof" } });

    must(await issueProof(desk, { pairId, note: "The ridge sits a little higher." }));
    const art = await db().artwork.findFirstOrThrow();
    const text = await readPaper(guest, { pairId, token: order.token });
    for (const words of [
      "revision 1: seen from above, tip to the left",
      order.pairs[0]?.serial ?? "",
      "Midlow 95",
      "same on both skis",
      // 25.4 mm to the inch at 0.15 mm to the pixel.
      "169 dpi: sharp in print",
      "no text",
      "6 mm inside the edge",
      "hidden by boot and binding, 320 mm",
      "sRGB; close, not exact",
      "the paper is printed as read",
      (art.sha256.slice(0, 12).match(/.{4}/g) ?? []).join(" "),
      "The ridge sits a little higher.",
      // Five working days after Tuesday 10 November.
      "please by Tue 17 Nov 2026",
      "your place in the queue is given up",
      "Approve as drawn",
    ]) {
      expect(text).toContain(words);
    }
    // The page shows the same proof: the pair as it is printed, the same day, the same consequence.
    const { proofToAnswer } = must(await readProgress(guest, { pairId }));
    expect(proofToAnswer).toMatchObject({ answerBy: "2026-11-17", meanwhile: "waiting", safeMm: 6 });
    expect(proofToAnswer?.look.graphic).toMatchObject({ layout: "same", artwork: { id: art.id } });
  });

  it("tells the answer, and a maker no full name", async () => {
    const { shop, pairId, guest } = await sold(withPicture);
    const desk = shop.as(shop.desk);
    const first = must(await issueProof(desk, { pairId }));
    must(await askProofChanges(guest, { pairId, revision: first.revision, note: "darker, please" }));
    expect(must(await readProgress(guest, { pairId })).proofToAnswer).toBeNull();
    expect(await readPaper(guest, { pairId })).toContain("Changes asked, 10 Nov 2026, 10:00: darker, please");
    const second = must(await issueProof(desk, { pairId }));
    must(await approveProof(guest, { pairId, revision: second.revision, name: "Robin Alder" }));
    expect(await readPaper(guest, { pairId })).toContain("Approved by Robin Alder, 10 Nov 2026, 10:00.");
    const floor = await readPaper(shop.as(shop.maker), { pairId });
    expect(floor).toContain("revision 2");
    expect(floor).toContain("Approved, 10 Nov 2026, 10:00.");
    expect(floor).not.toContain("Alder");
  });

  it("sets words on a house graphic letter by letter", async () => {
    const graphic = {
      kind: "house",
      house: "autumn-larch",
      layout: "same",
      text: { text: "FERN & FELL", xMm: 400, capHeightMm: 24 },
      windows: [],
    };
    const { shop, pairId } = await sold((open) => acceptedQuote(open, { choices: { "choices.graphic": graphic } }));
    const text = await readPaper(shop.as(shop.owner), { pairId });
    expect(text).toContain("“FERN & FELL”, cap height 24 mm");
    expect(text).toContain("drawn from lines: sharp at any size");
    expect(text).toContain("house graphic");
  });

  it("is still answered after a change that leaves the print alone, and is void after one that does not", async () => {
    const { shop, pairId, guest } = await sold(withPicture);
    const desk = shop.as(shop.desk);
    const { revision } = must(await issueProof(desk, { pairId }));
    must(await editPair(desk, { pairId, choices: { flexRatio: 1.12 }, reason: "softer, they say", revision: 1 }));
    expect(must(await approveProof(guest, { pairId, revision, name: "Robin Alder" })).state).toBe("approved");
    must(await editPair(desk, { pairId, choices: { lengthCm: 186 }, reason: "longer, they say", revision: 2 }));
    expect(await readPaper(desk, { pairId })).toContain("not sent yet, revision 2");
    expect(await approveProof(guest, { pairId, revision, name: "Robin Alder" })).toMatchObject({
      refusal: { code: "no-proof" },
    });
  });

  it("opens to no passer-by and no other order's link, and is not drawn where none is needed", async () => {
    const { shop, order, pairId } = await sold(withPicture);
    const desk = shop.as(shop.desk);
    must(await issueProof(desk, { pairId }));
    const other = await acceptedQuote(shop, { phone: "303 555 0151", name: "Kim Rowan" });
    for (const ctx of [shop.visitor, await guestOf(shop, other)]) {
      expect(await proofDocument(ctx, { pairId, paper: "A4" })).toMatchObject(denied);
    }
    const plain = other.pairs[0]?.pairId as PairId;
    expect(await proofDocument(desk, { pairId: plain, paper: "A4" })).toMatchObject({
      refusal: { code: "not-needed" },
    });
    must(await cancelOrder(desk, { orderId: order.orderId, reason: "changed their mind" }));
    expect(await proofDocument(desk, { pairId, paper: "A4" })).toMatchObject({ refusal: { code: "order-closed" } });
  });
});
