/** One day of the shop by its buttons alone, pressed as functions: what each writes, and the page it leads to. */
import { describe, expect, it } from "vitest";
import { putOnSheet } from "#app/shop/(staff)/call/[sheetId]/compare/actions.ts";
import * as call from "#app/shop/(staff)/call/actions.ts";
import * as clubs from "#app/shop/(staff)/clubs/actions.ts";
import * as measured from "#app/shop/(staff)/measured/actions.ts";
import * as notices from "#app/shop/(staff)/notices/actions.ts";
import * as promises from "#app/shop/(staff)/orders/[orderId]/promise-actions.ts";
import * as orders from "#app/shop/(staff)/orders/actions.ts";
import { measure } from "#app/shop/(staff)/pair/[code]/bench-actions.ts";
import * as pair from "#app/shop/(staff)/pair/actions.ts";
import * as breakdown from "#app/shop/(staff)/queue/breakdown/actions.ts";
import * as whatIf from "#app/shop/(staff)/queue/what-if/actions.ts";
import * as quotes from "#app/shop/(staff)/quotes/actions.ts";
import { leave, newPrivateLink } from "#app/shop/actions.ts";
import { transaction } from "#data/transaction";
import type { SheetId } from "#services";
import { draftNotice } from "#services/letters/draft-notice";
import { plainAnswers, releasedOrder } from "../../support/builders/sale";
import { openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { browser, called, freshBrowser, press, sitDown } from "../../support/page-requests";

const db = databaseForTests();

/** A page that showed neither a pair nor a price. */
const nothingSeen = { version: 1, spec: null, totalCents: null, dates: null } as const;

describe("the owner's word", () => {
  it("lets a stopped call be quoted, and the desk's does not", async () => {
    freshBrowser();
    await openShop(db());
    await sitDown("desk1");
    await press(call.openCall, { phone: "303 555 0131", name: "Robin Alder" });
    const sheetId = (await db().sheet.findFirstOrThrow({})).id as SheetId;
    const patch = { ...plainAnswers, "choices.destination": "collect", "choices.flexRatio": 1.5 };
    expect(await call.saveCall(sheetId, patch, 1)).toMatchObject({ ok: true });
    expect((await call.assessCall(sheetId)).liftable).toEqual(["flex-out-of-range"]);
    const word = { sheetId, reason: "rode one last year" };
    expect((await press(call.quoteAllTheSame, word)).state?.status).toBe("refused");
    expect(await called(() => call.quoteCall(sheetId, nothingSeen))).toMatchObject({ value: { ok: false } });

    await sitDown("owner");
    expect((await press(call.quoteAllTheSame, { ...word, reason: "" })).state?.refusals.reason).toBeTruthy();
    expect((await press(call.quoteAllTheSame, word)).state?.status).toBe("done");
    expect((await call.assessCall(sheetId)).liftable).toEqual([]);
    const quoted = await called(() => call.quoteCall(sheetId, nothingSeen));
    expect(quoted.to ?? quoted.value).toBe(`/shop/quotes/${(await db().quote.findFirstOrThrow({})).id}`);
  });
});

describe("the desk's buttons", () => {
  it("lead from a call to an order that is paid, locked, changed, cancelled", async () => {
    freshBrowser();
    await openShop(db());
    await sitDown("desk1");

    const opened = await press(call.openCall, { phone: "303 555 0101", name: "Robin Alder" });
    const sheetId = (await db().sheet.findFirstOrThrow({})).id as SheetId;
    expect(opened.to).toBe(`/shop/call/${sheetId}`);
    expect(browser.cookies.get("told-link")?.value).toMatch(new RegExp(`^sheet\\.${sheetId}\\.[\\w-]{43}$`));
    // Told once, out of reach of scripts, in the shop alone, for a quarter of an hour.
    const told = browser.cookies.get("told-link");
    expect(told?.options).toMatchObject({ httpOnly: true, sameSite: "lax", path: "/", maxAge: 900 });
    const patch = { ...plainAnswers, "choices.destination": "collect" };
    expect(await call.saveCall(sheetId, { "answers.massKg": 1500 }, 1)).toEqual({
      ok: false,
      message: "Mass 1500 kg is above 300 kg",
      path: "answers.massKg",
    });
    expect(await call.saveCall(sheetId, patch, 1)).toMatchObject({ ok: true, conflicts: [] });
    const { reply } = await call.assessCall(sheetId);
    expect(reply.ok && reply.totalCents !== null).toBe(true);

    // Ten in the morning in Denver is 17:00 UTC in November.
    const back = { sheetId, at: "2026-11-12T10:00", reason: "after work", phone: "303 555 0199" };
    expect((await press(call.callBackLater, back)).state?.status).toBe("done");
    expect((await call.reloadCall(sheetId))?.callBack).toEqual({
      at: "2026-11-12T17:00:00.000Z",
      reason: "after work",
      phone: "303 555 0199",
    });
    const { version } = await db().sheet.findFirstOrThrow({});
    const taken = await press(putOnSheet, { sheetId, candidate: "midlow-95", other: "", version: String(version) });
    expect(taken.to).toBe(`/shop/call/${sheetId}`);
    expect((await call.reloadCall(sheetId))?.choices.model).toBe("midlow-95");

    const quoted = await called(() => call.quoteCall(sheetId, nothingSeen));
    const quoteId = (await db().quote.findFirstOrThrow({})).id;
    expect(quoted.to ?? quoted.value).toBe(`/shop/quotes/${quoteId}`);
    const untold = await press(quotes.makeOrder, { quoteId, name: "Robin Alder", how: "phone" });
    expect(untold.state?.refusals).toEqual({ told: "Terms and price: please tick" });
    const made = await press(quotes.makeOrder, { quoteId, name: "Robin Alder", how: "phone", told: "on" });
    const order = await db().order.findFirstOrThrow({ include: { pairs: true } });
    const orderId = order.id;
    const pairId = order.pairs[0]?.id ?? "";
    expect(made.to).toBe(`/shop/orders/${orderId}`);
    const late = await press(quotes.makeOrder, { quoteId, name: "Robin Alder", how: "phone", told: "on" });
    expect(late.to).toBe(`/shop/quotes/${quoteId}?late=yes`);

    const read = () => db().order.findFirstOrThrow({ include: { pairs: true } });
    const unread = await press(orders.deposit, { orderId, method: "bank-transfer", reference: "" });
    expect(Object.keys(unread.state?.refusals ?? {})).toEqual(["reference"]);
    expect((await read()).depositPaidAt).toBeNull();
    expect((await press(orders.deposit, { orderId, method: "bank-transfer", reference: "st 7" })).state?.status).toBe(
      "done",
    );
    expect((await read()).depositPaidAt).not.toBeNull();
    expect((await press(orders.lock, { orderId, pairId })).state?.status).toBe("done");
    expect((await read()).state).toBe("released");
    expect((await press(orders.lock, { orderId, pairId })).state?.status).toBe("refused");
    expect(browser.stale.filter((page) => page === `/shop/orders/${orderId}`).length).toBeGreaterThan(1);

    const before = (await read()).pairs[0];
    const change = { orderId, pairId, lengthCm: "186", flexRatio: "1,05", core: "aspen-ash", reason: "asked again" };
    const changed = await press(orders.changePair, { ...change, revision: String(before?.revision) });
    expect(changed.to).toBe(`/shop/orders/${orderId}`);
    expect((await read()).pairs[0]?.spec).toMatchObject({ lengthCm: 186, flexRatio: 1.05 });
    const twice = await press(orders.changePair, { ...change, lengthCm: "178", revision: String(before?.revision) });
    expect(twice.state?.status).toBe("refused");

    const unpaid = await press(orders.ship, { orderId, tracking: "", unpaidReason: "" });
    expect(unpaid.state?.status).toBe("refused");
    expect((await press(orders.cancel, { orderId, reason: "moved abroad" })).state?.status).toBe("done");
    expect(await read()).toMatchObject({ state: "cancelled", cancelReason: "moved abroad" });
    const dead = await press(orders.deposit, { orderId, method: "counter", reference: "r 9" });
    expect(dead.state?.status).toBe("refused");

    expect((await press(newPrivateLink, { kind: "order", id: orderId })).state?.status).toBe("done");
    expect(browser.cookies.get("told-link")?.value).toMatch(new RegExp(`^order\\.${orderId}\\.[\\w-]{43}$`));
    expect((await called(leave)).to).toBe("/shop/sign-in?left=yes");
    expect(browser.cookies.has("pairwright-session")).toBe(false);
  });
});

describe("the floor's, the owner's and the office's other buttons", () => {
  it("start, finish, undo and measure; move a promise; report and ask; write letters; begin a club", async () => {
    freshBrowser();
    const shop = await openShop(db());
    const { orderId, pairs } = await releasedOrder(shop);
    const pairId = pairs[0]?.pairId ?? "";
    await sitDown("maker");
    const operation = () =>
      db().operation.findFirstOrThrow({ where: { pairId, state: { not: "blocked" } }, orderBy: { id: "asc" } });
    const first = await operation();
    const tick = { serial: "TY-0001", operationId: first.id };
    const at = () => db().operation.findUniqueOrThrow({ where: { id: first.id } });
    expect((await press(pair.start, { ...tick, version: String(first.version) })).state?.status).toBe("done");
    expect(await at()).toMatchObject({ state: "running", startedByName: "Mo Maker" });
    const second = await press(pair.start, { ...tick, version: String(first.version) });
    expect(second.state?.status).toBe("refused");
    expect((await press(pair.finish, { ...tick, version: String((await at()).version) })).state?.status).toBe("done");
    expect((await at()).state).toBe("done");
    const back = { ...tick, version: String((await at()).version), reason: "wrong pair" };
    expect((await press(pair.undo, { ...back, reason: " " })).state?.status).toBe("refused");
    expect((await press(pair.undo, back)).state?.status).toBe("done");
    expect((await at()).state).toBe("running");
    expect(new Set(browser.stale)).toEqual(new Set(["/shop/pair/TY-0001"]));

    // Gram and N/cm are typed, kg and N/mm kept; what is wrong stands beside its own field.
    const readings = { camberMm: "", springCentreNPerMm: "38,1", springForebodyNPerMm: "", springAfterbodyNPerMm: "" };
    const bench = { serial: "TY-0001", pairId, side: "L", version: "0", ...readings };
    const heavy = await press(measure, { ...bench, massKg: "17860" });
    expect(heavy.state?.refusals).toEqual({ massKg: "Mass 17860 g is above 4000 g" });

    await sitDown("owner");
    const { version } = await db().order.findUniqueOrThrow({ where: { id: orderId } });
    const promise = { orderId, version: String(version), on: "2027-01-20", reason: "asked for a later day" };
    expect((await press(promises.movePromise, promise)).state?.status).toBe("done");
    expect((await db().order.findUniqueOrThrow({ where: { id: orderId } })).promisedOn).toBe("2027-01-20");
    expect((await press(promises.movePromise, promise)).state?.status).toBe("refused");

    // 07:30 on Monday the 16th in Denver is 14:30 UTC.
    const down = { reportId: "r-1", note: "plate burnt", kind: "press-down", press: "press-1" };
    const reported = await press(breakdown.report, { ...down, from: "2026-11-16T07:30", until: "2026-11-18T16:30" });
    const incident = await db().incident.findFirstOrThrow({});
    expect(reported.to).toBe(`/shop/queue/breakdown/${incident.id}`);
    expect(incident.input).toMatchObject({ from: "2026-11-16T14:30:00.000Z", until: "2026-11-18T23:30:00.000Z" });
    const closing = { incidentId: incident.id, version: String(incident.version) };
    expect((await press(breakdown.close, closing)).state?.status).toBe("done");
    expect((await db().incident.findFirstOrThrow({})).state).toBe("closed");

    const hire = { changeId: "w-1", reason: "the season", kind: "hire", stations: "10, 11", from: "2026-12-01" };
    expect((await press(whatIf.apply, hire)).state?.status).toBe("done");
    const floorChange = await db().floorChange.findFirstOrThrow({ where: { source: { not: "incident" } } });
    const withdrawal = { floorChangeId: floorChange.id, reason: "season over" };
    expect((await press(whatIf.withdraw, withdrawal)).state?.status).toBe("done");
    expect((await db().floorChange.findUniqueOrThrow({ where: { id: floorChange.id } })).withdrawnAt).not.toBeNull();

    const few = await press(measured.approve, { fingerprint: "old" });
    expect(few.state?.status).toBe("refused");

    await transaction(db(), (tx) =>
      draftNotice(shop.as(shop.desk), tx, { orderId, incidentId: null, kind: "delay", body: "Dear Robin", data: {} }),
    );
    await sitDown("desk1");
    const letter = await db().notice.findFirstOrThrow({});
    const send = { noticeId: letter.id, version: String(letter.version), body: "Dear Robin, it takes longer." };
    expect(Object.keys((await press(notices.send, { ...send, body: "" })).state?.refusals ?? {})).toEqual(["body"]);
    expect((await press(notices.send, send)).state?.status).toBe("done");
    expect(await db().notice.findFirstOrThrow({})).toMatchObject({
      state: "sent",
      // What is said to a customer is kept sealed.
      body: expect.stringMatching(/^sealed-1:/),
    });

    const club = {
      name: "Moor club",
      "customer.name": "Ada Moor",
      "customer.phone": "303 555 0177",
      email: "ada@moor.example",
      "palette.base.left": "black",
      "palette.base.right": "lake",
      "palette.house": "plain",
      "palette.destination": "collect",
      wantedOn: "2027-02-01",
    };
    const begun = await press(clubs.begin, club);
    const stored = await db().club.findFirstOrThrow({});
    expect(begun.to).toBe(`/shop/clubs/${stored.id}`);
    expect(stored).toMatchObject({ name: "Moor club", wantedOn: "2027-02-01" });
    expect(stored.palette).toMatchObject({
      base: { left: "black", right: "lake" },
      house: "plain",
      destination: "collect",
    });
    const joined = await press(clubs.addSkier, { clubId: stored.id, skierName: "Ben" });
    expect(joined.to).toMatch(/^\/shop\/call\/.+/);
    const asked = await press(clubs.order, {
      clubId: stored.id,
      quoteIds: "q-1",
      priced: "",
      how: "phone",
      name: "Ada",
      ask: "on",
    });
    expect(asked.to).toBe(`/shop/clubs/${stored.id}?pairs=q-1`);
  });
});
