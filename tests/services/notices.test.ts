import { describe, expect, it } from "vitest";
import { letterText } from "#data/letters";
import { transaction } from "#data/transaction";
import { unreadableRows } from "#data/unreadable";
import { dropNotice, listNotices, sendNotice } from "#services";
import { draftNotice } from "#services/letters/draft-notice";
import { acceptedQuote } from "../support/builders/sale";
import { must, openShop, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

async function drafted(shop: TestShop) {
  const { orderId } = await acceptedQuote(shop);
  const letter = { orderId, incidentId: null, kind: "delay", body: "Dear Robin, it takes longer.", data: {} } as const;
  await transaction(db(), (tx) => draftNotice(shop.as(shop.desk), tx, letter));
  const [notice] = must(await listNotices(shop.as(shop.desk)));
  if (notice === undefined) throw new Error("no draft");
  return notice;
}

const messages = () => db().outboxMessage.findMany({ where: { kind: "notice-delay" } });

describe("letters to customers", () => {
  it("sends what the person last wrote, once, when two desks press at the same moment", async () => {
    const shop = await openShop(db());
    const { noticeId, version, orderId } = await drafted(shop);
    expect(await messages()).toEqual([]);
    const both = await Promise.all(
      [shop.desk, shop.secondDesk].map((actor) =>
        sendNotice(shop.as(actor), { noticeId, version, body: "Dear Robin, the press is down." }),
      ),
    );
    expect(both.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(both.find((outcome) => !outcome.ok)).toMatchObject({ refusal: { code: "changed-meanwhile" } });
    const [message, ...others] = await messages();
    expect(others).toEqual([]);
    expect(message).toMatchObject({
      recipient: "303 555 0101",
      subjectId: orderId,
      data: { noticeId, kind: "delay" },
    });
    expect(JSON.stringify(message?.data)).not.toContain("Robin");
    const events = await db().event.findMany({ where: { subjectId: orderId, kind: { startsWith: "notice-" } } });
    expect(events.map(({ kind }) => kind)).toEqual(["notice-drafted", "notice-sent"]);
  });

  it("puts the letter into the queue when there is a mail address to send it to, and else not", async () => {
    const shop = await openShop(db());
    const first = await drafted(shop);
    expect(first.byMail).toBe(false);
    must(await sendNotice(shop.as(shop.desk), { ...first, body: "Told on the phone." }));
    expect(await db().letter.count()).toBe(0);
    await db().notice.deleteMany();
    const second = await drafted(shop);
    await db().order.update({ where: { id: second.orderId }, data: { buyerEmail: "robin@alder.example" } });
    must(await sendNotice(shop.as(shop.desk), { ...second, body: "The press is down." }));
    const letters = await db().letter.findMany({ where: { subjectId: second.orderId } });
    expect(letters).toMatchObject([{ recipient: "robin@alder.example", state: "waiting" }]);
    expect(letters.map(letterText)).toEqual(["The press is down."]);
    const shown = async () => must(await listNotices(shop.as(shop.desk))).map(({ letter }) => letter);
    expect(await shown()).toEqual(["waiting"]);
    await db().letter.updateMany({ data: { state: "sent" } });
    expect(await shown()).toEqual(["sent"]);
  });

  it("keeps what they say sealed, opens it for people, and says which cannot be opened", async () => {
    const shop = await openShop(db());
    const { noticeId, version } = await drafted(shop);
    const stored = async () => (await db().notice.findUniqueOrThrow({ where: { id: noticeId } })).body;
    expect(await stored()).toMatch(/^sealed-1:/);
    const desk = shop.as(shop.desk);
    must(await sendNotice(desk, { noticeId, version, body: "Dear Robin, look at /pair/abc." }));
    expect(await stored()).not.toContain("abc");
    expect(must(await listNotices(desk)).map(({ body }) => body)).toEqual(["Dear Robin, look at /pair/abc."]);
    // From before texts were sealed; then one that another house's key has closed.
    await db().notice.updateMany({ data: { body: "Dear Robin, in clear." } });
    expect(must(await listNotices(desk)).map(({ body }) => body)).toEqual(["Dear Robin, in clear."]);
    await db().notice.updateMany({ data: { state: "draft", body: `sealed-1:${Buffer.alloc(48).toString("base64")}` } });
    expect(must(await listNotices(desk))).toEqual([]);
    expect(await unreadableRows(db())).toMatchObject([{ table: "notices", column: "body" }]);
  });

  it("drops with a reason and then cannot be sent", async () => {
    const shop = await openShop(db());
    const { noticeId, version } = await drafted(shop);
    const desk = shop.as(shop.desk);
    expect(await dropNotice(desk, { noticeId, version, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing", path: "reason" },
    });
    const dropped = must(await dropNotice(desk, { noticeId, version, reason: "told on the phone" }));
    expect(dropped).toMatchObject({ state: "dropped", decided: { by: "Desk 1", reason: "told on the phone" } });
    expect(await sendNotice(desk, { noticeId, version: dropped.version, body: "late" })).toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    expect(await messages()).toEqual([]);
  });

  it("refuses an empty letter and one that is too long, and is closed to makers and passers-by", async () => {
    const shop = await openShop(db());
    const { noticeId, version } = await drafted(shop);
    for (const body of [" ", "x".repeat(5001)]) {
      expect(await sendNotice(shop.as(shop.desk), { noticeId, version, body })).toMatchObject({
        refusal: { code: "invalid-field", path: "body" },
      });
    }
    for (const ctx of [shop.as(shop.maker), shop.visitor]) {
      const denied = { refusal: { code: "not-allowed" } };
      expect(await listNotices(ctx)).toMatchObject(denied);
      expect(await sendNotice(ctx, { noticeId, version, body: "x" })).toMatchObject(denied);
      expect(await dropNotice(ctx, { noticeId, version, reason: "x" })).toMatchObject(denied);
    }
  });
});
