/** The pages of customers, of orders to confirm and of what is kept: what they show, and what their buttons do. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import PairPage from "#app/(skier)/pair/[token]/page.tsx";
import { confirmContact } from "#app/(skier)/pair/actions.ts";
import { startSheet } from "#app/(skier)/sheet/actions.ts";
import StartPage from "#app/(skier)/sheet/page.tsx";
import { GET as personDoor } from "#app/files/people/[customerId]/route.ts";
import { release } from "#app/shop/(staff)/confirmations/actions.ts";
import ConfirmationsPage from "#app/shop/(staff)/confirmations/page.tsx";
import CustomerPage from "#app/shop/(staff)/customers/[customerId]/page.tsx";
import { erase, merge } from "#app/shop/(staff)/customers/actions.ts";
import CustomersPage from "#app/shop/(staff)/customers/page.tsx";
import OrderPage from "#app/shop/(staff)/orders/[orderId]/page.tsx";
import { confirm } from "#app/shop/(staff)/orders/actions.ts";
import { keep } from "#app/shop/(staff)/retention/actions.ts";
import RetentionPage from "#app/shop/(staff)/retention/page.tsx";
import { houseDigest } from "#config";
import { currentCatalog } from "#shop/catalogue/current";
import { codeIn, onlineOrder } from "../../support/builders/online";
import { acceptedQuote } from "../../support/builders/sale";
import { openShop, shopNow, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { sentTo, shown } from "../../support/page-render";
import { called, freshBrowser, press, sitDown } from "../../support/page-requests";

const db = databaseForTests();
const phone = "303 555 0101";

describe("the pages about people", () => {
  let shop: TestShop;

  beforeEach(async () => {
    freshBrowser();
    vi.setSystemTime(shopNow);
    shop = await openShop(db());
    await stockWood(db());
  });

  it("tell a skier that the order is to be confirmed, take the code of the letter, and then say nothing of it", async () => {
    const { token, orderId } = await onlineOrder(shop, { email: "wren@mail.example" });
    const before = await shown(PairPage, { params: { token } });
    expect(before.text).toContain("To be confirmed");
    expect(before.text).toContain(
      "A letter with a code is on its way to w…@mail.example. It holds until 12 November 2026.",
    );
    const wrong = await press(confirmContact, { token, code: "AAAA-AAAA" });
    expect(wrong.state?.refusals).toEqual({
      code: "That is not the code of the letter. It can be typed wrongly 4 times more.",
    });
    expect((await press(confirmContact, { token, code: await codeIn(db(), orderId) })).state?.status).toBe("done");
    expect((await shown(PairPage, { params: { token } })).text).not.toContain("To be confirmed");
  });

  it("let the desk confirm an order, or call several off with one reason", async () => {
    const first = await onlineOrder(shop, { name: "Wren Sorrel", phone: "303 555 0111" });
    const second = await onlineOrder(shop, { name: "Nobody Real", phone: "303 555 0112" });
    await sitDown("desk1");
    const page = await shown(ConfirmationsPage);
    expect(Object.keys(page.form("Call off those ticked").fields.orderIds?.choices ?? {})).toEqual([
      second.orderId,
      first.orderId,
    ]);
    const order = await shown(OrderPage, { params: { orderId: first.orderId } });
    expect(order.form("Confirm the contact").sent).toEqual({ orderId: first.orderId, reason: "" });
    await press(confirm, { orderId: first.orderId, reason: "called back" });
    const orderIds = [first.orderId, second.orderId];
    expect((await press(release, { orderIds, reason: "" })).state?.status).toBe("refused");
    expect((await press(release, { orderIds, reason: "a flood" })).state?.status).toBe("done");
    expect((await shown(ConfirmationsPage)).text).toContain("Every order is confirmed.");
    expect(await db().order.findMany({ orderBy: { number: "asc" }, select: { state: true } })).toEqual([
      { state: "waiting" },
      { state: "cancelled" },
    ]);
  });

  it("show who shares a number and make them one; the owner alone gets the file and erases", async () => {
    await acceptedQuote(shop, { phone, name: "Robin Alder" });
    const theirs = await onlineOrder(shop, { phone, name: "R. Alder" });
    await sitDown("desk1");
    expect((await shown(CustomersPage, { query: { sharesNumber: "true" } })).text).toContain("a guest's word");
    const order = await shown(OrderPage, { params: { orderId: theirs.orderId } });
    expect(order.text).toContain("Same number, other name");
    const [from, into] = await db().customer.findMany({ orderBy: { name: "asc" } });
    const ids = { from: from?.id ?? "", into: into?.id ?? "" };
    const page = await shown(CustomerPage, { params: { customerId: ids.into } });
    expect(page.form("Make them one").sent).toEqual({ ...ids, reason: "" });
    expect(page.text).not.toContain("Erase");
    expect((await press(merge, { ...ids, reason: "same voice" })).to).toBe(`/shop/customers/${ids.into}`);
    const door = (id: string) =>
      personDoor(new Request("http://localhost/"), { params: Promise.resolve({ customerId: id }) });
    expect((await door(ids.into)).status).toBe(403);
    await sitDown("owner");
    const file = await door(ids.into);
    expect([file.status, file.headers.get("content-disposition")]).toEqual([
      200,
      'attachment; filename="person-2026-11-10.json"',
    ]);
    expect(((await file.json()) as { readonly customers: unknown[] }).customers).toHaveLength(2);
    const refused = await press(erase, { customerId: ids.into, reason: "asked" });
    expect(refused.state?.refusals[""]).toContain("are still open: O-301, O-302");
  });

  it("look at what rules would forget before they are set, for the owner alone", async () => {
    await sitDown("desk1");
    expect(await sentTo(RetentionPage)).toBe("not-found");
    await sitDown("owner");
    expect((await shown(RetentionPage)).text).toContain("Nothing is set: everything is kept.");
    const typed = { drafts: "30", askers: "", unconfirmed: "", letters: "", buyers: "", reason: "" };
    const asked = await press(keep, { ...typed, ask: "see" });
    expect(asked.to).toBe("/shop/retention?drafts=30&askers=&unconfirmed=&letters=&buyers=");
    const look = await shown(RetentionPage, {
      query: { drafts: "30", askers: "", unconfirmed: "", letters: "", buyers: "" },
    });
    expect(look.text).toContain("This is a look at the rules you typed");
    const wrong = await press(keep, { ...typed, drafts: "a month", reason: "policy" });
    expect(wrong.state).toMatchObject({
      status: "refused",
      values: { drafts: "a month" },
      refusals: { drafts: "Sheets without a quote: whole days from 1 to 99999, or nothing for ever" },
    });
    expect((await press(keep, { ...typed, reason: "policy" })).to).toBe("/shop/retention");
    expect((await shown(RetentionPage)).text).toContain("Set by Ola Owner");
  });

  it("ask a guest at the end of the budget to wait, in words, and open no sheet", async () => {
    const share = houseDigest("visitors", "address 192.0.2.7").slice(0, 32);
    const expire = BigInt(shopNow.getTime() + 20 * 60_000);
    await db().doorBudget.create({
      data: { key: `sheet:${share}`, points: currentCatalog().doors.sheet.each, expire },
    });
    const { to } = await called(startSheet);
    expect(to).toBe("/sheet?wait=20");
    expect((await shown(StartPage, { query: { wait: "20" } })).text).toContain("please try again in 20 minutes");
    expect((await shown(StartPage, { query: { wait: "<b>" } })).text).not.toContain("minutes");
    expect(await db().sheet.count()).toBe(0);
  });
});
