import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import {
  artworkBytes,
  copySheet,
  openSheet,
  readSheet,
  type SheetId,
  saveSheet,
  stateRights,
  uploadArtwork,
} from "#services";
import { artworkLimits } from "#services/graphics/decode";
import { sniffType } from "#services/graphics/sniff";
import { must, openShop, shopNow, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

const plain = (widthPx: number, heightPx: number) =>
  sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: "#a3440f" } });

async function emptySheet(shop: TestShop): Promise<SheetId> {
  return must(await openSheet(shop.as(shop.desk), { channel: "phone" })).sheet.sheetId;
}

describe("uploadArtwork", () => {
  it("takes JPEG, PNG, WebP and TIFF by what they are, not by what they are called", async () => {
    const shop = await openShop(db());
    const sheetId = await emptySheet(shop);
    const files = [
      await plain(640, 320).jpeg().toBuffer(),
      await plain(640, 320).png().toBuffer(),
      await plain(640, 320).webp().toBuffer(),
      await plain(640, 320).tiff().toBuffer(),
    ];
    for (const bytes of files) {
      const taken = must(
        await uploadArtwork(shop.as(shop.desk), { sheetId, fileName: "C:\\pictures\\crest.exe", bytes }),
      );
      expect(taken).toMatchObject({ widthPx: 640, heightPx: 320, fileName: "crest.exe" });
    }
  });

  it("serves a re-encoded copy without what the file carried beside the picture", async () => {
    const shop = await openShop(db());
    const sheetId = await emptySheet(shop);
    const bytes = await plain(800, 400)
      .jpeg()
      .withExif({ IFD0: { Artist: "somebody private" } })
      .toBuffer();
    const { artworkId } = must(await uploadArtwork(shop.as(shop.desk), { sheetId, fileName: "a.jpg", bytes }));
    const served = must(await artworkBytes(shop.as(shop.desk), { artworkId, size: "full" }));
    expect(Buffer.from(served.bytes).includes("somebody private")).toBe(false);
    expect(served.contentType).toBe("image/jpeg");
    const preview = must(await artworkBytes(shop.as(shop.desk), { artworkId, size: "preview" }));
    expect((await sharp(preview.bytes).metadata()).width).toBeLessThanOrEqual(1600);
  });

  it("stands a picture upright that the camera turned, and keeps what is clear clear", async () => {
    const shop = await openShop(db());
    const sheetId = await emptySheet(shop);
    const turned = await plain(600, 300).withMetadata({ orientation: 6 }).jpeg().toBuffer();
    expect(must(await uploadArtwork(shop.as(shop.desk), { sheetId, fileName: "a.jpg", bytes: turned }))).toMatchObject({
      widthPx: 300,
      heightPx: 600,
    });
    const clear = await sharp({ create: { width: 200, height: 100, channels: 4, background: "#00000000" } })
      .png()
      .toBuffer();
    const { artworkId } = must(await uploadArtwork(shop.as(shop.desk), { sheetId, fileName: "b.png", bytes: clear }));
    const served = must(await artworkBytes(shop.as(shop.desk), { artworkId, size: "full" }));
    expect((await sharp(served.bytes).metadata()).hasAlpha).toBe(true);
  });

  it("cannot take a text, a broken or a huge picture, and says which and why", async () => {
    const shop = await openShop(db());
    const sheetId = await emptySheet(shop);
    const upload = (bytes: Uint8Array) => uploadArtwork(shop.as(shop.desk), { sheetId, fileName: "a.jpg", bytes });
    const text = (content: string) => new TextEncoder().encode(content);
    expect(await upload(text("hello"))).toMatchObject({ refusal: { code: "artwork-type-unknown" } });
    const whole = await plain(800, 800).jpeg().toBuffer();
    expect(await upload(whole.subarray(0, Math.floor(whole.length / 2)))).toMatchObject({
      refusal: { code: "artwork-cut-off" },
    });
    expect(await upload(new Uint8Array(artworkLimits.bytes + 1))).toMatchObject({
      refusal: { code: "artwork-too-big", mostMegabytes: 60 },
    });
    const vast = await plain(12_000, 11_000).png({ compressionLevel: 9 }).toBuffer();
    expect(await upload(vast)).toMatchObject({
      refusal: { code: "artwork-too-many-pixels", widthPx: 12_000, heightPx: 11_000, megapixels: 132 },
    });
    expect(await db().artwork.count()).toBe(0);
  });

  it("belongs to its sheet: another sheet's skier cannot see it", async () => {
    const shop = await openShop(db());
    const sheetId = await emptySheet(shop);
    const bytes = await plain(640, 320).png().toBuffer();
    const { artworkId } = must(await uploadArtwork(shop.as(shop.desk), { sheetId, fileName: "a.png", bytes }));
    expect(await artworkBytes(shop.visitor, { artworkId, size: "preview" })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
    expect(await stateRights(shop.visitor, { artworkId, basis: "own", name: "X" })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
  });

  it("has rights on one of four grounds, by somebody with a name", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const bytes = await plain(640, 320).png().toBuffer();
    const { artworkId } = must(
      await uploadArtwork(desk, { sheetId: await emptySheet(shop), fileName: "a.png", bytes }),
    );
    const state = (basis: string, name: string) => stateRights(desk, { artworkId, basis: basis as "own", name });
    expect(await state("own", "  ")).toMatchObject({ refusal: { code: "name-missing", path: "name" } });
    expect(await state("found it", "Robin")).toMatchObject({
      refusal: { code: "invalid-field", path: "basis", value: "found it" },
    });
    expect((await db().artwork.findUniqueOrThrow({ where: { id: artworkId } })).rights).toBeNull();
    for (const basis of ["own", "licensed", "public-domain", "commissioned"])
      expect(must(await state(basis, " Robin ")).rights).toEqual({ basis, name: "Robin", at: shopNow.toISOString() });
  });
});

describe("sniffType", () => {
  it("reads the first bytes as the formats' own definitions have them", () => {
    // JPEG ITU-T T.81 SOI; PNG ISO/IEC 15948 signature; WebP RFC 9649 RIFF header; TIFF 6.0 byte order marks
    expect(sniffType(Uint8Array.of(0xff, 0xd8, 0xff, 0xe0))).toBe("jpeg");
    expect(sniffType(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a))).toBe("png");
    expect(sniffType(new TextEncoder().encode("RIFF....WEBPVP8 "))).toBe("webp");
    expect(sniffType(Uint8Array.of(0x4d, 0x4d, 0x00, 0x2a))).toBe("tiff");
    expect(sniffType(new Uint8Array(0))).toBe("unknown");
  });
});

