import { describe, expect, it } from "vitest";
import { closedPolygon, type OutlineDrawing, outlineDxf, outlineSvg } from "#engine/geometry";

/** A board of 10 × 8 mm with a mark across it that is wider than the board and behind it. */
const board: OutlineDrawing = {
  title: "Föhn <8> & more",
  outlines: [
    {
      layer: "ski é",
      outline: [
        { xMm: 0, halfWidthMm: 0 },
        { xMm: 0, halfWidthMm: 4 },
        { xMm: 10, halfWidthMm: 4.25 },
        { xMm: 10, halfWidthMm: 0 },
      ],
    },
  ],
  marks: [{ layer: "mount", xMm: 12.5, halfWidthMm: 6 }],
};

describe("outlineDxf", () => {
  it("writes the group codes of release R12 in order (AutoCAD R12 DXF reference, from memory; values by hand)", () => {
    const vertex = (x: string, y: string) => `0=VERTEX 8=SKI__ 10=${x} 20=${y} 30=0`;
    const expected = [
      "999=F?hn <8> & more; millimetres",
      "0=SECTION 2=HEADER 9=$ACADVER 1=AC1009",
      "9=$EXTMIN 10=0 20=-6 9=$EXTMAX 10=12.5000 20=6",
      "0=ENDSEC 0=SECTION 2=TABLES",
      "0=TABLE 2=LTYPE 70=1 0=LTYPE 2=CONTINUOUS 70=64 3=Solid line 72=65 73=0 40=0 0=ENDTAB",
      "0=TABLE 2=LAYER 70=2",
      "0=LAYER 2=SKI__ 70=0 62=1 6=CONTINUOUS",
      "0=LAYER 2=MOUNT 70=0 62=2 6=CONTINUOUS",
      "0=ENDTAB 0=ENDSEC 0=SECTION 2=ENTITIES",
      "0=POLYLINE 8=SKI__ 66=1 10=0 20=0 30=0 70=1",
      vertex("0", "0"),
      vertex("0", "4"),
      vertex("10", "4.2500"),
      vertex("10", "0"),
      vertex("10", "-4.2500"),
      vertex("0", "-4"),
      "0=SEQEND 8=SKI__",
      "0=LINE 8=MOUNT 10=12.5000 20=-6 30=0 11=12.5000 21=6 31=0",
      "0=ENDSEC 0=EOF",
    ].join(" ");
    const lines = outlineDxf(board).split("\r\n");
    expect(lines.pop()).toBe("");
    const read = Array.from({ length: lines.length / 2 }, (_, i) => `${lines[2 * i]}=${lines[2 * i + 1]}`);
    // A code is right-aligned in three columns.
    expect(read.filter((pair) => !/^[ \d]{2}\d=/.test(pair))).toEqual([]);
    expect(read.map((pair) => pair.trimStart()).join(" ")).toBe(expected);
  });

  it("names a layer once, however many parts lie on it, and goes round the seven plain colours", () => {
    const names = ["a", "b", "a", "c", "d", "e", "f", "g", "h"];
    const outline = board.outlines[0]?.outline ?? [];
    const text = outlineDxf({ title: "", outlines: names.map((layer) => ({ layer, outline })), marks: [] });
    const colours = [...text.matchAll(/\r\n {2}2\r\n([A-H])\r\n 70\r\n0\r\n 62\r\n(\d)\r\n/g)].map(
      ([, name, colour]) => `${name}${colour}`,
    );
    expect(colours).toEqual(["A1", "B2", "C3", "D4", "E5", "F6", "G7", "H1"]);
  });

  it("cannot draw nothing", () => {
    expect(() => outlineDxf({ title: "", outlines: [], marks: [] })).toThrow(/at least one/);
  });
});

describe("outlineSvg", () => {
  it("is a page at true scale with 10 mm all round (SVG 1.1; values by hand)", () => {
    // x from 0 to 12.5 and y from −6 to 6, and 10 mm more on every side: 32.5 × 32 from (−10, −16).
    expect(
      outlineSvg(board),
    ).toBe(`<svg xmlns="http://www.w3.org/2000/svg" width="32.50mm" height="32.00mm" viewBox="-10.00 -16.00 32.50 32.00" fill="none" stroke="#000" stroke-width="0.2">
  <title>Föhn &lt;8&gt; &amp; more</title>
  <path id="SKI__" d="M0.0000 0.0000L0.0000 4.0000L10.0000 4.2500L10.0000 0.0000L10.0000 -4.2500L0.0000 -4.0000Z"/>
  <path id="MOUNT" d="M12.5000 -6.0000V6.0000"/>
</svg>
`);
  });
});

describe("closedPolygon", () => {
  it("repeats no point on the centre line", () => {
    const outline = [0, 3, 0].map((halfWidthMm, i) => ({ xMm: i, halfWidthMm }));
    expect(closedPolygon(outline)).toEqual([
      [0, 0],
      [1, 3],
      [2, 0],
      [1, -3],
    ]);
  });
});
