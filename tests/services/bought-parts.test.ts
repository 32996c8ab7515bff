/** When what is bought for one pair is ordered and expected; two working days for metal is the demo catalogue's own value. */
import { describe, expect, it } from "vitest";
import { editPair, finishOperation, type PairId, readPair, startOperation } from "#services";
import { liveSituation } from "#shop/queue/situation";
import { acceptedQuote, releasedOrder } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const withMetal = {
  choices: { "choices.model": "midlow-95", "choices.lengthCm": 178, "choices.reinforcements": ["metal-pair"] },
};

async function waitsOn(now: Date) {
  const { pairs } = await liveSituation(db(), now);
  return pairs.map(({ waitingOn }) => waitingOn.flatMap((wait) => (wait.reason === "material" ? [{ ...wait }] : [])));
}

describe("what is bought for a pair", () => {
  it("is ordered when the clock starts: until then the day moves on, from then on it stands", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    await acceptedQuote(shop, { ...withMetal, phone: "303 555 0141" });
    // Tuesday 10 November 2026; two working days later Thursday 12. A week later it is a week later.
    const thursday = { reason: "material", holdsUpStation: "kit", expectedDate: "2026-11-12" };
    expect(await waitsOn(shopNow)).toEqual([[thursday]]);
    expect(await waitsOn(daysAfter(shopNow, 7))).toEqual([[{ ...thursday, expectedDate: "2026-11-19" }]]);
    await releasedOrder(shop, { ...withMetal, phone: "303 555 0142" });
    expect((await waitsOn(daysAfter(shopNow, 7)))[1]).toEqual([thursday]);
  });

  it("is waited for from the day a later change brought it in, and not once the kit has begun", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { choices } = withMetal;
    const plain = { ...choices, "choices.reinforcements": [] };
    const order = await releasedOrder(shop, { choices: plain });
    const pairId = order.pairs[0]?.pairId as PairId;
    expect(await waitsOn(shopNow)).toEqual([[]]);
    const later = daysAfter(shopNow, 1);
    const change = { pairId, choices: { reinforcements: ["metal-pair"] }, reason: "wants it calm", revision: 1 };
    must(await editPair({ ...shop.as(shop.desk, later), promiseRuns: 20 }, change));
    // Changed on Wednesday 11 November: Friday 13, also when looked at later.
    const friday = { reason: "material", holdsUpStation: "kit", expectedDate: "2026-11-13" };
    expect(await waitsOn(later)).toEqual([[friday]]);
    expect(await waitsOn(daysAfter(later, 1))).toEqual([[friday]]);

    const kitted = daysAfter(later, 2);
    const maker = shop.as(shop.maker, kitted);
    for (const station of ["release", "kit"]) {
      const { operations } = must(await readPair(maker, { pairId }));
      const visit = operations.find((each) => each.station === station);
      if (visit === undefined) throw new Error(`no station ${station}`);
      must(await finishOperation(maker, must(await startOperation(maker, visit))));
    }
    expect(await waitsOn(kitted)).toEqual([[]]);
  });
});
