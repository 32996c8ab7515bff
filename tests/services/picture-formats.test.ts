/**
 * Every kind of file that is taken, and what is said of those that are not. Files are made here; the HEIC alone is kept, for
 * nothing here writes that format: 128 × 64 px, left half the red and right half the blue of sRGB, written in Display P3 (where
 * sRGB's red is 234, 51, 35: from memory of the two spaces' primaries).
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { decodeArtwork } from "#services/graphics/decode";
import { sniffType } from "#services/graphics/sniff";
import { svgFault } from "#services/graphics/svg-guard";

const text = (content: string) => new TextEncoder().encode(content);
const heic = readFileSync(path.join("tests", "fixtures", "pictures", "two-halves-p3.heic"));

/** Red on the left, blue on the right. */
function halves(widthPx: number, heightPx: number) {
  const blue = { create: { width: widthPx / 2, height: heightPx, channels: 3 as const, background: "#0000ff" } };
  return sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: "#ff0000" } }).composite([
    { input: blue, left: widthPx / 2, top: 0 },
  ]);
}

const svg = (inside: string, head = "") =>
  text(`${head}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="200" height="100">
    <rect width="100" height="100" fill="#f00"/><rect x="100" width="100" height="100" fill="#00f"/>${inside}</svg>`);

/** ISO 32000-1, 7.5: header, objects, trailer. Page one is red and blue, page two is empty. */
function pdf(trailer = ""): Uint8Array {
  const drawing = "1 0 0 rg 0 0 100 100 re f 0 0 1 rg 100 0 100 100 re f";
  return text(`%PDF-1.4
1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj
2 0 obj<</Type/Pages/Kids[3 0 R 5 0 R]/Count 2>>endobj
3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Contents 4 0 R>>endobj
4 0 obj<</Length ${drawing.length}>>stream
${drawing}
endstream endobj
5 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 50 900]>>endobj
${trailer.includes("Encrypt") ? `6 0 obj<</Filter/Standard/V 1/R 2/P -4/O<${"41".repeat(32)}>/U<${"42".repeat(32)}>>>endobj` : ""}
trailer<</Root 1 0 R${trailer}>>
%%EOF
`);
}

async function taken(bytes: Uint8Array) {
  const decoded = await decodeArtwork(bytes);
  if (!decoded.ok) throw new Error(JSON.stringify(decoded.refusal));
  const { type, widthPx, heightPx, images } = decoded.value;
  const full = images.find(({ size }) => size === "full")?.bytes ?? expect.fail("nothing kept");
  const { data, info } = await sharp(full).raw().toBuffer({ resolveWithObject: true });
  const at = (x: number) => [...data.subarray(info.channels * x, info.channels * x + 3)];
  // A quarter of the way from either side, in the first row.
  const [left, right] = [at(Math.floor(info.width / 4)), at(Math.floor((3 * info.width) / 4))];
  return { type, widthPx, heightPx, left, right, format: (await sharp(full).metadata()).format };
}

const isRed = ([r = 0, g = 0, b = 0]: readonly number[]) => r > 245 && g < 12 && b < 12;
const isBlue = ([r = 0, g = 0, b = 0]: readonly number[]) => r < 12 && g < 12 && b > 240;

describe("a picture", () => {
  it.each([
    ["avif", () => halves(400, 200).removeAlpha().avif({ quality: 90 }).toBuffer(), [400, 200]],
    ["tiff", () => halves(400, 200).removeAlpha().tiff().toBuffer(), [400, 200]],
    ["webp", () => halves(400, 200).removeAlpha().webp({ lossless: true }).toBuffer(), [400, 200]],
    ["heic", async () => heic, [128, 64]],
    // 200 × 100 at 12,000 along would be 72 million pixels: the 24 million that are drawn are 6,928 × 3,464.
    ["svg", async () => svg(""), [6928, 3464]],
    ["pdf", async () => pdf(), [6928, 3464]],
  ] as const)(
    "of the kind %s is taken with its colours, and kept as another file",
    async (type, bytes, [width, height]) => {
      const found = await taken(await bytes());
      expect(found.type).toBe(type);
      expect(Math.abs(found.widthPx - width)).toBeLessThanOrEqual(1);
      expect(Math.abs(found.heightPx - height)).toBeLessThanOrEqual(1);
      expect(isRed(found.left), String(found.left)).toBe(true);
      expect(isBlue(found.right), String(found.right)).toBe(true);
      expect(found.format).toBe(type === "svg" ? "png" : "jpeg");
    },
  );
});

