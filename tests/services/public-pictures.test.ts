/** Pictures that anybody may see: a house graphic as a file, and the card of the shop. They hold nobody's pair and no words. */
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { houseGraphicFile, shareCard } from "#services";
import { spend } from "#services/doors/budgets";
import { currentCatalog } from "#shop/catalogue/current";
import { must, openShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("a house graphic as a file", () => {
  it("is a drawing of its own for anybody, lying, as wide as a ski of 178 cm and 132 mm", async () => {
    const { visitor } = await openShop(db());
    const file = must(await houseGraphicFile(visitor, { graphic: "autumn-larch" }));
    expect([file.contentType, file.fileName]).toEqual(["image/svg+xml", "autumn-larch.svg"]);
    const svg = new TextDecoder().decode(file.bytes);
    expect(svg).toContain('viewBox="0 -66 1780 132"');
    // Its own palette, and nothing that a page would have to give it.
    for (const colour of ["#1f2d3a", "#c9862b", "#e6c15a"]) expect(svg).toContain(colour);
    expect(svg).not.toMatch(/var\(|<image|<script|NaN/);
    const { data, info } = await sharp(Buffer.from(file.bytes)).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([1780, 132]);
    // Its ground, #1f2d3a, reaches the corners.
    for (const at of [0, info.width - 1, (info.height - 1) * info.width, info.height * info.width - 1])
      expect([...data.subarray(at * info.channels, at * info.channels + 3)]).toEqual([0x1f, 0x2d, 0x3a]);
  });

  it("is not there by another name", async () => {
    const { visitor } = await openShop(db());
    expect(await houseGraphicFile(visitor, { graphic: "no-such-graphic" })).toMatchObject({
      ok: false,
      refusal: { code: "not-found", what: "graphic", path: "graphic" },
    });
  });
});

describe("the shop's card", () => {
  it("is 1200 by 630 with three pairs across it on the shop's paper", async () => {
    const { visitor } = await openShop(db());
    const card = must(await shareCard(visitor, { look: new URLSearchParams() }));
    expect(card.contentType).toBe("image/png");
    const { data, info } = await sharp(Buffer.from(card.bytes)).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([1200, 630]);
    const isPaper = (x: number, y: number) => {
      const at = (y * info.width + x) * info.channels;
      return [...data.subarray(at, at + 3)].every((value, i) => value === [0xf7, 0xf4, 0xee][i]);
    };
    expect([isPaper(5, 5), isPaper(1195, 5), isPaper(5, 625), isPaper(1195, 625)]).toEqual([true, true, true, true]);
    // Down a line under the boots: six skis, paper between each and the next.
    let skis = 0;
    for (let y = 1; y < info.height; y++) if (isPaper(500, y - 1) && !isPaper(500, y)) skis++;
    expect(skis).toBe(6);
  });
});

describe("the card of a look that is passed on", () => {
  it("shows that pair; what cannot be read shows the shop's own", async () => {
    const { visitor } = await openShop(db());
    const card = async (query: string) =>
      Buffer.from(must(await shareCard(visitor, { look: new URLSearchParams(query) })).bytes);
    const [shops, one, unread] = [await card(""), await card("model=ridgefold-106"), await card("model=unicorn")];
    const { width, height, format } = await sharp(one).metadata();
    expect([width, height, format]).toEqual([1200, 630, "png"]);
    expect(one.equals(shops)).toBe(false);
    expect(unread.equals(shops)).toBe(true);
  });
});

describe("who asks for cards", () => {
  it("has each drawn once for everybody, and a new one among what a guest may have drawn", async () => {
    const { visitor } = await openShop(db());
    const guest = { ...visitor, visitor: { share: "c".repeat(32), mark: null } };
    const card = (query: string) => shareCard(guest, { look: new URLSearchParams(query) });
    const first = must(await card("model=kerfline-68"));
    for (let n = 1; n < currentCatalog().doors.drawing.each; n += 1) must(await spend(guest, "drawing"));
    expect(await card("model=drifthold-117")).toMatchObject({ ok: false, refusal: { code: "budget-used" } });
    // The same look in other words was drawn already.
    expect(must(await card("layout=none&model=kerfline-68&length=168")).bytes).toBe(first.bytes);
  });
});
