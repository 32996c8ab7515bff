/** The skier's buttons, pressed as functions: what they write, what they say of a wrong field, and whose link opens what. */
import { describe, expect, it } from "vitest";
import { accept as acceptClubOffer } from "#app/(skier)/club/actions.ts";
import * as pair from "#app/(skier)/pair/actions.ts";
import * as quote from "#app/(skier)/quote/actions.ts";
import { takeOntoSheet } from "#app/(skier)/sheet/[token]/compare/actions.ts";
import * as sheet from "#app/(skier)/sheet/actions.ts";
import { acceptedQuote, plainAnswers, quotedSheet } from "../../support/builders/sale";
import { openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { browser, called, freshBrowser, press } from "../../support/page-requests";

const db = databaseForTests();
const nobody = "x".repeat(43);

/** A page that showed neither a pair nor a price. */
const nothingSeen = { version: 1, spec: null, totalCents: null, dates: null } as const;

describe("the sheet's actions", () => {
  it("open, save, refuse by field, compare, assess and quote", async () => {
    freshBrowser();
    const { to } = await called(sheet.startSheet);
    const token = /^\/sheet\/([\w-]{43})$/.exec(to ?? "")?.[1] ?? "";
    expect([...browser.cookies.values()].map(({ value }) => value)).toEqual([token]);
    const stored = () => db().sheet.findFirstOrThrow({});

    const wrong = { "answers.offPistePercent": 140 };
    expect(await sheet.saveFields(token, wrong, 1)).toEqual({
      ok: false,
      message: "Share off the piste 140 % is above 100 %",
      path: "answers.offPistePercent",
    });
    expect((await stored()).version).toBe(1);
    expect(await sheet.makeQuote(token, nothingSeen)).toMatchObject({ ok: false });

    const patch = { ...plainAnswers, "contact.name": "Robin Alder", "contact.email": "robin@alder.example" };
    const saved = await sheet.saveFields(token, { ...patch, "choices.destination": "collect" }, 1);
    expect(saved).toMatchObject({ ok: true, conflicts: [], sheet: { answers: { heightCm: 182, massKg: 82 } } });
    expect((await sheet.reloadSheet(token))?.contact.email).toBe("robin@alder.example");

    // A compared pair: an unknown one is refused, one that the shop builds is taken and its page opened.
    const { version } = await stored();
    const take = { token, other: "", version: String(version) };
    const unknown = await press(takeOntoSheet, { ...take, candidate: "no-such-ski" });
    expect(unknown.state?.status).toBe("refused");
    const old = await press(takeOntoSheet, { ...take, candidate: "midlow-95", version: "-1" });
    expect(Object.keys(old.state?.refusals ?? {})).toEqual(["version"]);
    expect((await press(takeOntoSheet, { ...take, candidate: "midlow-95" })).to).toBe(`/sheet/${token}`);
    expect((await sheet.reloadSheet(token))?.choices.model).toBe("midlow-95");

    expect(await sheet.askPerson(token, " ")).toEqual({ ok: false, message: "Note is missing" });
    expect(await sheet.askPerson(token, "please call")).toMatchObject({ ok: true });
    expect((await sheet.reloadSheet(token))?.review?.note).toBe("please call");
    expect(await sheet.statePictureRights(token, "a-1", "found", "Robin")).toMatchObject({ ok: false });

    const told = await sheet.assessSheetNow(token);
    expect(told.ok && told.totalCents !== null && told.dateRange !== null).toBe(true);
    const made = await called(() => sheet.makeQuote(token, nothingSeen));
    expect(made.to ?? made.value).toMatch(/^\/quote\/[\w-]{43}$/);
    expect(await db().quote.count()).toBe(1);

    expect(await called(() => sheet.saveFields(nobody, {}, 1))).toEqual({ value: null, to: "not-found" });
  });
});

describe("the quote's actions", () => {
  it("accept with both ticks alone, ask for a change, re-price, and lead to the order", async () => {
    freshBrowser();
    const shop = await openShop(db());
    const made = await quotedSheet(shop);
    const { token } = made;
    const ticks = { acceptsTerms: "on", sawWithdrawalNotice: "on" };

    const empty = await press(quote.accept, { token, name: " " });
    expect(Object.keys(empty.state?.refusals ?? {}).sort()).toEqual(["acceptsTerms", "name", "sawWithdrawalNotice"]);
    const half = await press(quote.accept, { token, name: "Robin Alder", acceptsTerms: "on" });
    expect(half.state).toMatchObject({
      status: "refused",
      refusals: { sawWithdrawalNotice: "Withdrawal notice: please tick" },
      values: { name: "Robin Alder" },
    });
    for (const wrong of [nobody, "short"]) {
      expect((await press(quote.accept, { token: wrong, name: "Robin", ...ticks })).to).toBe("not-found");
    }
    expect(await db().order.count()).toBe(0);

    expect(Object.keys((await press(quote.askChange, { token, note: "" })).state?.refusals ?? {})).toEqual(["note"]);
    expect((await press(quote.askChange, { token, note: "in blue" })).state?.status).toBe("done");
    expect(browser.stale).toEqual([`/quote/${token}`]);

    const accepted = await press(quote.accept, { token, name: "Robin Alder", ...ticks });
    expect(accepted.to).toMatch(/^\/pair\/[\w-]{43}$/);
    expect(await db().order.findFirstOrThrow({})).toMatchObject({
      acceptedByName: "Robin Alder",
      acceptedHow: "online",
    });
    expect((await press(quote.accept, { token, name: "Robin Alder", ...ticks })).state?.status).toBe("refused");
    expect(await db().order.count()).toBe(1);
    expect((await press(quote.toOrder, { token })).to).toMatch(/^\/pair\/[\w-]{43}$/);
    expect((await press(quote.reprice, { token })).state?.status).toBe("refused");
  });
});

describe("the pair's actions", () => {
  it("only announce a transfer, and open with the order's link alone", async () => {
    freshBrowser();
    const shop = await openShop(db());
    const { token, orderId, pairs } = await acceptedQuote(shop);
    const pairId = pairs[0]?.pairId ?? "";
    const deposit = () => db().payment.findFirstOrThrow({ where: { orderId, kind: "deposit" } });

    const gold = await press(pair.chooseDeposit, { token, method: "gold" });
    expect(gold.state).toMatchObject({ status: "refused", values: { token, method: "gold" } });
    expect(Object.keys(gold.state?.refusals ?? {})).toEqual(["method"]);
    expect((await press(pair.chooseDeposit, { token: nobody, method: "bank-transfer" })).to).toBe("not-found");
    expect((await deposit()).method).toBeNull();

    expect((await press(pair.chooseDeposit, { token, method: "bank-transfer" })).state?.status).toBe("done");
    expect(await deposit()).toMatchObject({ method: "bank-transfer", state: "requested", receivedAt: null });
    expect(browser.stale).toEqual([`/pair/${token}`]);

    const approval = { token, pairId, revision: "1", name: "Robin Alder" };
    expect(Object.keys((await press(pair.approve, { ...approval, revision: "x" })).state?.refusals ?? {})).toEqual([
      "revision",
    ]);
    // A house graphic needs neither proof nor rights.
    expect((await press(pair.approve, approval)).state?.status).toBe("refused");
    const changes = await press(pair.askForChanges, { token, pairId, revision: "1", note: "" });
    expect(Object.keys(changes.state?.refusals ?? {})).toEqual(["note"]);
    const rights = await press(pair.confirmPictureRights, { token, pairId, basis: "found", name: "Robin" });
    expect(Object.keys(rights.state?.refusals ?? {})).toEqual(["basis"]);
    const needless = await press(pair.confirmPictureRights, { token, pairId, basis: "own", name: "Robin" });
    expect(needless.state?.status).toBe("refused");

    // Another order's pair stays shut to this link.
    const other = await acceptedQuote(shop, { phone: "303 555 0102", name: "Kim Birch" });
    const stranger = await press(pair.approve, { ...approval, pairId: other.pairs[0]?.pairId ?? "" });
    expect(Object.values(stranger.state?.refusals ?? {})).toEqual([
      "You may not do this. Sign in with an account that may, or ask the owner.",
    ]);

    // A link of an order is no link of a club.
    const club = {
      token,
      name: "Robin",
      quoteIds: ["q-1"],
      priced: "q-1",
      acceptsTerms: "on",
      sawWithdrawalNotice: "on",
    };
    expect((await press(acceptClubOffer, club)).to).toBe("not-found");
    const unticked = await press(acceptClubOffer, { ...club, acceptsTerms: "off" });
    expect(Object.keys(unticked.state?.refusals ?? {})).toEqual(["acceptsTerms"]);
    const asked = await press(acceptClubOffer, { ...club, ask: "price", quoteIds: ["q-1", "q-2"] });
    expect(asked.to).toBe(`/club/${token}?pairs=q-1%2Cq-2`);
    const kept = browser.cookies.get("club-typed");
    expect(JSON.parse(kept?.value ?? "{}")).toEqual({ name: "Robin", acceptsTerms: "on", sawWithdrawalNotice: "on" });
    // Of this page alone, out of reach of scripts, for a quarter of an hour.
    expect(kept?.options).toMatchObject({ httpOnly: true, sameSite: "lax", path: `/club/${token}`, maxAge: 900 });
  });
});
