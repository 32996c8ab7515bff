/** The skier's buttons, pressed as functions: what they write, what they say of a wrong field, and whose link opens what. */
import { describe, expect, it } from "vitest";
import { newSection } from "#app/_ui/sheet/section-state.ts";
import * as answers from "#app/(skier)/answers/actions.ts";
import { accept as acceptClubOffer } from "#app/(skier)/club/actions.ts";
import * as pair from "#app/(skier)/pair/actions.ts";
import * as quote from "#app/(skier)/quote/actions.ts";
import { takeOntoSheet } from "#app/(skier)/sheet/[token]/compare/actions.ts";
import * as sheet from "#app/(skier)/sheet/actions.ts";
import words from "#content/copy/skier.json";
import { acceptedQuote, plainAnswers, quotedSheet } from "../../support/builders/sale";
import { openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { browser, called, freshBrowser, press } from "../../support/page-requests";

const db = databaseForTests();
const nobody = "x".repeat(43);

/** The section's form as a browser sends it; `was` is what its controls said when the page was drawn. */
function sectionForm(section: string, was: object, sent: Readonly<Record<string, string>>): FormData {
  const form = new FormData();
  form.set("section", section);
  form.set("was", JSON.stringify(was));
  for (const [name, value] of Object.entries({ ...was, ...sent })) form.set(name, String(value));
  return form;
}

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

describe("the sheet's forms without scripts", () => {
  it("save what was changed and come back with what was not taken, as it was typed", async () => {
    freshBrowser();
    const token = /([\w-]{43})$/.exec((await called(sheet.startSheet)).to ?? "")?.[1] ?? "";
    const was = { height: "", heightUnit: "cm", mass: "", massUnit: "kg", ability: "", packKg: "", ageYears: "" };
    const sent = { height: "1,82 m", mass: "20 stone x", ability: "expert", packKg: "99", ageYears: "old" };
    const state = await sheet.postSection(token, newSection, sectionForm("you", was, sent));
    expect(state.section).toBe("you");
    expect(state.typed).toEqual({ packKg: "99", ageYears: "old" });
    expect(state.wrong.packKg).toBe("Usual pack 99 kg is above 40 kg");
    expect(state.wrong.ageYears).toContain("“old” is not a number");
    expect(state.refused).toEqual({ "answers.packKg": { value: 99, message: "Usual pack 99 kg is above 40 kg" } });
    const kept = await sheet.reloadSheet(token);
    expect(kept?.answers).toEqual({ heightCm: 182, ability: "expert" });
    expect(kept?.said).toEqual({ height: "1,82 m", mass: "20 stone x" });
    const contact = await sheet.postSection(
      token,
      newSection,
      sectionForm("contact", { name: "", email: "", phone: "" }, { name: "Robin Alder", email: "robin at alder" }),
    );
    expect(contact.wrong).toEqual({ email: 'E-mail "robin at alder" is not an address' });
    expect((await sheet.reloadSheet(token))?.contact).toEqual({ name: "Robin Alder" });
    await expect(sheet.postSection(token, newSection, sectionForm("moon", {}, {}))).rejects.toThrow(
      /not what our pages/,
    );
    await expect(sheet.postSection(token, newSection, new FormData())).rejects.toThrow(/not what our pages/);
  });

  it("make a quote of what was seen, or say in the reply what is different", async () => {
    freshBrowser();
    const token = /([\w-]{43})$/.exec((await called(sheet.startSheet)).to ?? "")?.[1] ?? "";
    const patch = { ...plainAnswers, "contact.name": "Robin Alder", "contact.email": "robin@alder.example" };
    expect(await sheet.saveFields(token, { ...patch, "choices.destination": "collect" }, 1)).toMatchObject({
      ok: true,
    });
    const form = (seen: unknown) => {
      const sent = new FormData();
      sent.set("seen", typeof seen === "string" ? seen : JSON.stringify(seen));
      return sent;
    };
    const other = await sheet.postQuote(token, null, form({ ...nothingSeen, totalCents: 1 }));
    expect(other.ok).toBe(false);
    expect(other.differences).toEqual([{ path: "price", seen: 1, now: expect.any(Number) }]);
    expect(await db().quote.count()).toBe(0);
    await expect(sheet.postQuote(token, null, form("{"))).rejects.toThrow(/not what our pages/);
    await expect(sheet.makeQuote(token, { spec: 7 } as never)).rejects.toThrow(/not what our pages/);
    const made = await called(() => sheet.postQuote(token, null, form(nothingSeen)));
    expect(made.to ?? made.value).toMatch(/^\/quote\/[\w-]{43}$/);
  });

  it("of the skier's own part say in words that the link has ended, and keep what was typed", async () => {
    freshBrowser();
    expect(await answers.saveAnswerFields(nobody, { "answers.ability": "expert" }, 1)).toEqual({
      ok: false,
      message: words.answers.ended,
    });
    expect(await answers.reloadAnswers(nobody)).toBeNull();
    const form = sectionForm("you", { height: "" }, { height: "182" });
    const state = await answers.postAnswers(nobody, newSection, form);
    expect([state.wrong[""], state.typed]).toEqual([words.answers.ended, { height: "182" }]);
    const wrong = await answers.saveAnswerFields(nobody, { "answers.packKg": 99 }, 1);
    expect(wrong).toMatchObject({ ok: false, path: "answers.packKg" });
  });
});
