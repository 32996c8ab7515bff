/** Doors that programs use too: the payment service's, and papers of a guest who has asked for too many. */
import { EventEmitter } from "node:events";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { answering } from "#app/_server/this-request.ts";
import { GET as quotePaper } from "#app/files/quotes/[key]/route.ts";
import { POST as paymentDoor } from "#app/payments/route.ts";
import { config, houseDigest } from "#config";
import { paymentKey, signMessage } from "#services/money/payment-message";
import { turns } from "#services/turns";
import { currentCatalog } from "#shop/catalogue/current";
import { acceptedQuote, quotedSheet } from "../support/builders/sale";
import { openShop, shopNow, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { freshBrowser } from "../support/page-requests";

const db = databaseForTests();

describe("a door that programs use", () => {
  let shop: TestShop;

  beforeEach(async () => {
    freshBrowser();
    vi.setSystemTime(shopNow);
    shop = await openShop(db());
  });

  const post = (body: string, signature?: string) =>
    paymentDoor(
      new Request("http://localhost/payments", {
        method: "POST",
        body,
        headers: {
          "content-length": String(Buffer.byteLength(body)),
          ...(signature === undefined ? {} : { "x-payment-signature": signature }),
        },
      }),
    );

  it("takes a signed message once, and answers others by what is wrong with them", async () => {
    const { orderId } = await acceptedQuote(shop);
    const asked = await db().payment.findFirstOrThrow({ where: { orderId } });
    const at = shopNow.toISOString();
    const message = { id: "service-0001", shop: config().publicOrigin, paymentId: asked.id, cents: asked.cents };
    const rest = { currency: "USD", paidAt: at, sentAt: at, reference: "charge 1" };
    const { body, signature } = signMessage({ ...message, ...rest }, paymentKey());
    expect((await post(body)).status).toBe(401);
    expect((await post(`${body} `, signature)).status).toBe(401);
    expect((await post("x".repeat(20_000), signature)).status).toBe(401);
    const taken = await post(body, signature);
    expect([taken.status, await taken.json()]).toEqual([200, { paidAt: at }]);
    const again = await post(body, signature);
    expect([again.status, again.headers.get("cache-control")]).toEqual([409, "no-store"]);
    expect(await again.json()).toMatchObject({ message: "The message was acted on already." });
  });

  it("draws nothing for a guest who left while others were before them", async () => {
    const { token } = await quotedSheet(shop);
    let open = () => {};
    const before = turns().papers.run({ isStaff: true, whose: null }, () => new Promise<void>((done) => (open = done)));
    const answer = Object.assign(new EventEmitter(), { writableFinished: false });
    const url = `http://localhost/files/quotes/${token}`;
    const asked = answering({ method: "GET", url }, answer, () =>
      quotePaper(new Request(url), { params: Promise.resolve({ key: token }) }),
    );
    // Left before or after it got into the line: either way nobody waits for it.
    await vi.waitFor(async () => expect(await db().doorBudget.count()).toBeGreaterThan(0));
    answer.emit("close");
    expect((await asked).status).toBe(503);
    open();
    await before;
  });

  it("says 429 and when to come again to a guest at the end of their budget, and not to others", async () => {
    const { token } = await quotedSheet(shop);
    const share = houseDigest("visitors", "address 192.0.2.7").slice(0, 32);
    const expire = BigInt(shopNow.getTime() + 600_000);
    await db().doorBudget.create({
      data: { key: `drawing:${share}`, points: currentCatalog().doors.drawing.each, expire },
    });
    const asked = () =>
      quotePaper(new Request(`http://localhost/files/quotes/${token}`), { params: Promise.resolve({ key: token }) });
    const answer = await asked();
    expect([answer.status, answer.headers.get("retry-after")]).toEqual([429, "600"]);
    expect(String((await answer.json()).message)).toContain("try again in 10 minutes");
    await db().doorBudget.deleteMany();
    expect((await asked()).status).toBe(200);
    expect(await db().doorBudget.findMany({ orderBy: { points: "asc" }, select: { key: true } })).toEqual(
      expect.arrayContaining([{ key: `drawing:${share}` }, { key: "drawing:all" }]),
    );
  });
});
