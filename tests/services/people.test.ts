/** People, sign-ins, screens and links by their use cases: who may, what is told, and what is in the record. */
import { describe, expect, it } from "vitest";
import { guestByToken, type StaffActor, signIn, staffBySession, visitor } from "#auth";
import {
  becomeFirstOwner,
  cancelOrder,
  changeMyPassword,
  endSignIn,
  endSignInsOf,
  endWall,
  enrolDevice,
  giveFloorCode,
  givePassword,
  letGo,
  openWall,
  queueBoard,
  readGuessing,
  readLinkStanding,
  readMyAccount,
  readPeople,
  releaseDevice,
  renewLink,
  takeOn,
  withdrawQuote,
} from "#services";
import { acceptedQuote, quotedSheet } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const denied = { ok: false, refusal: { code: "not-allowed" } };

async function signedIn(who: "desk1" | "maker" | "owner", at = shopNow) {
  const person = { email: `${who}@thistle-yard.example`, password: "larch-board-seven", address: "127.0.0.1" };
  return must(await signIn(person, at));
}

describe("what is an owner's", () => {
  it("is refused to the desk, a maker, a passer-by and an owner who came in by short code", async () => {
    const shop = await openShop(db());
    const { actor } = await signedIn("owner");
    const byCode: StaffActor = { ...actor, sessionKind: "floor" };
    for (const ctx of [shop.as(shop.desk), shop.as(shop.maker), shop.visitor, shop.as(byCode)]) {
      const person = { name: "X", email: "x@moor.example", role: "owner", password: "larch and ash 42" } as const;
      expect(await readPeople(ctx)).toMatchObject(denied);
      expect(await readGuessing(ctx)).toMatchObject(denied);
      expect(await takeOn(ctx, person)).toMatchObject(denied);
      expect(await letGo(ctx, { staffId: "s" })).toMatchObject(denied);
      expect(await givePassword(ctx, { staffId: "s", password: "larch and ash 42" })).toMatchObject(denied);
      expect(await giveFloorCode(ctx, { staffId: "s", code: "480917" })).toMatchObject(denied);
      expect(await endSignIn(ctx, { sessionId: "s" })).toMatchObject(denied);
      expect(await endSignInsOf(ctx, { staffId: "s" })).toMatchObject(denied);
      expect(await enrolDevice(ctx, { deviceToken: undefined, name: "Tablet" })).toMatchObject(denied);
      expect(await releaseDevice(ctx, { deviceId: "d" })).toMatchObject(denied);
      expect(await openWall(ctx, { name: "By the press" })).toMatchObject(denied);
      expect(await endWall(ctx, { wallId: "w" })).toMatchObject(denied);
    }
    for (const ctx of [shop.visitor, shop.as(byCode)]) {
      expect(await readMyAccount(ctx)).toMatchObject(denied);
      expect(await changeMyPassword(ctx, { current: "x", password: "y" })).toMatchObject(denied);
    }
    const first = { name: "X", email: "x@moor.example", password: "y", code: "z", address: "192.0.2.7" };
    expect(await becomeFirstOwner(shop.as(shop.desk), first)).toMatchObject(denied);
    expect(await becomeFirstOwner(shop.visitor, first)).toMatchObject({ refusal: { code: "shop-has-people" } });
    expect(await readLinkStanding(shop.as(shop.maker), { kind: "order", id: "o" })).toMatchObject(denied);
    expect(await renewLink(shop.as(shop.maker), { kind: "order", id: "o" })).toMatchObject(denied);
  });

  it("refuses the workshop's own name as a password, wherever it is set", async () => {
    const shop = await openShop(db());
    const { actor } = await signedIn("owner");
    const password = "thistle yard 2026";
    const guessable = { refusal: { code: "password-guessable", path: "password" } };
    const ctx = shop.as(actor);
    const person = { name: "Ada", email: "a@moor.example", role: "desk" } as const;
    expect(await takeOn(ctx, { ...person, password })).toMatchObject(guessable);
    expect(await changeMyPassword(ctx, { current: "larch-board-seven", password })).toMatchObject(guessable);
  });
});

