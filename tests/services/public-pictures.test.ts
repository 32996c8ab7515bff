/** Pictures for everybody: a house graphic as a file, the shop's card and the card of a look that is passed on. */
import sharp from "sharp";
import { beforeEach, describe, expect, it } from "vitest";
import { houseGraphicFile, shareCard } from "#services";
import { openShop, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("pictures that anybody may see", () => {
  let shop: TestShop;
  const guest = () => shop.visitor;

  beforeEach(async () => {
    shop = await openShop(db());
  });

  it("draws a house graphic lying, in its own colours, and refuses one that the shop has not", async () => {
    const file = await houseGraphicFile(guest(), { graphic: "autumn-larch" });
    if (!file.ok) throw new Error(file.refusal.code);
    expect(file.value.contentType).toBe("image/svg+xml");
    const svg = new TextDecoder().decode(file.value.bytes);
    expect(svg).toContain("#1f2d3a");
    const { width, height } = await sharp(file.value.bytes).metadata();
    expect([width, height]).toEqual([1780, 132]);
    expect(await houseGraphicFile(guest(), { graphic: "unicorn" })).toMatchObject({
      ok: false,
      refusal: { code: "not-found", path: "graphic" },
    });
  });

  it("makes a card of the size that links ask for; another look, another card; what cannot be read, the shop's", async () => {
    const card = async (query: string) => {
      const drawn = await shareCard(guest(), { look: new URLSearchParams(query) });
      if (!drawn.ok) throw new Error(drawn.refusal.code);
      return Buffer.from(drawn.value.bytes);
    };
    const [shops, one, unread] = [await card(""), await card("model=ridgefold-106"), await card("model=unicorn")];
    for (const bytes of [shops, one]) {
      const { width, height, format } = await sharp(bytes).metadata();
      expect([width, height, format]).toEqual([1200, 630, "png"]);
    }
    expect(one.equals(shops)).toBe(false);
    expect(unread.equals(shops)).toBe(true);
  });
});
