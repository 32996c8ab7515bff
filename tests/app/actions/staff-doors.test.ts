/**
 * Every button of the shop's pages: who is not signed in is sent to the sign-in, who may not is told so, and what was typed
 * wrong is named at its field while everything typed stays. Nothing is written by any of it.
 */
import { describe, expect, it } from "vitest";
import { putOnSheet } from "#app/shop/(staff)/call/[sheetId]/compare/actions.ts";
import * as call from "#app/shop/(staff)/call/actions.ts";
import * as cautions from "#app/shop/(staff)/cautions/actions.ts";
import * as clubs from "#app/shop/(staff)/clubs/actions.ts";
import * as floorTimes from "#app/shop/(staff)/floor-times/actions.ts";
import * as measured from "#app/shop/(staff)/measured/actions.ts";
import * as notices from "#app/shop/(staff)/notices/actions.ts";
import * as promises from "#app/shop/(staff)/orders/[orderId]/promise-actions.ts";
import * as orders from "#app/shop/(staff)/orders/actions.ts";
import { measure } from "#app/shop/(staff)/pair/[code]/bench-actions.ts";
import { startAgain } from "#app/shop/(staff)/pair/[code]/rework-actions.ts";
import * as pair from "#app/shop/(staff)/pair/actions.ts";
import * as people from "#app/shop/(staff)/people/actions.ts";
import * as breakdown from "#app/shop/(staff)/queue/breakdown/actions.ts";
import * as order from "#app/shop/(staff)/queue/order/actions.ts";
import * as whatIf from "#app/shop/(staff)/queue/what-if/actions.ts";
import * as quotes from "#app/shop/(staff)/quotes/actions.ts";
import { decide as decideStrips } from "#app/shop/(staff)/strips/actions.ts";
import { newPrivateLink, renewPrivateLinks } from "#app/shop/actions.ts";
import { enter } from "#app/shop/sign-in/actions.ts";
import { openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { browser, type Fields, type FormButton, freshBrowser, press, sitDown } from "../../support/page-requests";

const db = databaseForTests();

interface Door {
  readonly name: string;
  readonly action: FormButton;
  readonly good: Fields;
  /** What is typed wrong, and where it is named. Null: nothing but hidden fields. */
  readonly wrong: readonly [field: string, text: string] | null;
  /** Who is signed in and may not; null: everybody of the staff may. */
  readonly denied: "desk1" | "maker" | null;
}

const door = (name: string, action: FormButton, good: Fields, wrong: Door["wrong"], denied: Door["denied"]): Door => ({
  name,
  action,
  good,
  wrong,
  denied,
});

const long = (length: number) => "x".repeat(length);
const sheetId = "s-1";
const orderId = "o-1";
const pairId = "p-1";
const quoteId = "q-1";
const tick = { serial: "TY-0001", operationId: "op-1", version: "1" };
const readings = {
  massKg: "1786",
  camberMm: "",
  springCentreNPerMm: "",
  springForebodyNPerMm: "",
  springAfterbodyNPerMm: "",
};
const bookReadings = Object.fromEntries(
  ["left-", "right-"].flatMap((side) => Object.entries(readings).map(([name, text]) => [side + name, text])),
);
const id36 = "0190a000-0000-7000-8000-000000000001";

const doors: readonly Door[] = [
  door("a yes to the cautions", cautions.sayYes, { textsHash: "x" }, ["textsHash", long(65)], null),
  door("open a call", call.openCall, { phone: "303 555 0101", name: "" }, ["phone", "call me"], "maker"),
  door("take a draft over", call.takeOver, { sheetId }, ["sheetId", long(61)], "maker"),
  door("put a draft down", call.putDown, { sheetId }, ["sheetId", long(61)], "maker"),
  door("copy a sheet", call.changedCopy, { sheetId }, ["sheetId", long(61)], "maker"),
  door(
    "call back",
    call.callBackLater,
    { sheetId, at: "2026-11-12T10:00", reason: "after work", phone: "303 555 0101" },
    ["at", "tomorrow"],
    "maker",
  ),
  door("before the owner", call.beforeOwner, { sheetId, note: "very tall" }, ["note", ""], "maker"),
  door("turn down", call.turnCallerDown, { sheetId, reason: "monoski" }, ["reason", "no"], "maker"),
  door("a flag", call.answerForFlag, { sheetId, code: "mixed-units", reason: "read back" }, ["reason", "ok"], "maker"),
  door(
    "a compared pair",
    putOnSheet,
    { sheetId, candidate: "midlow-84", other: "", version: "1" },
    ["version", "one"],
    "maker",
  ),
  door(
    "begin a club",
    clubs.begin,
    {
      name: "Moor club",
      "customer.name": "Ada",
      "customer.phone": "303 555 0101",
      email: "",
      "palette.base.left": "black",
      "palette.base.right": "black",
      "palette.house": "plain",
      "palette.destination": "home",
      wantedOn: "",
    },
    ["email", "ada"],
    "maker",
  ),
  door("a club's skier", clubs.addSkier, { clubId: "c-1", skierName: "Ben" }, ["skierName", long(401)], "maker"),
  door(
    "order a club's pairs",
    clubs.order,
    { clubId: "c-1", quoteIds: ["q-1", "q-2"], priced: "q-1,q-2", how: "phone", name: "Ada" },
    ["how", "letter"],
    "maker",
  ),
  door(
    "decide a reading",
    measured.decide,
    { serial: "OB-1-L", measure: "massKg", value: "1.8", choice: "keep", reason: "weighed again" },
    ["measure", "colour"],
    "desk1",
  ),
  door("approve corrections", measured.approve, { fingerprint: "f" }, ["fingerprint", long(81)], "desk1"),
  door(
    "approve a floor's book",
    floorTimes.approve,
    { fingerprint: "f", reason: "r" },
    ["fingerprint", long(81)],
    "desk1",
  ),
  door(
    "a pair of the book",
    measured.addPair,
    {
      serial: "OB-1",
      model: "midlow-95",
      core: "aspen-ash",
      reinforcement: "",
      lengthCm: "178",
      flexRatio: "1",
      ...bookReadings,
    },
    ["lengthCm", "long"],
    "desk1",
  ),
  door("send a letter", notices.send, { noticeId: "n-1", version: "1", body: "Dear" }, ["version", "x"], "maker"),
  door(
    "drop a letter",
    notices.drop,
    { noticeId: "n-1", version: "1", reason: "told" },
    ["reason", long(2001)],
    "maker",
  ),
  door("deposit", orders.deposit, { orderId, method: "counter", reference: "r 1" }, ["method", "gold"], "maker"),
  door(
    "receipt",
    orders.receipt,
    { orderId, what: "balance", method: "counter", reference: "r 1" },
    ["method", "pay-later"],
    "maker",
  ),
  door("waive", orders.waive, { orderId, reason: "our fault" }, ["reason", "x"], "desk1"),
  door("lock", orders.lock, { orderId, pairId }, ["pairId", long(61)], "maker"),
  door("send a proof", orders.sendProof, { orderId, pairId, note: "" }, ["note", long(2001)], "maker"),
  door("proof approved", orders.proofApproved, { orderId, pairId, revision: "1", name: "Ada" }, ["name", ""], "maker"),
  door("proof changes", orders.proofChanges, { orderId, pairId, revision: "1", note: "bluer" }, ["note", ""], "maker"),
  door("rights", orders.rights, { orderId, pairId, basis: "own", name: "Ada" }, ["basis", "found"], "maker"),
  door("cancel", orders.cancel, { orderId, reason: "moved abroad" }, ["reason", "no"], "maker"),
  door("ship", orders.ship, { orderId, tracking: "T 1", unpaidReason: "" }, ["tracking", long(121)], "maker"),
  door("deliver", orders.deliver, { orderId }, ["orderId", long(61)], "maker"),
  door(
    "change a pair",
    orders.changePair,
    { orderId, pairId, lengthCm: "178", flexRatio: "1,05", core: "aspen-ash", revision: "1", reason: "asked" },
    ["flexRatio", "stiff"],
    "maker",
  ),
  door(
    "move a promise",
    promises.movePromise,
    { orderId, version: "1", on: "2026-12-20", reason: "asked" },
    ["on", "20 December"],
    "maker",
  ),
  door(
    "a hard date",
    promises.fixHardDate,
    { orderId, version: "1", revision: "1", on: "2026-12-20", planB: "overtime" },
    ["on", "soon"],
    "desk1",
  ),
  door(
    "a press slot",
    promises.takePressSlot,
    { orderId, pairId, version: "1", reason: "another first" },
    ["reason", long(501)],
    "desk1",
  ),
  door(
    "the bench",
    measure,
    { serial: "TY-0001", pairId, side: "L", version: "1", ...readings },
    ["massKg", "heavy"],
    "desk1",
  ),
  door(
    "one ski again",
    startAgain,
    {
      serial: "TY-0001",
      pairId,
      version: "1",
      side: "L",
      fault: "core-wrong",
      fromStation: "2",
      location: "rack 4",
      note: "void",
    },
    ["location", "  "],
    "desk1",
  ),
  door("start", pair.start, tick, ["version", "x"], "desk1"),
  door("finish", pair.finish, tick, ["version", "x"], "desk1"),
  door("undo", pair.undo, { ...tick, reason: "slip" }, ["reason", long(501)], "desk1"),
  door(
    "report a breakdown",
    breakdown.report,
    {
      reportId: "r-1",
      note: "",
      kind: "press-down",
      press: "press-1",
      from: "2026-11-16T07:30",
      until: "2026-11-18T16:30",
    },
    ["from", "Monday"],
    null,
  ),
  door(
    "choose a way on",
    breakdown.choose,
    { incidentId: "i-1", version: "1", option: "wait", reason: "parts come" },
    ["reason", long(2001)],
    "desk1",
  ),
  door("close an incident", breakdown.close, { incidentId: "i-1", version: "1" }, ["version", "x"], null),
  door(
    "move a pair",
    order.move,
    { pairId, before: "", revision: "1", reason: "asked" },
    ["reason", long(501)],
    "maker",
  ),
  door(
    "give an order",
    order.reorder,
    { places: `${id36}:29700000`, revision: "1", reason: "suggested" },
    ["places", "first, second"],
    "desk1",
  ),
  door("take a move back", order.undo, { decisionId: "d-1" }, ["decisionId", long(61)], "maker"),
  door(
    "apply a what-if",
    whatIf.apply,
    { changeId: "w-1", reason: "season", kind: "hire", stations: "10, 11", from: "2026-12-01" },
    ["stations", "press"],
    "desk1",
  ),
  door("withdraw a change", whatIf.withdraw, { floorChangeId: "w-1", reason: "over" }, ["reason", long(2001)], "desk1"),
  door(
    "make an order",
    quotes.makeOrder,
    { quoteId, name: "Ada", how: "phone", told: "on" },
    ["how", "letter"],
    "maker",
  ),
  door("price anew", quotes.priceAnew, { quoteId }, ["quoteId", long(61)], "maker"),
  door("honour", quotes.honour, { quoteId, reason: "told in time" }, ["reason", "x"], "maker"),
  door("withdraw a quote", quotes.withdraw, { quoteId, reason: "asked" }, ["reason", "x"], "maker"),
  door(
    "short strips",
    decideStrips,
    { pairId, version: "1", option: "wait", reason: "wood comes" },
    ["option", ""],
    "desk1",
  ),
  door(
    "take somebody on",
    people.takeSomebodyOn,
    { name: "Ada", email: "ada@moor.example", role: "owner", password: "larch and ash 42" },
    ["email", "ada"],
    "desk1",
  ),
  door("set a password", people.setPassword, { staffId: "s-1", password: "larch and ash 42" }, null, "desk1"),
  door("set a short code", people.setCode, { staffId: "s-1", passcode: "480917" }, null, "maker"),
  door("take a short code", people.takeCode, { staffId: "s-1" }, ["staffId", long(61)], "maker"),
  door("let somebody go", people.letSomebodyGo, { staffId: "s-1", sure: "on" }, ["sure", "no"], "desk1"),
  door("end a sign-in", people.endOne, { sessionId: "s-1" }, ["sessionId", long(61)], "desk1"),
  door("end all sign-ins", people.endAll, { staffId: "s-1" }, ["staffId", long(61)], "maker"),
  door("enrol a device", people.enrolThisDevice, { name: "Tablet" }, ["name", ""], "desk1"),
  door("give a device back", people.giveDeviceBack, { deviceId: "d-1" }, ["deviceId", long(61)], "maker"),
  door("open a screen", people.openScreen, { name: "By the press" }, ["name", ""], "desk1"),
  door("end a screen", people.endScreen, { wallId: "w-1" }, ["wallId", long(61)], "maker"),
  door("renew links", renewPrivateLinks, { kind: "order", id: orderId }, ["kind", "pair"], "maker"),
  door("a new link", newPrivateLink, { kind: "order", id: orderId }, ["kind", "pair"], "maker"),
];

const notAllowed = "You may not do this. Sign in with an account that may, or ask the owner.";

/** Rows of everything that these buttons could write. */
async function written() {
  const client = db();
  return Promise.all([
    client.sheet.count(),
    client.order.count(),
    client.quote.count(),
    client.incident.count(),
    client.floorChange.count(),
    client.benchRecord.count(),
    client.correctionBook.count(),
    client.floorBook.count(),
    // Who sits down in these tests signs in, which is in the record.
    client.event.count({ where: { kind: { notIn: ["signed-in", "sign-ins-ended"] } } }),
    client.staff.count({ where: { closedAt: null, floorCodeHash: null } }),
    client.privateLink.count(),
    client.device.count({ where: { enrolledAt: { not: null } } }),
    client.outboxMessage.count(),
  ]);
}

describe("the buttons of the shop", () => {
  it("are closed to strangers and to the wrong people, and name what was typed wrong", async () => {
    freshBrowser();
    await openShop(db());
    const before = await written();

    for (const { name, action, good } of doors) {
      const stranger = await press(action, good);
      expect
        .soft([name, stranger.to])
        .toEqual([name, expect.stringMatching(/^\/shop\/sign-in(\?back=%2Fshop%2F.+)?$/)]);
    }

    await sitDown("owner");
    for (const { name, action, good, wrong } of doors) {
      if (wrong === null) continue;
      const [field, text] = wrong;
      const { state } = await press(action, { ...good, [field]: text });
      expect.soft([name, state?.status, Object.keys(state?.refusals ?? {})]).toEqual([name, "refused", [field]]);
      expect([name, state?.refusals[field]]).not.toEqual([name, ""]);
      const typed = Object.entries({ ...good, [field]: text })
        .filter(([key]) => key !== "password")
        .map(([key, sent]) => [key, [sent].flat().join(",")]);
      expect([name, state?.values]).toEqual([name, Object.fromEntries(typed)]);
    }

    for (const who of ["desk1", "maker"] as const) {
      await sitDown(who);
      for (const { name, action, good, denied } of doors) {
        if (denied !== who) continue;
        const { state } = await press(action, good);
        expect
          .soft([name, state?.status, Object.values(state?.refusals ?? {})])
          .toEqual([name, "refused", [notAllowed]]);
        expect([name, state?.values]).toMatchObject([
          name,
          { ...Object.fromEntries(Object.entries(good).slice(0, 1)) },
        ]);
      }
    }
    expect(await written()).toEqual(before);
    expect(browser.stale).toEqual([]);
  });

  it("let in who has the password, back to where they came from inside the shop, and keep no password", async () => {
    freshBrowser();
    await openShop(db());
    const person = { email: "Desk1@thistle-yard.example", password: "larch-board-seven" };
    const wrong = await press(enter, { ...person, password: "birch-board-seven", back: "/shop/queue" });
    expect(wrong.state?.status).toBe("refused");
    expect(Object.keys(wrong.state?.refusals ?? {})).toEqual(["password"]);
    expect(wrong.state?.values).toEqual({ email: person.email, back: "/shop/queue" });
    const missing = await press(enter, { email: "desk1", password: "" });
    expect(Object.keys(missing.state?.refusals ?? {}).sort()).toEqual(["email", "password"]);
    expect(browser.cookies.size).toBe(0);

    expect((await press(enter, { ...person, back: "/shop/queue" })).to).toBe("/shop/queue");
    expect(browser.cookies.get("pairwright-session")?.options).toMatchObject({
      httpOnly: true,
      sameSite: "lax",
      path: "/",
    });
    expect((await press(enter, { ...person, back: "https://elsewhere.example" })).to).toBe("/shop");
  });
});
