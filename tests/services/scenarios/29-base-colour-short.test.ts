import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import {
  type AcceptedQuote,
  type BreakdownInput,
  chooseOption,
  closeIncident,
  listNotices,
  type PairId,
  previewBreakdown,
  readPair,
  reportBreakdown,
} from "#services";
import { releasedOrder } from "../../support/builders/sale";
import { must, openShop, shopNow, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { fewRuns } from "./released-pairs";

/**
 * Yellow is short by 0.4 m before nesting. Two skis lie side by side on a 300 mm roll where
 * 2 × (132 + 10) = 284 mm: the shoulder and 10 mm of margin each (common practice, no source).
 */
const db = databaseForTests();
const expectedOn = isoDate("2027-01-18");
const yellow = { left: "yellow", right: "yellow", inlay: "none" };
const counterchanged = { left: "yellow", right: "black", inlay: "counterchange", inlayText: "FELL" };
const black = { left: "black", right: "black", inlay: "none" };

const firstPair = ({ pairs }: AcceptedQuote) => pairs[0]?.pairId as PairId;

async function ordered(shop: TestShop, index: number, base: Readonly<Record<string, unknown>>): Promise<AcceptedQuote> {
  const choices = { "choices.model": "midlow-95", "choices.lengthCm": 178, "choices.base": base };
  return releasedOrder(shop, { phone: `303 555 ${2000 + index}`, name: `Skier ${index}`, choices });
}

/** One delivery of each colour; lake blue is of another thickness lot. */
async function stockBases(shop: TestShop, pairId: PairId): Promise<void> {
  const { parts } = must(await readPair(shop.as(shop.maker), { pairId }));
  const material = parts.lines.find(({ code }) => code === "base-left")?.material ?? "";
  const inColour = (label: string) => material.replace("Signal yellow", label);
  const lots = [
    ["Graphite black", "UH-31"],
    ["Ember red", "UH-31"],
    ["Lake blue", "UH-44"],
  ] as const;
  await db().lot.createMany({
    data: lots.map(([label, number]) => ({
      id: `lot-${label}`,
      material: inColour(label),
      number,
      quantity: 60,
      unit: "piece",
      location: "B2",
      receivedAt: shopNow,
      expiresAt: null,
    })),
  });
}

async function shopWithYellow() {
  const shop = fewRuns(await openShop(db()), 20);
  await stockWood(db());
  const orders = [
    await ordered(shop, 1, yellow),
    await ordered(shop, 2, black),
    await ordered(shop, 3, yellow),
    await ordered(shop, 4, counterchanged),
  ];
  const ids = orders.map(firstPair);
  await stockBases(shop, ids[0] as PairId);
  return { shop, ids };
}

const short = (leftM: number): BreakdownInput => ({ kind: "base-short", colour: "yellow", leftM, expectedOn });

/** 178 cm and 40 mm of allowance; the pair of one colour lies side by side, the counterchanged pair takes one base of it. */
const perPairM = (1780 + 40) / 1000;

describe("scenario 29: a base colour is short", () => {
  it("shows who goes short, what fits instead and which letters need one thickness lot", async () => {
    const { shop, ids } = await shopWithYellow();
    const maker = shop.as(shop.maker);
    const leftM = 3 * perPairM - 0.4;
    const { base, effect, options } = must(await previewBreakdown(maker, short(leftM)));
    expect(base?.neededM).toBeCloseTo(3 * perPairM, 3);
    expect(base?.shortM).toBeCloseTo(0.4, 3);
    // The plan cuts them in the order of their promises: the last of the three goes short, the black pair is not touched.
    expect(base?.pairs.map(({ pairId, isServed }) => [pairId, isServed])).toEqual([
      [ids[0], true],
      [ids[2], true],
      [ids[3], false],
    ]);
    const [first, , last] = base?.pairs ?? [];
    expect(first).toMatchObject({ counterchangedWith: null, alternatives: [] });
    // Letters counterchanged with black of lot UH-31: red is of that lot, blue is not.
    expect(last?.counterchangedWith).toEqual({ label: "Graphite black", lot: "UH-31" });
    expect(last?.alternatives).toEqual([{ colour: "ember", label: "Ember red", lot: "UH-31" }]);
    expect(effect.moved.map(({ pairId }) => pairId)).toEqual([ids[3]]);
    expect(effect.moved[0]?.after.p50 !== undefined && effect.moved[0].after.p50 > expectedOn).toBe(true);
    expect(options.map(({ way }) => way).slice(0, 2)).toEqual(["wait", "offer-colour"]);
  });

  it("offers any colour on the shelf where no letters are counterchanged", async () => {
    const { shop, ids } = await shopWithYellow();
    const { base } = must(await previewBreakdown(shop.as(shop.maker), short(perPairM)));
    const second = base?.pairs.find(({ pairId }) => pairId === ids[2]);
    expect(second?.isServed).toBe(false);
    expect(second?.alternatives.map(({ colour, lot }) => [colour, lot])).toEqual([
      ["black", "UH-31"],
      ["lake", "UH-44"],
      ["ember", "UH-31"],
    ]);
  });

  it("holds only those who go short until the delivery, and writes to them without changing anything", async () => {
    const { shop, ids } = await shopWithYellow();
    const maker = shop.as(shop.maker);
    const leftM = 3 * perPairM - 0.4;
    const incident = must(
      await reportBreakdown(maker, { reportId: "y", breakdown: short(leftM), note: "roll is out" }),
    );
    expect(incident.base?.pairs).toHaveLength(3);
    const holds = await db().pairHold.findMany();
    expect(holds.map(({ pairId, station, expectedOn: on }) => [pairId, station, on])).toEqual([
      [ids[3], "base-cut", "2027-01-18"],
    ]);
    const { incidentId, version } = incident;
    const owner = shop.as(shop.owner);
    const reason = "red looks well with black";
    const decided = must(await chooseOption(owner, { incidentId, version, option: "offer-colour", reason }));
    expect(decided.notices).toHaveLength(1);
    const [letter] = must(await listNotices(owner));
    expect(letter?.kind).toBe("colour-offer");
    expect(letter?.body).toContain("Signal yellow");
    expect(letter?.body).toContain("18 January 2027");
    expect(letter?.body).toContain("with Ember red instead");
    expect(letter?.body).toContain("one delivery of one thickness");
    const pair = must(await readPair(maker, { pairId: ids[3] as PairId }));
    expect(pair.spec.base).toMatchObject({ left: "yellow", right: "black" });
    must(await closeIncident(maker, { incidentId, version: decided.version }));
    expect(await db().pairHold.count({ where: { clearedAt: null } })).toBe(0);
  });

  it("names field, value and limit, and counts no pair whose bases are cut", async () => {
    const { shop, ids } = await shopWithYellow();
    const maker = shop.as(shop.maker);
    const wrong = [
      [{ ...short(1), colour: "gold" }, "colour", "Base colour"],
      [short(-1), "leftM", "-1 m is not between 0 and 500 m"],
      [short(3 * perPairM), "leftM", "5.46 m for 3 pairs"],
      [{ ...short(1), expectedOn: isoDate("2026-11-09") }, "expectedOn", "2026-11-09 is past"],
    ] as const;
    for (const [input, path, says] of wrong) {
      const asked = await previewBreakdown(maker, input);
      expect(asked, path).toMatchObject({ ok: false, refusal: { code: "invalid-field", path } });
      if (!asked.ok) expect(asked.refusal.message).toContain(says);
    }
    await db().operation.updateMany({
      where: { pairId: ids[0] as string, station: "base-cut" },
      data: { state: "done", finishedAt: shopNow },
    });
    const { base } = must(await previewBreakdown(maker, short(perPairM)));
    expect(base?.pairs.map(({ pairId }) => pairId)).toEqual([ids[2], ids[3]]);
  });
});