describe("sign-ins", () => {
  it("are listed with device and ends, and end by the owner's word or one's own", async () => {
    const shop = await openShop(db());
    const desk = await signedIn("desk1");
    const other = await signedIn("desk1");
    const owner = shop.as((await signedIn("owner")).actor);
    const mine = must(await readMyAccount(shop.as(desk.actor)));
    expect(mine.signIns.map(({ isThis }) => isThis).sort()).toEqual([false, true]);
    expect(mine.signIns[0]).toMatchObject({ kind: "full", endsAt: new Date(+shopNow + 30 * 60_000).toISOString() });
    const [open] = mine.signIns.filter(({ isThis }) => !isThis);
    must(await endSignIn(shop.as(desk.actor), { sessionId: open?.sessionId ?? "" }));
    expect(await staffBySession(other.token, shopNow)).toBeNull();
    expect(await endSignIn(owner, { sessionId: open?.sessionId ?? "" })).toMatchObject({
      refusal: { code: "sign-in-over" },
    });
    const { people } = must(await readPeople(owner));
    expect(people.find(({ staffId }) => staffId === desk.actor.staffId)?.signIns).toHaveLength(1);
    // Not another's, unless one is an owner.
    const ownersOwn = people.find(({ role }) => role === "owner")?.signIns[0]?.sessionId ?? "";
    expect(await endSignIn(shop.as(desk.actor), { sessionId: ownersOwn })).toMatchObject(denied);
    expect(must(await endSignInsOf(owner, { staffId: desk.actor.staffId }))).toEqual({ sessions: 1 });
    expect(await staffBySession(desk.token, shopNow)).toBeNull();
    const { record } = must(await readPeople(owner));
    expect(record.filter(({ kind }) => kind === "sign-ins-ended").map(({ about, by }) => [about, by])).toEqual([
      ["Desk 1", "Ola Owner"],
      ["Desk 1", "Desk 1"],
    ]);
  });
});

describe("a screen on the wall", () => {
  it("reads the queue by its link until an owner ends it or its year is over, and reads nothing else", async () => {
    const shop = await openShop(db());
    const owner = shop.as((await signedIn("owner")).actor);
    const { wallId, token } = must(await openWall(owner, { name: "By the press" }));
    const screen = await guestByToken(token, shopNow);
    if (!screen) throw new Error("the link does not work");
    const ctx = shop.as(screen.actor);
    expect(await queueBoard(ctx, { wallId })).toMatchObject({ ok: true });
    expect(await queueBoard(ctx)).toMatchObject(denied);
    expect(await queueBoard(ctx, { wallId: "another" })).toMatchObject(denied);
    expect(await queueBoard(shop.as(visitor()), { wallId })).toMatchObject(denied);
    expect(await readPeople(ctx)).toMatchObject(denied);
    expect(must(await readPeople(owner)).walls).toMatchObject([{ wallId, name: "By the press", isOver: false }]);
    expect(await guestByToken(token, daysAfter(shopNow, 364))).not.toBeNull();
    expect(await guestByToken(token, daysAfter(shopNow, 365))).toBeNull();
    must(await endWall(owner, { wallId }));
    expect(await guestByToken(token, shopNow)).toBeNull();
    expect(await endWall(owner, { wallId })).toMatchObject({ refusal: { code: "wall-ended" } });
  });
});

describe("a private link", () => {
  it("ends by its day, works longer when the desk renews it, and ends soon after what it opens", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const desk = shop.as(shop.desk);
    const { quote, token } = await quotedSheet(shop, { phone: "303 555 0150" });
    const link = { kind: "quote", id: quote.quoteId } as const;
    expect(await guestByToken(token, daysAfter(shopNow, 179))).not.toBeNull();
    expect(await guestByToken(token, daysAfter(shopNow, 180))).toBeNull();
    const later = shop.as(shop.desk, daysAfter(shopNow, 200));
    expect(must(await readLinkStanding(later, link))).toMatchObject({ open: 0, over: 1 });
    must(await renewLink(later, link));
    expect(await guestByToken(token, daysAfter(shopNow, 379))).not.toBeNull();
    expect(await guestByToken(token, daysAfter(shopNow, 380))).toBeNull();
    expect(await db().event.count({ where: { kind: "link-renewed", subjectId: quote.quoteId } })).toBe(1);
    must(await withdrawQuote(desk, { quoteId: quote.quoteId, reason: "bought elsewhere" }));
    expect(await guestByToken(token, daysAfter(shopNow, 59))).not.toBeNull();
    expect(await guestByToken(token, daysAfter(shopNow, 60))).toBeNull();
    expect(await renewLink(desk, { kind: "quote", id: "another" })).toMatchObject({
      refusal: { code: "no-link-to-renew" },
    });

    const order = await acceptedQuote(shop, { phone: "303 555 0151" });
    const orderLink = { kind: "order", id: order.orderId } as const;
    expect(must(await readLinkStanding(desk, orderLink)).until).toBe(daysAfter(shopNow, 730).toISOString());
    must(await cancelOrder(desk, { orderId: order.orderId, reason: "bought elsewhere" }));
    expect(must(await readLinkStanding(desk, orderLink)).until).toBe(daysAfter(shopNow, 60).toISOString());
  });
});