describe("a file that cannot be taken", () => {
  const refused = async (bytes: Uint8Array) => {
    const decoded = await decodeArtwork(bytes);
    return decoded.ok ? "taken" : decoded.refusal;
  };

  it.each([
    ["script", svg("<script>alert(1)</script>"), "<script>"],
    ["script", svg('<rect onload="go()" width="1" height="1"/>'), "onload="],
    ["script", svg('<a href="javascript:go()"/>'), "javascript:"],
    ["entities", svg("&a;", '<!DOCTYPE svg [<!ENTITY a "aaaaaaaa">]>'), "<!DOCTYPE svg ["],
    [
      "outside",
      svg('<image href="https://somewhere.invalid/a.png" width="9" height="9"/>'),
      "https://somewhere.invalid/a.png",
    ],
    ["outside", svg("<image xlink:href='file:///etc/passwd' width='9' height='9'/>"), "file:///etc/passwd"],
    [
      "outside",
      svg('<image href="data:image/svg+xml;base64,AAAA" width="9" height="9"/>'),
      "data:image/svg+xml;base64,AAAA",
    ],
    ["outside", svg('<rect fill="url(other.svg#a)" width="9" height="9"/>'), "other.svg#a"],
    ["outside", svg("<style>@import 'a.css';</style>"), "@import"],
    ["outside", svg("", '<?xml-stylesheet href="a.css"?>'), "<?xml-stylesheet"],
    ["foreign", svg("<foreignObject><p>a</p></foreignObject>"), "<foreignObject>"],
    ["encoding", Uint8Array.of(...svg(""), 0xff), ""],
    ["encoding", svg("", '<?xml version="1.0" encoding="utf-7"?>'), "utf-7"],
  ] as const)("is an SVG that holds: %s", (fault, bytes, found) => {
    expect(svgFault(bytes)).toEqual({ fault, found });
  });

  it("is an SVG with a script, refused before it is drawn and in words of its own", async () => {
    expect(await refused(svg("<script/>"))).toMatchObject({ code: "artwork-svg-script", found: "<script/" });
  });

  it("is no SVG that refers to its own parts and the pictures it carries", async () => {
    const pixel = (await halves(2, 2).png().toBuffer()).toString("base64");
    const plain = `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">`;
    const inside = `<!-- <script> --><linearGradient id="g"/><rect fill="url(#g)" width="9" height="9"/><use xlink:href="#g"/><image href="data:image/png;base64,${pixel}" width="9" height="9"/>`;
    expect((await taken(svg(inside, plain))).type).toBe("svg");
  });

  it("is cut off, locked, a sequence, a film, something else: each by its own word", async () => {
    for (const make of [
      () => halves(400, 200).jpeg().toBuffer(),
      () => halves(400, 200).png().toBuffer(),
      () => halves(400, 200).webp().toBuffer(),
      () => halves(400, 200).tiff().toBuffer(),
      () => halves(400, 200).avif().toBuffer(),
      async () => heic,
      async () => pdf(),
    ]) {
      const whole = await make();
      const part = whole.subarray(0, Math.floor(whole.length * 0.6));
      expect(await refused(part), sniffType(whole)).toMatchObject({ code: "artwork-cut-off" });
    }
    expect(await refused(pdf("/Encrypt 6 0 R/ID[<01><01>]"))).toMatchObject({ code: "artwork-locked" });
    const boxes = (brand: string) => Uint8Array.of(0, 0, 0, 24, ...text(`ftyp${brand}`), 0, 0, 0, 0, ...text("isom"));
    expect(await refused(boxes("hevc"))).toMatchObject({ code: "artwork-type-heic-sequence" });
    expect(await refused(boxes("qt  "))).toMatchObject({ code: "artwork-type-video" });
    expect(await refused(text("GIF89a"))).toMatchObject({ code: "artwork-type-gif" });
    expect(await refused(text("8BPS"))).toMatchObject({ code: "artwork-type-photoshop" });
    expect(await refused(text("hello"))).toMatchObject({ code: "artwork-type-unknown" });
  });

  it("has too many pixels, told in millions beside the limit, before any is decoded", async () => {
    const vast = Buffer.from(heic);
    // Every size in it (`ispe`, ISO/IEC 23008-12) made 20,000 × 10,000.
    for (let at = vast.indexOf("ispe"); at >= 0; at = vast.indexOf("ispe", at + 1)) {
      vast.writeUInt32BE(20_000, at + 8);
      vast.writeUInt32BE(10_000, at + 12);
    }
    expect(await refused(vast)).toMatchObject({
      code: "artwork-too-many-pixels",
      megapixels: 200,
      mostMegapixels: 120,
    });
  });
});

describe("sniffType", () => {
  it("knows the newer formats by their own marks", () => {
    const boxes = (brand: string, also: string) =>
      Uint8Array.of(0, 0, 0, 28, ...text(`ftyp${brand}`), 0, 0, 0, 0, ...text(also));
    expect(sniffType(boxes("heic", "mif1heic"))).toBe("heic");
    expect(sniffType(boxes("mif1", "heic"))).toBe("heic");
    expect(sniffType(boxes("mif1", "avif"))).toBe("avif");
    expect(sniffType(boxes("avif", "mif1"))).toBe("avif");
    expect(sniffType(text("\n\n%PDF-1.7"))).toBe("pdf");
    expect(sniffType(text('<?xml version="1.0"?><svg width="1"'))).toBe("svg");
  });
});
