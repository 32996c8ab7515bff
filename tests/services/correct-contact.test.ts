/** A contact that was taken down wrong is put right, with who, when and why; what was agreed keeps its words. A rule of the shop, no source. */
import { beforeEach, describe, expect, it } from "vitest";
import { idOf } from "#schemas/ids";
import { confirmByCode, correctBuyer, correctCustomer, readCustomerPage, readOrder, sendCodeAgain } from "#services";
import { codeIn, onlineOrder } from "../support/builders/online";
import { acceptedQuote } from "../support/builders/sale";
import { must, openShop, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const right = {
  name: "Robin Adler",
  phone: "303 555 0102",
  email: "robin@mail.example",
  reason: "spelt on the phone",
} as const;

describe("a contact put right", () => {
  let shop: TestShop;
  beforeEach(async () => {
    shop = await openShop(db());
    await stockWood(db());
  });

  const buyerColumns = { buyerName: true, buyerPhone: true, buyerEmail: true } as const;
  const buyers = async () => [
    await db().order.findMany({ select: buyerColumns }),
    await db().quote.findMany({ select: buyerColumns }),
  ];

  it("changes the customer with an event, and no buyer of an order or a quote", async () => {
    await acceptedQuote(shop);
    const before = await buyers();
    const [row] = await db().customer.findMany();
    const customerId = idOf("customer", row?.id ?? "");
    must(await correctCustomer(shop.as(shop.desk), { customerId, ...right }));
    const page = must(await readCustomerPage(shop.as(shop.desk), { customerId }));
    expect(page).toMatchObject({ name: "Robin Adler", phone: "303 555 0102", email: "robin@mail.example" });
    expect(page.history).toMatchObject([
      {
        kind: "customer-corrected",
        by: "Desk 1",
        data: { before: { name: "Robin Alder", phone: "303 555 0101", email: null }, reason: right.reason },
      },
    ]);
    expect(await buyers()).toEqual(before);
    // Known again by the new number, in the form numbers are compared in.
    expect((await db().customer.findMany())[0]?.phoneNormalised).toBe("+13035550102");
    // What is left empty is taken away.
    must(await correctCustomer(shop.as(shop.desk), { customerId, ...right, phone: "" }));
    expect((await db().customer.findMany())[0]).toMatchObject({ phone: null, phoneNormalised: null });
  });

  it("is refused without a reason, a change, a possible number or the right to, and on a customer who is gone", async () => {
    await acceptedQuote(shop);
    const [row] = await db().customer.findMany();
    const customerId = idOf("customer", row?.id ?? "");
    const desk = shop.as(shop.desk);
    const same = { name: "Robin Alder", phone: "303 555 0101", email: "", reason: "x" };
    const code = async (outcome: Promise<unknown>) =>
      (await outcome) as { readonly refusal?: { readonly code: string } };
    expect((await code(correctCustomer(desk, { customerId, ...same }))).refusal?.code).toBe("contact-unchanged");
    expect((await code(correctCustomer(desk, { customerId, ...right, reason: " " }))).refusal?.code).toBe(
      "reason-missing",
    );
    expect((await code(correctCustomer(desk, { customerId, ...right, phone: "12" }))).refusal?.code).toBe(
      "invalid-phone",
    );
    for (const ctx of [shop.as(shop.maker), shop.visitor]) {
      expect((await code(correctCustomer(ctx, { customerId, ...right }))).refusal?.code).toBe("not-allowed");
    }
    await db().customer.updateMany({ data: { erasedAt: new Date() } });
    expect((await code(correctCustomer(desk, { customerId, ...right }))).refusal?.code).toBe("customer-gone");
    expect(await db().event.count({ where: { kind: "customer-corrected" } })).toBe(0);
  });

  it("changes the buyer of one order until it is shipped, and neither quote nor customer", async () => {
    const { orderId } = await acceptedQuote(shop);
    const desk = shop.as(shop.desk);
    const { version } = must(await readOrder(desk, { orderId }));
    const customer = await db().customer.findMany();
    const quotes = await db().quote.findMany();
    const at = { orderId, version };
    for (const ctx of [shop.as(shop.maker), shop.visitor]) {
      expect(await correctBuyer(ctx, { ...at, ...right })).toMatchObject({ refusal: { code: "not-allowed" } });
    }
    must(await correctBuyer(desk, { ...at, ...right }));
    const order = must(await readOrder(desk, { orderId }));
    expect(order.customer).toMatchObject({ name: "Robin Adler", phone: "303 555 0102", email: "robin@mail.example" });
    expect(order.history.find(({ kind }) => kind === "buyer-corrected")).toMatchObject({
      by: "Desk 1",
      data: { before: { name: "Robin Alder" }, reason: right.reason },
    });
    expect([await db().customer.findMany(), await db().quote.findMany()]).toEqual([customer, quotes]);
    // Somebody else looked at the order as it was.
    expect(await correctBuyer(desk, { ...at, ...right, name: "R. Adler" })).toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    await db().order.updateMany({ data: { state: "shipped" } });
    expect(await correctBuyer(desk, { orderId, version: order.version, ...right, name: "R. Adler" })).toMatchObject({
      refusal: { code: "order-closed", state: "shipped" },
    });
  });

  it("makes a code worthless that went to the wrong address, and the next one goes to the right one", async () => {
    const wrong = "wern@mail.example";
    const order = await onlineOrder(shop, { email: wrong });
    const old = await codeIn(db(), order.orderId);
    const desk = shop.as(shop.desk);
    const { version, customer } = must(await readOrder(desk, { orderId: order.orderId }));
    const now = { name: customer.name, phone: customer.phone ?? "", email: "wren@mail.example", reason: "misspelt" };
    must(await correctBuyer(desk, { orderId: order.orderId, version, ...now }));
    expect(await confirmByCode(desk, { orderId: order.orderId, code: old })).toMatchObject({
      refusal: { code: "code-over" },
    });
    must(await sendCodeAgain(desk, { orderId: order.orderId }));
    const letters = await db().letter.findMany({ orderBy: { createdAt: "asc" } });
    expect(new Set(letters.map(({ recipient }) => recipient))).toEqual(new Set([wrong, "wren@mail.example"]));
  });
});