describe("a copied sheet", () => {
  it("has the picture for its own: its link opens and changes it, and opens nothing of the first sheet", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId = await emptySheet(shop);
    const bytes = await plain(3000, 300).jpeg().toBuffer();
    const taken = must(await uploadArtwork(desk, { sheetId, fileName: "a.jpg", bytes }));
    must(await stateRights(desk, { artworkId: taken.artworkId, basis: "own", name: "Robin Vale" }));
    const { widthPx, heightPx, sha256 } = taken;
    const graphic = {
      kind: "own",
      layout: "same",
      windows: [],
      artwork: { id: taken.artworkId, widthPx, heightPx, sha256 },
    } as const;
    must(await saveSheet(desk, { sheetId, patch: { "choices.graphic": graphic }, baseVersion: 1 }));

    const copy = must(await copySheet(desk, { sheetId }));
    if (copy.token === null) throw new Error("a copy has a link of its own");
    const skier = shop.as((await guestByToken(copy.token, shopNow))?.actor ?? shop.visitor.actor);
    const read = must(await readSheet(skier, { sheetId: copy.sheet.sheetId }));
    const own = read.choices.graphic?.artwork;
    if (own === undefined) throw new Error("the copy has lost its picture");
    expect(own.id).not.toBe(taken.artworkId);
    const served = must(await artworkBytes(skier, { artworkId: own.id as typeof taken.artworkId, size: "full" }));
    const first = must(await artworkBytes(desk, { artworkId: taken.artworkId, size: "full" }));
    expect(Buffer.from(served.bytes).equals(Buffer.from(first.bytes))).toBe(true);
    expect(await artworkBytes(skier, { artworkId: taken.artworkId, size: "full" })).toMatchObject({ ok: false });
    const mirrored = { ...graphic, layout: "mirrored", artwork: own } as const;
    const patch = { "choices.graphic": mirrored };
    must(await saveSheet(skier, { sheetId: copy.sheet.sheetId, patch, baseVersion: read.version }));
  });
});
