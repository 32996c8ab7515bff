import { describe, expect, it } from "vitest";
import { guestByToken, issueLink, visitor } from "#auth";
import { planQueue } from "#engine/routing";
import { isoDate } from "#engine/units";
import {
  acceptClub,
  acceptQuote,
  addClubSkier,
  approveProof,
  type ClubId,
  type ClubView,
  clubDocument,
  createQuote,
  editPair,
  issueProof,
  lockSpecification,
  openClub,
  type QuoteId,
  readClub,
  readOrder,
  readPair,
  readQuote,
  readSheet,
  recordDeposit,
  saveSheet,
} from "#services";
import { liveSituation } from "#shop/queue/situation";
import { plainAnswers } from "../../support/builders/sale";
import { must, openShop, shopNow, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { fewRuns } from "./released-pairs";

/** The club and its skiers are invented. */
const db = databaseForTests();

/** Eight skiers on two models: whatever else they differ in, each has a fit of their own. */
const skiers = [
  { name: "Ada", cm: 168, kg: 62, model: "midlow-95", lengthCm: 170 },
  { name: "Bo", cm: 184, kg: 86, model: "midlow-84", lengthCm: 174 },
  { name: "Cleo", cm: 171, kg: 66, model: "midlow-95", lengthCm: 170 },
  { name: "Dag", cm: 180, kg: 81, model: "midlow-95", lengthCm: 178 },
  { name: "Eir", cm: 165, kg: 58, model: "midlow-84", lengthCm: 166 },
  { name: "Finn", cm: 182, kg: 84, model: "midlow-95", lengthCm: 178 },
  { name: "Gro", cm: 173, kg: 70, model: "midlow-84", lengthCm: 174 },
  { name: "Hal", cm: 178, kg: 79, model: "midlow-95", lengthCm: 178 },
] as const;

const palette = {
  base: { left: "lake", right: "bone", inlay: "none" },
  house: "contour-lines",
  isNamed: true,
  destination: "collect",
} as const;

async function clubOf(shop: TestShop): Promise<ClubId> {
  const customer = { name: "Robin Alder", phone: "303 555 0170" };
  const { clubId } = must(
    await openClub(shop.as(shop.desk), { name: "Fell Runners", customer, palette, wantedOn: isoDate("2027-03-01") }),
  );
  for (const [index, { name, cm, kg, model, lengthCm }] of skiers.entries()) {
    const desk = shop.as(shop.desk, new Date(shopNow.getTime() + index * 60_000));
    const { sheetId } = must(await addClubSkier(desk, { clubId, skierName: name }));
    const patch = {
      ...plainAnswers,
      "typed.height": { unit: "cm", cm },
      "typed.mass": { unit: "kg", kg },
      "choices.model": model,
      "choices.lengthCm": lengthCm,
    };
    must(await saveSheet(desk, { sheetId, patch, baseVersion: 1 }));
    must(await createQuote(desk, { sheetId }));
  }
  return clubId;
}

const read = async (shop: TestShop, clubId: ClubId): Promise<ClubView> =>
  must(await readClub(shop.as(shop.desk), { clubId }));

const quoteIdsOf = (club: ClubView, names: readonly string[]): readonly QuoteId[] =>
  club.members.flatMap(({ skierName, quote }) => (names.includes(skierName) && quote ? [quote.quoteId] : []));

/** Taken as they were priced. */
const chosen = (quoteIds: readonly QuoteId[]) => ({ quoteIds, pricedIds: quoteIds });

const six = ["Ada", "Bo", "Cleo", "Dag", "Eir", "Finn"];

async function acceptedSix(shop: TestShop) {
  await stockWood(db());
  const clubId = await clubOf(shop);
  const before = await read(shop, clubId);
  const desk = shop.as(shop.desk);
  const accepting = { clubId, ...chosen(quoteIdsOf(before, six)), how: "phone", name: "Robin Alder" } as const;
  return { clubId, before, desk, accepting, order: must(await acceptClub(desk, accepting)) };
}

describe("scenario 38: a club orders eight pairs", () => {
  it("is one offer of eight fits: one palette, eight names, one price and one day for all", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    const clubId = await clubOf(shop);
    const club = await read(shop, clubId);
    expect(club).toMatchObject({ number: "C-21", name: "Fell Runners", customer: { name: "Robin Alder" } });
    expect(club.members.map(({ skierName, quote }) => [skierName, quote?.lettering, quote?.leavesPalette])).toEqual(
      skiers.map(({ name }) => [name, name.toUpperCase(), false]),
    );
    const quotes = [];
    for (const { quote } of club.members) {
      quotes.push(must(await readQuote(shop.as(shop.desk), { quoteId: quote?.quoteId as QuoteId })));
    }
    // Eight fits: every skier's own stiffness, from their own weight and height.
    expect(new Set(quotes.map(({ spec }) => spec.flexRatio)).size).toBeGreaterThan(3);
    expect(quotes.map(({ answers }) => answers.massKg)).toEqual(skiers.map(({ kg }) => kg));
    // Somebody else buys, but each skier was asked: no fit is marked incomplete.
    expect(quotes.flatMap(({ fit }) => fit.flags.filter(({ code }) => code.includes("buyer")))).toEqual([]);
    for (const { spec } of quotes) expect(spec.base).toMatchObject({ left: "lake", right: "bone" });
    const { open } = club;
    expect(open?.quoteIds).toHaveLength(8);
    expect(open?.price.totalCents).toBe(quotes.reduce((sum, { price }) => sum + price.totalCents, 0));
    expect(open?.price.lines.reduce((sum, { lineCents }) => sum + lineCents, 0)).toBe(open?.price.exTaxCents);
    const wide = open?.price.lines.filter(({ label }) => label.includes("Midlow 95")) ?? [];
    expect(wide.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(5);
    // The last of eight is later than any of them alone.
    const latestAlone = Math.max(...quotes.map(({ dateRange }) => dateRange.workingDays.p50));
    expect(open?.dateRange.workingDays.p50 ?? 0).toBeGreaterThan(latestAlone);
    const paper = must(await clubDocument(shop.as(shop.desk), { clubId, paper: "A4" }));
    expect(paper.fileName).toBe("C-21-offer.pdf");
    expect(new TextDecoder("latin1").decode(paper.bytes.slice(0, 5))).toBe("%PDF-");
    expect(open?.keepsWish).toBe((open?.dateRange.p90 ?? "") <= "2027-03-01");
  });

  it("takes six of eight into one order and leaves two open", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    const { clubId, before, desk, accepting, order } = await acceptedSix(shop);
    expect(order.pairs).toHaveLength(6);
    const view = must(await readOrder(desk, { orderId: order.orderId }));
    // Serials go by mould: 84 at 166 and 174, 95 at 170 and 178.
    expect(view.pairs.map(({ skierName }) => skierName)).toEqual(["Eir", "Bo", "Ada", "Cleo", "Dag", "Finn"]);
    expect(view.club).toEqual({ clubId, number: "C-21", name: "Fell Runners" });
    const totals = before.members.filter(({ skierName }) => six.includes(skierName)).map(({ quote }) => quote);
    expect(view.price.totalCents).toBe(totals.reduce((sum, quote) => sum + (quote?.totalCents ?? 0), 0));
    const after = await read(shop, clubId);
    expect(after.open?.quoteIds).toEqual(quoteIdsOf(before, ["Gro", "Hal"]));
    expect(after.members.filter(({ pair }) => pair !== null)).toHaveLength(6);
    expect(after.orders).toEqual([{ orderId: order.orderId, number: order.orderNumber }]);
    // Twice is refused and names the order; a quote of it alone as well; nothing of a mixed attempt stays.
    const again = await acceptClub(desk, accepting);
    expect(again).toMatchObject({ refusal: { code: "quote-already-accepted", orderNumber: order.orderNumber } });
    const [ada] = accepting.quoteIds;
    const alone = await acceptQuote(desk, { quoteId: ada as QuoteId, how: "phone", name: "Robin" });
    expect(alone).toMatchObject({ refusal: { code: "quote-already-accepted" } });
    const mixed = { ...accepting, ...chosen([...quoteIdsOf(before, ["Gro"]), ada as QuoteId]) };
    expect(await acceptClub(desk, mixed)).toMatchObject({ refusal: { code: "quote-already-accepted" } });
    expect((await read(shop, clubId)).open?.quoteIds).toHaveLength(2);
    expect(await db().order.count()).toBe(1);
    // The two may follow in an order of their own, by whoever holds the club's private link, and nobody else.
    const rest = { ...accepting, how: "online", ...chosen(quoteIdsOf(before, ["Gro", "Hal"])) } as const;
    const token = await issueLink(db(), { kind: "club", id: clubId }, { id: "link", now: shopNow });
    const guest = (await guestByToken(token, shopNow))?.actor ?? visitor();
    expect(await acceptClub(shop.as(visitor()), rest)).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(must(await readClub(shop.as(guest), { clubId })).press).toEqual([]);
    must(await acceptClub(shop.as(guest), rest));
    expect((await read(shop, clubId)).open).toBeNull();
    expect(await clubDocument(desk, { clubId, paper: "A4" })).toMatchObject({
      refusal: { code: "nothing-open-together" },
    });
  });

  it("proofs every name by itself, starts one clock for all and promises one day", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    const { desk, order } = await acceptedSix(shop);
    must(await recordDeposit(desk, { orderId: order.orderId, method: "counter", reference: "r" }));
    const [first, ...others] = order.pairs;
    for (const { pairId } of others) {
      must(await issueProof(desk, { pairId }));
      must(await approveProof(desk, { pairId, revision: 1, name: "Robin Alder" }));
      must(await lockSpecification(desk, { pairId }));
    }
    const waiting = must(await readOrder(desk, { orderId: order.orderId }));
    expect(waiting.clockStartedAt).toBeNull();
    expect(waiting.pairs.map(({ proofState }) => proofState)).toEqual(["none", ...others.map(() => "approved")]);
    const pairId = first?.pairId as never;
    must(await issueProof(desk, { pairId }));
    must(await approveProof(desk, { pairId, revision: 1, name: "Robin Alder" }));
    must(await lockSpecification(desk, { pairId }));
    const started = must(await readOrder(desk, { orderId: order.orderId }));
    expect(started.state).toBe("released");
    expect(started.promisedOn).toBe(started.estimate.p90);
    expect(started.pairs.map(({ state }) => state)).toEqual(Array(6).fill("released"));
  });

  it("keeps each pair apart: own serials, strips, fit and price when one of them changes", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    const { desk, order } = await acceptedSix(shop);
    const pairs = [];
    for (const { pairId } of order.pairs) pairs.push(must(await readPair(desk, { pairId })));
    expect(new Set(pairs.flatMap(({ skis }) => skis.map(({ serial }) => serial))).size).toBe(12);
    const strips = pairs.flatMap((pair) => pair.strips.map(({ stripId }) => stripId));
    expect(new Set(strips).size).toBe(strips.length);
    const before = must(await readOrder(desk, { orderId: order.orderId }));
    const eir = pairs[4];
    const edit = { pairId: eir?.pairId as never, choices: { tipTailProtectors: true }, reason: "rocks", revision: 1 };
    const { comparison } = must(await editPair(desk, edit));
    const after = must(await readOrder(desk, { orderId: order.orderId }));
    expect(comparison.totalDifferenceCents).toBeGreaterThan(0);
    expect(after.price.totalCents - before.price.totalCents).toBe(comparison.totalDifferenceCents);
    expect(after.pairs.map(({ revision }) => revision)).toEqual([1, 1, 1, 1, 2, 1]);
  });

  it("groups the press by mould", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    const { clubId } = await acceptedSix(shop);
    const plan = planQueue(await liveSituation(db(), shop.as(shop.desk).now));
    if (!plan.ok) throw new Error(plan.refusal.code);
    const moulds = plan.value.pressPlan.toSorted((a, b) => a.startMinute - b.startMinute).map(({ mould }) => mould);
    const changes = moulds.filter((mould, index) => index > 0 && mould !== moulds[index - 1]).length;
    // Four moulds. In the order in which they were chosen there would be five changes; three are the least: a pair waits a few
    // minutes for the only cassette of its mould rather than have the mould changed twice.
    expect(new Set(moulds).size).toBe(4);
    expect(changes).toBe(3);
    const { press } = await read(shop, clubId);
    expect(press).toHaveLength(changes + 1);
    expect(press.flatMap(({ mould, serials }) => serials.map(() => mould))).toEqual(moulds);
  });

  it("names the field, its value and its limit, and orders nothing that goes to two places", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    const desk = shop.as(shop.desk);
    const customer = { name: "Robin Alder", phone: "303 555 0170" };
    const good = { name: "Fell Runners", customer, palette };
    const wrong = [
      [{ ...good, name: " " }, "name", "1 to 120 characters, not 0"],
      [{ ...good, palette: { ...palette, house: "stripes" } }, "palette.house", '"stripes"'],
      [{ ...good, palette: { ...palette, base: { ...palette.base, left: "gold" } } }, "palette.base.left", '"gold"'],
      [{ ...good, wantedOn: isoDate("2026-11-09") }, "wantedOn", "2026-11-09 is past"],
    ] as const;
    for (const [input, path, says] of wrong) {
      const asked = await openClub(desk, input);
      expect(asked, path).toMatchObject({ ok: false, refusal: { code: "invalid-field", path } });
      if (!asked.ok) expect(asked.refusal.message).toContain(says);
    }
    expect(await openClub(shop.as(shop.maker), good)).toMatchObject({ refusal: { code: "not-allowed" } });
    const { clubId } = must(await openClub(desk, good));
    expect(await addClubSkier(desk, { clubId, skierName: "" })).toMatchObject({ refusal: { path: "skierName" } });
    const ids: QuoteId[] = [];
    for (const destination of ["collect", "domestic"]) {
      const { sheetId } = must(await addClubSkier(desk, { clubId, skierName: "Ada" }));
      const { sheet } = { sheet: must(await readSheet(desk, { sheetId })) };
      const patch = { ...plainAnswers, "choices.destination": destination };
      must(await saveSheet(desk, { sheetId, patch, baseVersion: sheet.version }));
      ids.push(must(await createQuote(desk, { sheetId })).quote.quoteId);
    }
    expect((await read(shop, clubId)).open).toBeNull();
    const accepting = { clubId, how: "phone", name: "Robin" } as const;
    expect(await acceptClub(desk, { ...accepting, ...chosen([]) })).toMatchObject({
      refusal: { code: "nothing-chosen" },
    });
    expect(await acceptClub(desk, { ...accepting, ...chosen(ids) })).toMatchObject({
      refusal: { code: "club-deliveries-differ", destinations: ["collect", "domestic"] },
    });
    expect(await db().order.count()).toBe(0);
    expect(await readClub(desk, { clubId, quoteIds: ids })).toMatchObject({
      refusal: { code: "club-deliveries-differ", path: "quoteIds", destinations: ["collect", "domestic"] },
    });
    // Each place by itself has its price, and is ordered at that.
    const there = ids.slice(1);
    const alone = must(await readClub(desk, { clubId, quoteIds: there }));
    expect(alone.open).toMatchObject({ quoteIds: there, price: { destination: "domestic" } });
    must(await acceptClub(desk, { ...accepting, ...chosen(there) }));
  });

  it("prices and dates the chosen ones, and orders nothing at a price that was not shown", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const clubId = await clubOf(shop);
    const desk = shop.as(shop.desk);
    const whole = await read(shop, clubId);
    const priceOf = (names: readonly string[]) =>
      whole.members
        .filter(({ skierName }) => names.includes(skierName))
        .reduce((sum, { quote }) => sum + (quote?.totalCents ?? 0), 0);
    const two = quoteIdsOf(whole, ["Ada", "Bo"]);
    const some = must(await readClub(desk, { clubId, quoteIds: two }));
    expect(some.open?.quoteIds).toEqual(two);
    expect(some.open?.price.totalCents).toBe(priceOf(["Ada", "Bo"]));
    expect(some.leftOut).toEqual([]);
    // The last of two of the eight is no later than the last of all, and here it is earlier.
    expect(some.open?.dateRange.workingDays.p90).toBeLessThan(whole.open?.dateRange.workingDays.p90 ?? 0);
    expect(some.members.filter(({ quote }) => quote?.state === "open")).toHaveLength(8);

    // One ticked more, one less, or as many others than were priced: nothing is ordered. Their order is no difference.
    const yes = { clubId, how: "phone", name: "Robin Alder" } as const;
    for (const others of [["Ada"], ["Ada", "Bo", "Cleo"], ["Ada", "Cleo"], []]) {
      const pricedIds = quoteIdsOf(whole, others);
      const asked = await acceptClub(desk, { ...yes, quoteIds: two, pricedIds });
      expect(asked, others.join()).toMatchObject({ refusal: { code: "other-pairs-priced", path: "quoteIds" } });
    }
    expect(await db().order.count()).toBe(0);
    const made = must(await acceptClub(desk, { ...yes, quoteIds: two, pricedIds: two.toReversed() }));
    const order = must(await readOrder(desk, { orderId: made.orderId }));
    expect(order.price.totalCents).toBe(some.open?.price.totalCents);
    expect(order.estimate.p90).toBe(some.open?.dateRange.p90);

    // What is ordered by now, or was never the club's, is left out and named; the rest has its price.
    const late = [...quoteIdsOf(whole, ["Ada", "Cleo"]), "somebody-elses"];
    const rest = must(await readClub(desk, { clubId, quoteIds: late }));
    expect(rest.open?.quoteIds).toEqual(quoteIdsOf(whole, ["Cleo"]));
    expect(rest.open?.price.totalCents).toBe(priceOf(["Cleo"]));
    expect(rest.leftOut).toEqual(["Ada", "somebody-elses"]);
    const refusal = async (quoteIds: readonly string[]) => await readClub(desk, { clubId, quoteIds });
    expect(await refusal([])).toMatchObject({ refusal: { code: "nothing-chosen", path: "quoteIds" } });
    expect(await refusal(two)).toMatchObject({ refusal: { code: "none-of-chosen-open", path: "quoteIds" } });
    expect((await read(shop, clubId)).open?.quoteIds).toHaveLength(6);
  });
});
