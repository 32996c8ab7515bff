/**
 * Every hazard of the catalogue is found at every place it names, with its whole text, its reference and the local rules in a
 * disclosure of its own, and none is named nowhere. Pages and papers of a real shop.
 */
import { describe, expect, it } from "vitest";
import SkierPairPage from "#app/(skier)/pair/[token]/page.tsx";
import SkierQuotePage from "#app/(skier)/quote/[token]/page.tsx";
import SheetPage from "#app/(skier)/sheet/[token]/page.tsx";
import CallPage from "#app/shop/(staff)/call/[sheetId]/page.tsx";
import { sayYes } from "#app/shop/(staff)/cautions/actions.ts";
import CautionsPage from "#app/shop/(staff)/cautions/page.tsx";
import MeasuredPage from "#app/shop/(staff)/measured/page.tsx";
import OrderPage from "#app/shop/(staff)/orders/[orderId]/page.tsx";
import PairPage from "#app/shop/(staff)/pair/[code]/page.tsx";
import BreakdownPage from "#app/shop/(staff)/queue/breakdown/page.tsx";
import QueuePage from "#app/shop/(staff)/queue/page.tsx";
import reminder from "#content/copy/cautions.json";
import { cautionLabels, cautionPages, cautionPapers, type Hazard } from "#engine/floor";
import {
  type AcceptedQuote,
  buildSheetDocument,
  kitListDocument,
  labelsDocument,
  orderDocument,
  quoteDocument,
  readPair,
  reissueLink,
  startOperation,
} from "#services";
import { termFacts } from "#services/papers/terms";
import { currentCatalog } from "#shop/catalogue/current";
import { drawDocument } from "../../../lib/papers/draw";
import { readers } from "../../papers/pdf-text";
import { clubQuote } from "../../papers/sample";
import { quotedSheet, releasedOrder } from "../../support/builders/sale";
import { must, openShop, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import type { Reading } from "../../support/page-reading";
import { shown } from "../../support/page-render";
import { freshBrowser, press, sitDown } from "../../support/page-requests";

const db = databaseForTests();
const { safety, floor, shop: shopSettings } = currentCatalog();
const { hazards, localRules } = safety;
const child = { "answers.ageYears": 17, "answers.offPistePercent": 60 };
const powder = { "choices.model": "drifthold-117", "choices.lengthCm": 180 };

/** Ids told on a page; each with its line in the summary and everything else behind it, in one native disclosure. */
function toldOn(page: Reading, also: readonly string[] = [localRules]): readonly string[] {
  return page.all("[data-caution]").map((item) => {
    const id = item.attribute("data-caution") ?? "";
    const hazard = hazards.find((each) => each.id === id);
    if (hazard === undefined) throw new Error(`no hazard "${id}"`);
    expect(item.one("details > summary").text).toBe(`!${hazard.line}`);
    for (const words of [hazard.full, hazard.reference, ...also]) expect(item.one("details").text).toContain(words);
    return id;
  });
}

const named = (is: (hazard: Hazard) => boolean) => hazards.filter(is).map(({ id }) => id);
const missing = (wanted: readonly string[], told: readonly string[]) => wanted.filter((id) => !told.includes(id));

describe("the catalogue's hazards", () => {
  it("hold what the shop must tell, each somewhere", () => {
    // The list of the house's own design; common practice, no source.
    const least = [
      ...["eyes-resin", "eyes-chips", "eyes-grinder", "hearing-machines", "hearing-grinder", "lifting-moulds"],
      ...["flex-bench", "unattended-heat", "sharp-delivery", "avalanche", "children", "advice", "bindings"],
    ];
    expect(
      missing(
        least,
        named(() => true),
      ),
    ).toEqual([]);
    expect(cautionPages.filter((page) => !hazards.some(({ pages }) => pages.includes(page)))).toEqual([]);
    expect(cautionPapers.filter((paper) => !hazards.some(({ papers }) => papers.includes(paper)))).toEqual([]);
    expect(cautionLabels.filter((label) => !hazards.some(({ labels }) => labels.includes(label)))).toEqual([]);
  });

  it("stand in no term of sale, which names none of them by its place in a list", () => {
    expect(shopSettings.terms.filter((term) => /binding|guarantee/i.test(term))).toEqual([]);
  });
});

describe("pages", () => {
  let shop: TestShop;
  let order: AcceptedQuote;
  const one = (id: (typeof cautionPages)[number]) => named(({ pages }) => pages.includes(id));

  async function open(): Promise<void> {
    freshBrowser();
    shop = await openShop(db());
    await stockWood(db());
    order = await releasedOrder(shop, { answers: child });
  }

  it("tell the floor's hazards at every station and beside what is done next on a pair", async () => {
    await open();
    await sitDown("maker");
    for (const { id, role } of floor.stations) {
      const told = toldOn(await shown(QueuePage, { query: { view: "floor", station: id } }));
      expect([id, missing([...named(({ stations }) => stations.includes(role)), ...one("floor")], told)]).toEqual([
        id,
        [],
      ]);
    }
    const pairId = order.pairs[0]?.pairId ?? ("" as never);
    const code = order.pairs[0]?.serial ?? "";
    const first = must(await readPair(shop.as(shop.maker), { pairId })).operations.find(
      ({ state }) => state === "ready",
    );
    if (first === undefined) throw new Error("nothing is ready");
    must(await startOperation(shop.as(shop.maker), { operationId: first.operationId, version: first.version }));
    const page = await shown(PairPage, { params: { code } });
    const here = named(({ stations }) => stations.includes("release"));
    expect(missing([...here, ...one("shop-pair"), ...one("bench")], toldOn(page))).toEqual([]);
    // Nothing of a station that is not at hand.
    expect(toldOn(page)).not.toContain("press-force");
    await sitDown("owner");
    expect(missing(one("measured"), toldOn(await shown(MeasuredPage)))).toEqual([]);
  });

  it("tell of heat with nobody there beside the ways on from a breakdown", async () => {
    await open();
    await sitDown("owner");
    const query = {
      kind: "press-down",
      press: floor.presses[0]?.id ?? "",
      from: "2026-11-10T10:00",
      until: "2026-11-12T10:00",
      reason: "no heat",
    };
    const page = await shown(BreakdownPage, { query });
    expect(missing(one("breakdown"), toldOn(page))).toEqual([]);
    expect(page.text).toContain(`under ${currentCatalog().remedies.overnightCure.procedure}`);
  });

  it("tell the skier and the desk what leaves the shop, off-piste and children where they are meant", async () => {
    await open();
    const { quote, token } = await quotedSheet(shop, { phone: "303 555 0109", answers: child, choices: powder });
    expect(missing(one("quote"), toldOn(await shown(SkierQuotePage, { params: { token } })))).toEqual([]);
    const { sheetId } = quote;
    const sheet = must(await reissueLink(shop.as(shop.desk), { kind: "sheet", id: sheetId }));
    expect(missing(one("sheet"), toldOn(await shown(SheetPage, { params: { token: sheet.token } })))).toEqual([]);
    const pair = must(await reissueLink(shop.as(shop.desk), { kind: "order", id: order.orderId }));
    expect(missing(one("pair"), toldOn(await shown(SkierPairPage, { params: { token: pair.token } })))).toEqual([]);
    await sitDown("desk1");
    expect(missing(one("sheet"), toldOn(await shown(CallPage, { params: { sheetId } })))).toEqual([]);
    await db().pair.updateMany({ data: { state: "ready" } });
    await db().order.updateMany({ data: { state: "ready" } });
    await sitDown("owner");
    const ready = await shown(OrderPage, { params: { orderId: order.orderId } });
    expect(missing(one("delivery"), toldOn(ready))).toEqual([]);
    // A grown skier on the piste is told of neither.
    const plain = await quotedSheet(shop, { phone: "303 555 0110", answers: { "answers.offPistePercent": 0 } });
    const told = toldOn(await shown(SkierQuotePage, { params: { token: plain.token } }));
    expect(told).toContain("advice");
    expect(told.filter((id) => id === "avalanche" || id === "children")).toEqual([]);
  });

  it("are read whole by each of the staff, who says yes; the floor reminds until then and keeps nobody from working", async () => {
    await open();
    await sitDown("maker");
    const code = order.pairs[0]?.serial ?? "";
    const before = await shown(PairPage, { params: { code } });
    expect(before.text).toContain(reminder.reminder.title);
    expect(before.links[reminder.reminder.link]).toBe("/shop/cautions");
    expect(before.buttons).toContain("Start");
    expect((await shown(QueuePage)).text).toContain(reminder.reminder.title);
    const page = await shown(CautionsPage);
    expect(
      missing(
        named(({ stations }) => stations.length > 0),
        toldOn(page, []),
      ),
    ).toEqual([]);
    expect(page.text).toContain(localRules);
    expect(page.all("details").every((each) => each.attribute("open") !== null)).toBe(true);
    expect(page.hasPart("Who has said yes")).toBe(false);
    const form = page.form(reminder.page.yes);
    expect((await press(sayYes, { textsHash: "of other texts" })).state?.status).toBe("refused");
    expect((await press(sayYes, form.sent)).state?.status).toBe("done");
    expect((await shown(PairPage, { params: { code } })).text).not.toContain(reminder.reminder.title);
    const after = await shown(CautionsPage);
    expect(after.text).toContain("Mo Maker said yes on 10 Nov 2026, 10:00, for the season 2026/27.");
    expect(after.buttons).not.toContain(reminder.page.yes);
    await sitDown("owner");
    const people = (await shown(CautionsPage)).table("Who has said yes");
    expect(people.map((row) => [row.Name, row["This season"]])).toEqual([
      ["Desk 1", "!not yet"],
      ["Desk 2", "!not yet"],
      ["Ola Owner", "!not yet"],
      ["Mo Maker", "✓yes"],
    ]);
  });

  it("of the papers carry theirs", async () => {
    await open();
    const { quote } = await quotedSheet(shop, { phone: "303 555 0109", answers: child, choices: powder });
    const pairId = order.pairs[0]?.pairId ?? ("" as never);
    const maker = shop.as(shop.maker);
    const desk = shop.as(shop.desk);
    const bare = (text: string) => text.replace(/\s+/g, "");
    const read = (bytes: Uint8Array) => bare(readers.readByOurselves(bytes).join(""));
    const lines = (is: (hazard: Hazard) => boolean) => hazards.filter(is).map(({ line }) => line);
    const lacks = (text: string, wanted: readonly string[]) => wanted.filter((line) => !text.includes(bare(line)));
    const paper = "A4";
    const sheet = read(must(await buildSheetDocument(maker, { pairId, paper })).bytes);
    expect(
      lacks(
        sheet,
        lines(({ stations }) => stations.length > 0),
      ),
    ).toEqual([]);
    const kit = read(must(await kitListDocument(maker, { pairId, paper })).bytes);
    expect(lacks(kit, [...lines(({ papers }) => papers.includes("kit-list")), localRules])).toEqual([]);
    const labels = read(must(await labelsDocument(maker, { pairId, paper })).bytes);
    const onLabels = lines(({ papers, labels: on }) => papers.includes("labels") || on.length > 0);
    expect(lacks(labels, [...onLabels, localRules])).toEqual([]);
    const whole = (is: (hazard: Hazard) => boolean) =>
      hazards.filter(is).flatMap(({ line, full, reference }) => [line, full, reference]);
    const offer = read(must(await quoteDocument(desk, { quoteId: quote.quoteId, paper })).bytes);
    expect(lacks(offer, [...whole(({ papers }) => papers.includes("quote")), localRules])).toEqual([]);
    const confirmation = read(must(await orderDocument(desk, { orderId: order.orderId, paper })).bytes);
    expect(lacks(confirmation, [...whole(({ papers }) => papers.includes("order-confirmation")), localRules])).toEqual(
      [],
    );
    const { cautions } = termFacts(shopSettings, "club-quote", [{ use: "powder", ageYears: 12 }]);
    const club = read(await drawDocument("club-quote", { ...clubQuote, cautions }, paper));
    expect(lacks(club, [...lines(({ papers }) => papers.includes("club-quote")), localRules])).toEqual([]);
  });
});
