/** Strips by size, through the services: allowances are the shop's (common practice, no source). */
import { describe, expect, it } from "vitest";
import { insertStrips, stripsHeldBy } from "#data/strips";
import { decideStrips, type PairId, readPair, stripsShort } from "#services";
import { releasedOrder } from "../support/builders/sale";
import { must, openShop, shopNow, strips } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const sawn = (id: string, widthMm: number, heightMm: number) =>
  [...strips("aspen", 40, 8910, 426), ...strips("ash", 16, 13_200, 670)].map((strip) => ({
    ...strip,
    id: `${id}-${strip.id}`,
    board: `${id}-${strip.board}`,
    widthMm,
    heightMm,
  }));
const choices = { "choices.model": "drifthold-117", "choices.lengthCm": 188, "choices.flexRatio": 1 };

describe("strips for a wide ski", () => {
  it("are not taken from narrow or low ones; the page says what is needed, and takes the wide ones when they come", async () => {
    const shop = await openShop(db());
    await insertStrips(db(), [...sawn("narrow", 20.5, 17), ...sawn("low", 22.5, 13.5)]);
    const answers = { "answers.offPistePercent": 95, "answers.homeSnow": "deep" };
    const order = await releasedOrder(shop, { answers, choices });
    const pairId = order.pairs[0]?.pairId as PairId;
    const ctx = shop.as(shop.maker, shopNow);
    const short = must(await stripsShort(ctx, { pairId }));
    expect(short.isShort).toBe(true);
    // 19.3 mm planed and 3 to plane; the core some 12 mm high and 2 to mill; wood of 1,580 mm and 60.
    expect(short.why.map(({ code, position }) => [code, position])).toEqual(
      ["C", "I", "M", "O"].map((position) => ["strips-too-small", position]),
    );
    const least = short.why[0]?.least;
    expect([least?.widthMm, least?.lengthMm]).toEqual([22.3, 1640]);
    expect(least?.heightMm).toBeGreaterThan(13.5);
    expect(least?.heightMm).toBeLessThan(15.5);
    expect(short.options.map(({ kind }) => kind)).toEqual(["wait"]);

    await insertStrips(db(), sawn("wide", 22.5, 17));
    const again = must(await stripsShort(ctx, { pairId }));
    expect(again.options.map(({ kind }) => kind)).toEqual(["as-ordered", "wait"]);
    const { version } = again;
    must(await decideStrips(ctx, { pairId, version, option: "as-ordered", reason: "a wide batch came" }));
    const held = await stripsHeldBy(db(), pairId);
    expect(held).toHaveLength(14);
    const { parts } = must(await readPair(ctx, { pairId }));
    for (const strip of held) {
      const cut = parts.lines.find(({ code }) => code === `strip-${strip.position?.toLowerCase()}`);
      expect(strip.widthMm).toBeGreaterThanOrEqual(cut?.widthMm ?? Number.POSITIVE_INFINITY);
      expect(strip.heightMm).toBeGreaterThanOrEqual(cut?.thicknessMm ?? Number.POSITIVE_INFINITY);
      expect(strip.lengthMm).toBeGreaterThanOrEqual(cut?.lengthMm ?? Number.POSITIVE_INFINITY);
    }
  });

  it("leave the wide strips to wide skis where smaller ones do", async () => {
    const shop = await openShop(db());
    await insertStrips(db(), [...sawn("a-wide", 22.5, 17), ...sawn("usual", 20.5, 15.5)]);
    const order = await releasedOrder(shop, { choices: { "choices.model": "midlow-84", "choices.lengthCm": 174 } });
    const held = await stripsHeldBy(db(), order.pairs[0]?.pairId as PairId);
    expect(held).toHaveLength(14);
    expect(held.every(({ widthMm }) => widthMm === 20.5)).toBe(true);
  });
});
